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

/** Packets ten a second that are so, from 0 s. */
const sent = (count: number, of: (index: number) => readonly number[] | string): WatchedPacket[] =>
  Array.from({ length: count }, (_, index) => {
    const bytes = of(index);
    return { atMs: index * 100, bytes: typeof bytes === 'string' ? ascii(bytes) : Uint8Array.from(bytes) };
  });
const number = (format: number, byteOffset: number, exponent = 0): Layout => ({
  kind: 'number',
  format,
  byteOffset,
  ...plain,
  exponent,
});
const field = (firstBit: number, bits: number): Layout => ({
  kind: 'bits',
  firstBit,
  bits,
  signed: false,
  ...plain,
});
/** The reading, of two bytes that move. */
const reading = (index: number): [number, number] => [(index * 37) & 255, (index * 11) % 5];
const first: Layout = number(6, 0, -1);

describe('a slow number', () => {
  // Bluetooth SIG, Assigned Numbers, Format Types (checked): sint16 is 14, sint8 is 12, SFLOAT is 22, float32 is 20.
  const nowOf = (...behind: number[]) =>
    proposeTemperature(
      sent(40, (index) => [...reading(index), ...behind]),
      [first],
    );
  const finds = (behind: number[], now: number, layout: object) =>
    expect(nowOf(...behind)).toContainEqual({ layout: expect.objectContaining(layout), now });

  test('is a temperature in hundredths, whole degrees, high byte first, or with a point of its own', () => {
    finds([0x66, 0x08], 21.5, { format: 14, byteOffset: 2, exponent: -2 });
    finds([0x00, 21], 21, { format: 12, byteOffset: 3 });
    finds([0x00, 0xd7], 21.5, { format: 14, byteOffset: 2, exponent: -1, byteOrder: 'high-first' });
    finds([0x08, 0x66], 21.5, { format: 14, byteOffset: 2, exponent: -2, byteOrder: 'high-first' });
    // IEEE 11073: 215 with a power of -1; IEEE 754: 21.5 is 0x41AC0000.
    finds([0xd7, 0xf0], 21.5, { format: 22, byteOffset: 2 });
    finds([0x00, 0x00, 0xac, 0x41], 21.5, { format: 20, byteOffset: 2 });
  });

  test('is one of what wood is probed at: neither colder nor hotter', () => {
    const wholeDegrees = (degree: number) =>
      nowOf(degree & 255).filter(({ layout }) => layout.kind === 'number' && layout.format === 12);
    expect(wholeDegrees(-30)).toHaveLength(1);
    expect(wholeDegrees(-31)).toEqual([]);
    expect(wholeDegrees(60)).toHaveLength(1);
    expect(wholeDegrees(61)).toEqual([]);
  });

  test('changes by at most eight degrees meanwhile', () => {
    const risen = (by: number) =>
      proposeTemperature(
        sent(40, (index) => [...reading(index), index < 20 ? 12 : 12 + by]),
        [first],
      );
    expect(risen(8).map(({ now }) => now)).toEqual([20]);
    expect(risen(9)).toEqual([]);
  });

  test('of a battery is 1 to 100 that changes by at most three', () => {
    const charge = (from: number, to: number) =>
      proposeBattery(
        sent(40, (index) => [...reading(index), index < 20 ? from : to]),
        [first],
      ).map(({ now }) => now);
    expect(charge(100, 97)).toEqual([97]);
    expect(charge(100, 96)).toEqual([]);
    expect(charge(101, 100)).toEqual([]);
    expect(charge(1, 1)).toEqual([1]);
    expect(charge(0, 1)).toEqual([]);
  });

  test('is never zero, and the same number once, where it comes first', () => {
    const found = proposeBattery(
      sent(40, (index) => [...reading(index), 0, 88, 88]),
      [first],
    );
    expect(found).toEqual([{ layout: number(4, 3), now: 88 }]);
    expect(nowOf(0)).toEqual([]);
  });

  test('is offered at most eight times', () => {
    const many = sent(40, (index) => [...reading(index), 11, 12, 13, 14, 15, 16, 17, 18, 19, 20]);
    expect(proposeBattery(many, [first]).map(({ now }) => now)).toEqual([11, 12, 13, 14, 15, 16, 17, 18]);
  });

  test('is in every packet', () => {
    const long = [12, 77];
    const packets = sent(40, (index) => [...reading(index), ...(index === 30 ? [12] : long)]);
    expect(proposeBattery(packets, [first]).map(({ now }) => now)).toEqual([12]);
  });

  test('is no counter, of so few packets that it hardly ran', () => {
    const packets = sent(8, (index) => [...reading(index), 12 + index]);
    expect(proposeTemperature(packets, [first])).toEqual([]);
  });

  test('shares no byte with anything that was found, but may lie at its very side', () => {
    const packets = sent(40, (index) => [71, ...reading(index), 72, 73, 74, 75]);
    const value = number(6, 1, -1);
    const beside = (...taken: (Layout | { kind: 'letters'; byteOffset: number; octets: number })[]) =>
      proposeBattery(packets, [value, ...taken]).map(({ now }) => now);
    expect(beside()).toEqual([71, 72, 73, 74, 75]);
    expect(beside({ kind: 'letters', byteOffset: 4, octets: 2 })).toEqual([71, 72, 75]);
    expect(beside(number(4, 3), number(4, 6))).toEqual([71, 73, 74]);
  });

  test('in text is one behind where the text begins', () => {
    const packets = sent(40, (index) => [7, 0, ...ascii(`${index % 10} % T21 B76`)]);
    const value: Layout = { kind: 'text', byteOffset: 2, nth: 1, ...plain };
    expect(proposeBattery(packets, [value])).toEqual([
      { layout: { ...value, nth: 2 }, now: 21 },
      { layout: { ...value, nth: 3 }, now: 76 },
    ]);
    // A word of letters that was found for the species is no number of it.
    const word = { kind: 'letters', byteOffset: 6, octets: 1 } as const;
    expect(proposeBattery(packets, [value, word])).toHaveLength(2);
  });

  test('is none where nothing came', () => {
    expect(proposeBattery([], [first])).toEqual([]);
    expect(proposeTemperature([], [first])).toEqual([]);
  });
});

