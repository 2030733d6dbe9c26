import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import {
  type MeterDescription,
  NO_FIELDS,
  plainDescription,
} from '../../../shared-core/gatt/meter-description.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import { hasWord, numbersInText, readLetters, wordsOf } from '../../../shared-core/gatt/text-value.ts';
import { decodeLayout } from '../../../shared-core/gatt/value.ts';

// The packets are our own invention.

const plain = { exponent: 0, scale: 1, offset: 0 };
const number = (format: number, byteOffset: number, changes: Partial<Layout> = {}): Layout =>
  ({ kind: 'number', format, byteOffset, ...plain, ...changes }) as Layout;
const bits = (firstBit: number, count: number, signed = false, byteOrder?: 'high-first'): Layout => ({
  kind: 'bits',
  firstBit,
  bits: count,
  signed,
  ...(byteOrder && { byteOrder }),
  ...plain,
});
const words = (nth: number, byteOffset = 0): Layout => ({ kind: 'text', byteOffset, nth, ...plain });
const described = (changes: Partial<MeterDescription>): MeterDescription => ({
  ...plainDescription({
    source: { kind: 'sent', serviceUuid: 'aa00', characteristicUuid: 'aa01' },
    value: number(6, 0),
    unit: 'pct',
    range: { min: 0, max: 100 },
    origin: 'mapped-by-hand',
  }),
  ...changes,
});
const text = (shown: string) => new TextEncoder().encode(shown);
const numberIn = (bytes: Uint8Array, layout: Layout) => {
  const decoded = decodeLayout(bytes, layout);
  return decoded.ok ? decoded.value : null;
};

describe('bits', () => {
  // Written out by hand: 0xb4 0x1d is 1011 0100 0001 1101, and with the low byte first 0001 1101 1011 0100.
  const bytes = Uint8Array.of(0xb4, 0x1d);
  test.each([
    [bits(0, 4), 0b0100],
    [bits(4, 8), 0b1101_1011],
    [bits(2, 3), 0b101],
    [bits(2, 3, true), -3],
    [bits(12, 1), 1],
    [bits(13, 3), 0],
    [bits(0, 4, false, 'high-first'), 0b1011],
    [bits(4, 8, false, 'high-first'), 0b0100_0001],
    [bits(9, 3, true, 'high-first'), 0b001],
    [bits(0, 2, true, 'high-first'), -2],
    [bits(0, 16, false, 'high-first'), 0xb41d],
  ])('%o is %d', (layout, value) => {
    expect(numberIn(bytes, layout)).toBe(value);
  });

  // Node's own readers of whole numbers as the other side.
  test('whole bytes are the number that Node reads there', () => {
    fc.assert(
      fc.property(
        fc.uint8Array({ minLength: 9, maxLength: 9 }),
        fc.integer({ min: 0, max: 4 }),
        (packet, from) => {
          const buffer = Buffer.from(packet);
          expect(numberIn(packet, bits(8 * from, 32))).toBe(buffer.readUInt32LE(from));
          expect(numberIn(packet, bits(8 * from, 24, true, 'high-first'))).toBe(buffer.readIntBE(from, 3));
          expect(numberIn(packet, bits(8 * from, 40, false, 'high-first'))).toBe(buffer.readUIntBE(from, 5));
        },
      ),
    );
  });

  test('a packet that ends before the last bit is refused with both numbers', () => {
    expect(decodeLayout(bytes, bits(15, 2))).toEqual({
      ok: false,
      noReading: false,
      problem: { code: 'meter.value.bytes-missing', facts: { sent: 2, needed: 3 } },
    });
  });
});

