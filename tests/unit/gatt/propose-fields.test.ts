import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import type { WatchedPacket } from '../../../shared-core/gatt/movement.ts';
import {
  proposeBattery,
  proposeHold,
  proposeSpecies,
  proposeTemperature,
} from '../../../shared-core/gatt/propose-fields.ts';
import { insertions, watched } from './watched-meter.ts';

const course = insertions(13.4, 25.7);
const plain = { exponent: 0, scale: 1, offset: 0 };
const ascii = (text: string) => new TextEncoder().encode(text);

/** Counter, tenths of %, tenths of °C, battery, flags: bit 2 is hold. */
const binary = (isHeldAt: (ms: number) => boolean): WatchedPacket[] =>
  watched(course, 2, (shown, index) => {
    const tenths = Math.round((shown ?? 0) * 10);
    const temp = 214 + Math.floor(index / 60);
    return Uint8Array.of(
      index & 255,
      tenths & 255,
      tenths >> 8,
      temp & 255,
      temp >> 8,
      76,
      isHeldAt(index * 100) ? 0x14 : 0x10,
    );
  });
const inBinary: Layout = { kind: 'number', format: 6, byteOffset: 1, ...plain, exponent: -1 };
/** "MC= 13,4 % H T21": a letter while it holds, and a temperature behind it. */
const text = (isHeldAt: (ms: number) => boolean): WatchedPacket[] =>
  watched(course, 2, (shown, index) =>
    ascii(
      `MC=${(shown ?? 0).toFixed(1).replace('.', ',').padStart(5)} % ${isHeldAt(index * 100) ? 'H' : ' '} T21 B76`,
    ),
  );
const inText: Layout = { kind: 'text', byteOffset: 0, nth: 1, ...plain };

const never = () => false;
const pressedMs = 12_000;
const pressed = (ms: number) => ms > 12_500 && ms < 13_500;

describe('a temperature', () => {
  test('in tenths beside the reading is among the first', () => {
    const found = proposeTemperature(binary(never), [inBinary]);
    expect(found[0]).toMatchObject({ layout: { format: 14, byteOffset: 3, exponent: -1 }, now: 21.6 });
    for (const { layout } of found) expect(layout).not.toMatchObject({ byteOffset: 1 });
  });
  test('in text is another of its numbers, and the reading is none', () => {
    expect(proposeTemperature(text(never), [inText]).map(({ now }) => now)).toEqual([21]);
  });
  test.each([500, 600, 900])('is no count of one figure before the reading, of %i packets', (count) => {
    const many = Array.from({ length: count }, (_, at) => ({
      atMs: at * 100,
      bytes: ascii(`${at % 10} MC= 13.${at % 7} % T21`),
    }));
    const value: Layout = { kind: 'text', byteOffset: 0, nth: 2, ...plain };
    expect(proposeTemperature(many, [value]).map(({ now }) => now)).toEqual([21]);
  });
});

describe('a battery', () => {
  test('is a byte of 1 to 100 that hardly moves, and no part of the reading or of a counter', () => {
    expect(proposeBattery(binary(never), [inBinary]).map(({ now }) => now)).toContain(76);
    expect(proposeBattery(binary(never), [inBinary]).map(({ layout }) => layout)).not.toContainEqual(
      expect.objectContaining({ byteOffset: 0 }),
    );
  });
  test('in text is another of its numbers', () => {
    expect(proposeBattery(text(never), [inText]).map(({ now }) => now)).toEqual([21, 76]);
  });
});

describe('the button', () => {
  test('is the bit that changed once it was pressed', () => {
    expect(proposeHold(binary(pressed), inBinary, pressedMs)).toEqual([
      { layout: { kind: 'bits', firstBit: 50, bits: 1, signed: false, ...plain }, equals: 1 },
    ]);
  });
  test('is the letter that came in a text', () => {
    expect(proposeHold(text(pressed), inText, pressedMs)).toEqual([{ word: 'H' }]);
  });
  test('is not found where nothing was pressed, or nothing came since', () => {
    expect(proposeHold(binary(never), inBinary, pressedMs)).toEqual([]);
    expect(proposeHold(binary(pressed), inBinary, 99_000)).toEqual([]);
  });
});

describe('the species setting', () => {
  /** What is set to `setting` from 12 s on, in a byte, in half a byte with the hold flag, and in letters. */
  const set = (of: (setting: number, isHeld: boolean) => number[]): WatchedPacket[] =>
    watched(course, 2, (shown, index) => {
      const tenths = Math.round((shown ?? 0) * 10);
      const isHeld = index % 40 > 36;
      return Uint8Array.of(
        index & 255,
        tenths & 255,
        tenths >> 8,
        214,
        0,
        76,
        ...of(index > 125 ? 7 : 3, isHeld),
      );
    });

  test('is what changed when it was changed on the meter, and never before', () => {
    const packets = set((setting, isHeld) => [isHeld ? 1 : 0, setting]);
    expect(proposeSpecies(packets, [inBinary], pressedMs)).toEqual([
      { kind: 'number', format: 4, byteOffset: 7, ...plain },
    ]);
    expect(proposeSpecies(packets, [inBinary], 99_000)).toEqual([]);
    expect(proposeSpecies(packets.slice(0, 120), [inBinary], 8000)).toEqual([]);
  });
  test('leaves the bit of the button out of its byte', () => {
    const packets = watched(course, 2, (shown, index) =>
      Uint8Array.of(index & 255, Math.round((shown ?? 0) * 10) & 255, (index > 125 ? 7 : 3) << 1),
    );
    const hold: Layout = { kind: 'bits', firstBit: 16, bits: 1, signed: false, ...plain };
    expect(proposeSpecies(packets, [{ ...inBinary, format: 4 }, hold], pressedMs)).toEqual([
      { kind: 'bits', firstBit: 17, bits: 7, signed: false, ...plain },
    ]);
  });
  test('is a whole word, also where the new one is longer', () => {
    const packets = set((setting) => [...ascii(setting === 7 ? 'ASPEN' : 'OAK  ')]);
    expect(proposeSpecies(packets, [inBinary], pressedMs)).toEqual([
      { kind: 'letters', byteOffset: 6, octets: 5 },
    ]);
  });
  test('in text is another of its numbers', () => {
    const packets = watched(course, 2, (shown, index) =>
      ascii(`${(shown ?? 0).toFixed(1).padStart(5)} % G ${index > 125 ? 12 : 4} B`),
    );
    const [word] = proposeSpecies(packets, [{ ...inText, byteOffset: 0 }], pressedMs);
    expect(word).toEqual({ kind: 'text', byteOffset: 0, nth: 2, ...plain });
  });
});

test('a number chosen for one thing is not offered for another', () => {
  const [temperature] = proposeTemperature(binary(never), [inBinary]);
  const batteries = proposeBattery(binary(never), [inBinary, temperature!.layout]).map(({ now }) => now);
  expect(batteries).toEqual([76, expect.any(Number)].slice(0, batteries.length));
  const inWords = proposeTemperature(text(never), [inText])[0]!;
  expect(proposeBattery(text(never), [inText, inWords.layout]).map(({ now }) => now)).toEqual([76]);
});