describe('a setting that was changed', () => {
  const taken = (...more: (Layout | { kind: 'letters'; byteOffset: number; octets: number })[]) =>
    [first, ...more] as const;
  /** Changed with the packet of 2 s. */
  const switched = (before: readonly number[], after: readonly number[], count = 40) =>
    sent(count, (index) => [...reading(index), ...(index < 20 ? before : after)]);

  test('is new from the moment on, not before', () => {
    const packets = switched([3], [7]);
    expect(proposeSpecies(packets, taken(), 2000)).toEqual([number(4, 2)]);
    expect(proposeSpecies(packets, taken(), 2001)).toEqual([]);
    expect(proposeSpecies(packets, taken(), 0)).toEqual([]);
    expect(proposeSpecies(packets, taken(), 99_000)).toEqual([]);
  });

  test('was another one in every packet before, and is at rest now', () => {
    const once = switched([3], [7]);
    once[5] = { ...once[5]!, bytes: Uint8Array.of(1, 1, 4) };
    expect(proposeSpecies(once, taken(), 2000)).toEqual([]);
    const restless = switched([3], [7]);
    restless[38] = { ...restless[38]!, bytes: Uint8Array.of(1, 1, 5) };
    expect(proposeSpecies(restless, taken(), 2000)).toEqual([]);
    // Passing others on the way to it is no matter.
    const turned = switched([3], [7]);
    turned[22] = { ...turned[22]!, bytes: Uint8Array.of(1, 1, 5) };
    expect(proposeSpecies(turned, taken(), 2000)).toEqual([number(4, 2)]);
  });

  test('is no part of the reading or of another field, but may lie at its side', () => {
    const packets = sent(40, (index) => (index < 20 ? [1, 2, 3, 4, 5] : [11, 12, 13, 14, 15]));
    const found = (...fields: Layout[]) =>
      proposeSpecies(packets, [number(6, 1), ...fields], 2000).map(
        (each) => 'byteOffset' in each && each.byteOffset,
      );
    expect(found()).toEqual([0, 3, 4]);
    expect(found(number(4, 3))).toEqual([0, 4]);
    // A reading of bits has its bytes too.
    expect(proposeSpecies(packets, [field(8, 12)], 2000)).toHaveLength(3);
  });

  test('in a byte with other fields is the bits between them', () => {
    const packets = switched([0b0000_1000], [0b0001_0000]);
    const found = (...others: Layout[]) => proposeSpecies(packets, taken(...others), 2000);
    expect(found()).toEqual([number(4, 2)]);
    expect(found(field(16, 1))).toEqual([field(17, 7)]);
    expect(found(field(23, 1))).toEqual([field(16, 7)]);
    expect(found(field(17, 1), field(22, 1))).toEqual([field(18, 4)]);
    // Bits of other bytes, and fields of whole bytes, are no matter.
    expect(found(field(8, 1), field(24, 1), number(4, 5))).toEqual([number(4, 2)]);
  });

  test('is nothing in a packet that became longer, where all behind was shifted', () => {
    expect(proposeSpecies(switched([3, 9], [3, 5, 9]), taken(), 2000)).toEqual([]);
  });

  test('is each of two words, and a letter that a blank became', () => {
    const found = (before: string, after: string) =>
      proposeSpecies(switched([...ascii(before)], [...ascii(after)]), taken(), 2000);
    expect(found('OAK 1 FIR', 'ELM 1 ASH')).toEqual([
      { kind: 'letters', byteOffset: 2, octets: 3 },
      { kind: 'letters', byteOffset: 8, octets: 3 },
    ]);
    expect(found('   ', 'ASH')).toEqual([{ kind: 'letters', byteOffset: 2, octets: 3 }]);
    expect(found('ASH', '   ')).toEqual([{ kind: 'letters', byteOffset: 2, octets: 3 }]);
  });

  test('in binary is only the letters that changed; in text all of their word', () => {
    const inBytes = proposeSpecies(switched([...ascii('xOAK')], [...ascii('xASH')]), taken(), 2000);
    expect(inBytes).toEqual([{ kind: 'letters', byteOffset: 3, octets: 3 }]);
    const packets = sent(40, (index) => `${index % 10} % ${index < 20 ? 'xOAKx' : 'xASHx'} 4`);
    const value: Layout = { kind: 'text', byteOffset: 0, nth: 1, ...plain };
    expect(proposeSpecies(packets, [value], 2000)).toEqual([{ kind: 'letters', byteOffset: 4, octets: 5 }]);
  });

  test('is a word of at most 32 letters', () => {
    const packets = switched([...ascii('A'.repeat(40))], [...ascii('B'.repeat(40))]);
    expect(proposeSpecies(packets, taken(), 2000)).toEqual([
      { kind: 'letters', byteOffset: 2, octets: 32 },
      { kind: 'letters', byteOffset: 34, octets: 8 },
    ]);
  });

  test('in text is a number that changed, and none that did not', () => {
    const packets = sent(40, (index) => `${index % 10} % G ${index < 20 ? 4 : 5} T21`);
    const value: Layout = { kind: 'text', byteOffset: 0, nth: 1, ...plain };
    expect(proposeSpecies(packets, [value], 2000)).toEqual([{ ...value, nth: 2 }]);
    // One that is no longer shown has no number.
    const gone = sent(40, (index) => `${index % 10} % G ${index < 20 ? '4' : '--'} T21`);
    expect(proposeSpecies(gone, [value], 2000)).toEqual([]);
  });
});