describe('a number among other text', () => {
  test.each([
    ['MC 12.6 % T 21.5 °C', 1, 12.6],
    ['MC 12.6 % T 21.5 °C', 2, 21.5],
    ['12,6%;21,5', 2, 21.5],
    ['12.6,21.5,1', 1, 12.6],
    ['12.6,21.5,1', 3, 1],
    ['12,21,85', 2, 21],
    ['M=12.6 T=-4', 2, -4],
    ['12-14', 2, 14],
    ['--.- 21.5', 2, 21.5],
    ['OL 21.5', 2, 21.5],
    // Dashes stand for a number each time, with or without a decimal point, but not right after a letter.
    ['MC --.- T 21.5', 2, 21.5],
    ['-- -- 21.5', 3, 21.5],
    ['--.--- 21.5', 2, 21.5],
    ['--, 21.5', 2, 21.5],
    ['T-- 21.5', 1, 21.5],
    // A list, also with a space after each comma.
    ['12.6, 21.5', 2, 21.5],
    ['12,214,8', 2, 214],
    ['-4.5,12.6', 1, -4.5],
    ['-4.5,12.6', 2, 12.6],
    ['12.6,21.5e1', 1, 12.6],
    ['12.6,21.5e1', 2, 215],
    // A decimal comma: no thousands have four digits before it.
    ['1234,567', 1, 1234.567],
  ])('of %j, number %i is %d', (shown, nth, value) => {
    expect(numberIn(text(shown), words(nth))).toBe(value);
  });

  test.each(['--.- % 21.5', 'OL 21.5', '*** 21.5', 'Err'])(
    'what %j shows in its place is no reading, and never the number after it',
    (shown) => {
      expect(decodeLayout(text(shown), words(1))).toMatchObject({ ok: false, noReading: true });
    },
  );

  test.each([
    ['1,234 ohm', 1, 'meter.value.shows-ambiguous'],
    ['12,345', 1, 'meter.value.shows-ambiguous'],
    ['1,234,567', 1, 'meter.value.shows-ambiguous'],
    ['1,234.56', 1, 'meter.value.shows-ambiguous'],
    ['1.2.3', 1, 'meter.value.shows-ambiguous'],
    ['12.6', 2, 'meter.value.shows-none'],
  ])('%j has no readable number %i', (shown, nth, code) => {
    expect(decodeLayout(text(shown), words(nth))).toMatchObject({
      ok: false,
      noReading: false,
      problem: { code },
    });
  });

  test.each(['21.5 °C 12.6 %', '21.5 ° C', '70 F', '21 C', '3 V', '3 mV', '470 Ω', '470 ohms'])(
    'a number in another unit than the description says is refused: %j',
    (shown) => {
      expect(decodePacket(text(shown), described({ value: words(1) })).value).toMatchObject({
        ok: false,
        problem: { code: 'meter.value.shows-other-unit' },
      });
    },
  );

  test.each([
    ['M 12.6 T 21.5 °C', 12.6],
    ['5.5,2 °C', 5.5],
  ])('in %j the unit of another number is not its own', (shown, value) => {
    expect(decodePacket(text(shown), described({ value: words(1) })).value).toEqual({ ok: true, value });
  });

  test('a text begins where the description says, and must reach there', () => {
    expect(numberIn(text('A7 12.6'), words(1, 3))).toBe(12.6);
    expect(decodeLayout(text('A7 '), words(1, 3))).toEqual({
      ok: false,
      noReading: false,
      problem: { code: 'meter.value.bytes-missing', facts: { sent: 3, needed: 4 } },
    });
  });

  // ISO 8859-1 has the degree sign at 0xB0 (from memory); alone, that byte is no UTF-8.
  test('a degree sign sent as one byte spoils nothing', () => {
    const packet = Uint8Array.of(...text('12.6% 21.5'), 0xb0, 0x43);
    expect(numberIn(packet, words(2))).toBe(21.5);
    expect(numbersInText(packet)).toBe(2);
    expect(wordsOf(packet)).toEqual(['C']);
    expect(hasWord(packet, 'C')).toBe(true);
  });

  test('its words have no digit', () => {
    expect(wordsOf(text('12.6 % -- HOLD Äsche A1 1A'))).toEqual(['HOLD', 'Äsche']);
    expect(wordsOf(text('%'))).toEqual([]);
  });

  test('letters that are no UTF-8 are shown all the same', () => {
    expect(readLetters(Uint8Array.of(0x41, 0xb0), { kind: 'letters', byteOffset: 0, octets: 2 })).toBe('A°');
  });
});

describe('the fields of a packet', () => {
  /** Kind, tenths of a percent, a byte of flags, tenths of a degree, battery, two letters. */
  const full = described({
    match: { layout: number(4, 0), equals: 1 },
    value: number(6, 1, { exponent: -1 }),
    fields: {
      hold: { layout: bits(24, 1), equals: 1 },
      batteryPct: number(4, 6),
      tempC: number(14, 4, { exponent: -1 }),
      species: { at: { kind: 'letters', byteOffset: 7, octets: 2 }, expected: 'A1' },
    },
  });
  const packet = (kind: number, flags: number, battery = 80) =>
    Uint8Array.of(kind, 126, 0, flags, 215, 0, battery, 0x41, 0x31);

  test('are read beside the value', () => {
    expect(decodePacket(packet(1, 1), full)).toEqual({
      value: { ok: true, value: 12.6 },
      isHeld: true,
      batteryPct: 80,
      tempC: 21.5,
      species: 'A1',
    });
    expect(decodePacket(packet(1, 2), full).isHeld).toBe(false);
  });

  test('a packet of another kind has no value and no fields, and still says whether the meter holds', () => {
    expect(decodePacket(packet(2, 1), full)).toEqual({
      value: null,
      isHeld: true,
      batteryPct: null,
      tempC: null,
      species: null,
    });
    expect(decodePacket(new Uint8Array(0), full)).toMatchObject({ value: null, isHeld: null });
  });

  test.each([
    ['12.6 % H 21.5', true],
    ['9.4 %H', true],
    ['12.6 % 21.5', false],
    ['12.6 % HI', false],
    ['', null],
  ])('by a word, %j holds: %s', (shown, isHeld) => {
    const hold = { word: 'H' };
    expect(decodePacket(text(shown), described({ fields: { ...NO_FIELDS, hold } })).isHeld).toBe(isHeld);
  });

  test('a field that cannot be takes nothing from the value', () => {
    expect(decodePacket(packet(1, 0, 255), full)).toMatchObject({
      value: { ok: true, value: 12.6 },
      batteryPct: null,
      tempC: 21.5,
    });
    expect(decodePacket(packet(1, 0).slice(0, 4), full)).toMatchObject({
      value: { ok: true },
      tempC: null,
      species: null,
    });
  });

  test('a species that is a number is shown as it is', () => {
    const fields = { ...NO_FIELDS, species: { at: number(4, 2), expected: null } };
    expect(decodePacket(Uint8Array.of(1, 2, 12), described({ fields })).species).toBe('12');
  });
});