describe('what says that the value is held', () => {
  const pressedAt = (before: readonly number[], after: readonly number[]) =>
    sent(40, (index) => [...reading(index), ...(index < 20 ? before : after)]);

  test('comes from the moment on, not before', () => {
    const packets = pressedAt([0], [1]);
    expect(proposeHold(packets, first, 2000)).toEqual([{ layout: field(16, 1), equals: 1 }]);
    expect(proposeHold(packets, first, 2001)).toEqual([]);
    expect(proposeHold(packets, first, 0)).toEqual([]);
    const text = sent(40, (index) => `${index % 10} % ${index < 20 ? 'A' : 'H'}`);
    const value: Layout = { kind: 'text', byteOffset: 0, nth: 1, ...plain };
    expect(proposeHold(text, value, 2000)).toEqual([{ word: 'H' }]);
    expect(proposeHold(text, value, 2001)).toEqual([]);
    expect(proposeHold(text, value, 0)).toEqual([]);
  });

  test('may be a bit that goes out', () => {
    expect(proposeHold(pressedAt([0b0100], [0]), first, 2000)).toEqual([{ layout: field(18, 1), equals: 0 }]);
  });

  test('is likelier one bit than several at once', () => {
    expect(proposeHold(pressedAt([0, 0], [0b0111, 0b1000]), first, 2000)).toEqual([
      { layout: field(27, 1), equals: 1 },
      { layout: field(16, 1), equals: 1 },
    ]);
  });

  test('is the whole byte where it is or was a letter', () => {
    const held = (before: string, after: string) =>
      proposeHold(pressedAt([...ascii(before)], [...ascii(after)]), first, 2000);
    expect(held(' ', 'H')).toEqual([{ layout: number(4, 2), equals: 0x48 }]);
    expect(held('H', ' ')).toEqual([{ layout: number(4, 2), equals: 0x20 }]);
    expect(held(' ', '*')).toEqual([{ layout: number(4, 2), equals: 0x2a }]);
  });

  test('is no bit of the reading, but may lie at its side', () => {
    const packets = sent(40, (index) => (index < 20 ? [0, 0, 0, 0] : [1, 1, 1, 1]));
    expect(proposeHold(packets, number(6, 1), 2000)).toEqual([
      { layout: field(0, 1), equals: 1 },
      { layout: field(24, 1), equals: 1 },
    ]);
  });

  test('is nothing that was there before, nor what takes several values, nor in a longer packet alone', () => {
    const mixed = sent(40, (index) => [...reading(index), index === 5 ? 1 : index < 20 ? 0 : 2]);
    expect(proposeHold(mixed, first, 2000)).toEqual([]);
    const several = sent(40, (index) => [...reading(index), index < 20 ? 0 : 1 + (index >> 4)]);
    expect(proposeHold(several, first, 2000)).toEqual([]);
    expect(proposeHold(pressedAt([], [1]), first, 2000)).toEqual([]);
  });

  test('is no carry of a counter that happens then', () => {
    const packets = sent(40, (index) => [...reading(index), (236 + index) & 255, index < 20 ? 0 : 1]);
    expect(proposeHold(packets, first, 2000)).toEqual([]);
  });
});
