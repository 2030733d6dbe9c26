import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import {
  decodeLayout,
  decodeValue,
  formatTakesExponent,
  octetsOfFormat,
  placeOf,
  readableFormats,
  representableRange,
  storageOfFormat,
} from '../../../shared-core/gatt/value.ts';
import { english } from '../../../shared-core/words/en/index.ts';

const layout = { kind: 'number', byteOffset: 0, exponent: 0, scale: 1, offset: 0 } as const;
const selfDescribed = (format: number, exponent = 0) => ({
  value: { ...layout, format, exponent },
  unit: 'pct' as const,
  origin: 'self-described' as const,
});
/** The octets of a number as they go over the air, least significant first. */
const octets = (value: number, count: number) =>
  Uint8Array.from({ length: count }, (_, i) => Math.floor(value / 256 ** i) % 256);
const text = (shown: string) => new TextEncoder().encode(shown);

const scaling = {
  exponent: fc.integer({ min: -10, max: 10 }),
  scale: fc.double({ noNaN: true }),
  offset: fc.double({ noNaN: true }),
};
const byteOffset = fc.integer({ min: 0, max: 511 });
const byteOrder = fc.constantFrom(undefined, 'high-first' as const);
const anyLayoutOf: fc.Arbitrary<Layout> = fc.oneof(
  fc.record({
    kind: fc.constant('number' as const),
    format: fc.integer({ min: 0, max: 255 }),
    byteOffset,
    byteOrder,
    ...scaling,
  }),
  fc.record({
    kind: fc.constant('bits' as const),
    firstBit: fc.integer({ min: 0, max: 400 }),
    bits: fc.integer({ min: 1, max: 64 }),
    signed: fc.boolean(),
    byteOrder,
    ...scaling,
  }),
  fc.record({
    kind: fc.constant('text' as const),
    byteOffset: fc.integer({ min: 0, max: 8 }),
    nth: fc.integer({ min: 1, max: 4 }),
    ...scaling,
  }),
);

describe('integers with an exponent', () => {
  // Bluetooth SIG, Characteristic Presentation Format (GATT viewer text, looked up): "For a Characteristic Value of 23
  // and an Exponent of 2, the actual value is 2300. For a Characteristic Value of 3892 and an Exponent of -3, the
  // actual value is 3.892."
  test.each([
    [23, 2, 2300],
    [3892, -3, 3.892],
  ])('a stored %i with exponent %i is %d', (stored, exponent, actual) => {
    expect(decodeValue(octets(stored, 2), selfDescribed(6, exponent))).toEqual({ ok: true, value: actual });
  });

  // Two's complement at both ends of every width; widths and codes: Bluetooth SIG, Format Types (looked up).
  test.each([
    [2, 'ff', 3],
    [3, 'ff', 15],
    [4, 'ff', 255],
    [5, 'ffff', 4095],
    [6, 'ffff', 65535],
    [7, 'ffffff', 16777215],
    [8, 'ffffffff', 4294967295],
    [9, 'ffffffffffff', 281474976710655],
    // Beyond 53 bits: rounded to the nearest double.
    [10, 'ffffffffffffffff', 2 ** 64],
    [12, '80', -128],
    [13, '00f8', -2048],
    [14, '0080', -32768],
    [15, '000080', -8388608],
    [16, '00000080', -2147483648],
    [17, '000000000080', -140737488355328],
    [18, '0000000000000080', -(2 ** 63)],
    [14, 'ff7f', 32767],
    [14, 'ffff', -1],
  ])('format %i reads 0x%s as %d', (format, hex, value) => {
    expect(decodeValue(Uint8Array.from(Buffer.from(hex, 'hex')), selfDescribed(format))).toEqual({
      ok: true,
      value,
    });
  });

  // Big-endian order: common practice, no source. The Bluetooth standard has little-endian, and some meters do not.
  test.each([
    [6, '007e', 126],
    [14, 'fffe', -2],
    [20, '41573333', 13.45],
    // IEEE 11073 SFLOAT: exponent -1, mantissa 126.
    [22, 'f07e', 12.6],
  ])('format %i with its high byte first reads 0x%s as %d', (format, hex, value) => {
    const described = selfDescribed(format);
    const highFirst = { ...described, value: { ...described.value, byteOrder: 'high-first' as const } };
    const decoded = decodeValue(Uint8Array.from(Buffer.from(hex, 'hex')), highFirst);
    expect(decoded.ok && decoded.value).toBeCloseTo(value, 6);
  });

  test('reading a value with its high byte first leaves the bytes as they came', () => {
    const bytes = Uint8Array.of(0, 126);
    const described = selfDescribed(6);
    decodeValue(bytes, { ...described, value: { ...described.value, byteOrder: 'high-first' } });
    expect([...bytes]).toEqual([0, 126]);
  });

  // Bluetooth SIG, Format Types: bits beyond the format's are "ignored upon receipt".
  test('the unused bits of a 12-bit value are ignored', () => {
    expect(decodeValue(octets(0xf123, 2), selfDescribed(5))).toEqual({ ok: true, value: 0x123 });
  });

  test('a value stored in hundredths comes out as its decimal, not near it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 65535 }), (stored) => {
        expect(decodeValue(octets(stored, 2), selfDescribed(6, -2))).toEqual({
          ok: true,
          value: Number(`${stored}e-2`),
        });
      }),
    );
  });

  test('scale and offset of a meter mapped by hand come after the exponent, at its byte offset', () => {
    const mapped = {
      value: { ...layout, format: 6, byteOffset: 2, exponent: -1, scale: 0.5, offset: 4 },
      unit: 'pct' as const,
      origin: 'mapped-by-hand' as const,
    };
    expect(decodeValue(Uint8Array.of(9, 9, 200, 0, 9), mapped)).toEqual({ ok: true, value: 14 });
  });

  test('a value that a scale of a tenth makes a decimal comes out as that decimal', () => {
    const tenths = {
      value: { ...layout, format: 4, scale: 0.1 },
      unit: 'pct' as const,
      origin: 'mapped-by-hand' as const,
    };
    expect(decodeValue(Uint8Array.of(137), tenths)).toEqual({ ok: true, value: 13.7 });
  });
});

// Bluetooth SIG, Assigned Numbers, Format Types: the columns "Exponent Value" and "Format Type" (looked up).
describe('the formats of the standard', () => {
  const withExponent = [4, 5, 6, 7, 8, 9, 10, 12, 13, 14, 15, 16, 17, 18];
  const without = [2, 3, 20, 21, 22, 23];

  test('numbers of up to 64 bits are read; booleans, 128 bits, text and structs are not', () => {
    expect(readableFormats).toEqual([...withExponent, ...without].sort((a, b) => a - b));
    for (const format of [1, 11, 19, 24, 25, 26, 27]) {
      expect(octetsOfFormat(format)).toBeNull();
      expect(storageOfFormat(format)).toBeUndefined();
      expect(formatTakesExponent(format)).toBe(false);
      expect(decodeValue(new Uint8Array(16), selfDescribed(format))).toEqual({
        ok: false,
        noReading: false,
        problem: { code: 'meter.value.format-unreadable', facts: { format } },
      });
    }
  });

  test('an exponent applies to integers of a byte and more, and to nothing else', () => {
    expect(readableFormats.filter((format) => formatTakesExponent(format))).toEqual(withExponent);
    expect(storageOfFormat(13)).toEqual({ kind: 'signed', bits: 12, octets: 2, takesExponent: true });
    expect(decodeValue(Uint8Array.of(3), selfDescribed(2, -1))).toEqual({ ok: true, value: 3 });
    // 3 × 10^1 with the exponent in the value itself.
    expect(decodeValue(octets(0x1003, 2), selfDescribed(22, -2))).toEqual({ ok: true, value: 30 });
  });

  test.each([
    [2, 1],
    [3, 1],
    [4, 1],
    [5, 2],
    [6, 2],
    [7, 3],
    [8, 4],
    [9, 6],
    [10, 8],
    [12, 1],
    [13, 2],
    [14, 2],
    [15, 3],
    [16, 4],
    [17, 6],
    [18, 8],
    [20, 4],
    [21, 8],
    [22, 2],
    [23, 4],
  ])('format %i fills %i bytes', (format, count) => {
    expect(octetsOfFormat(format)).toBe(count);
    expect(decodeValue(new Uint8Array(count), selfDescribed(format))).toEqual({ ok: true, value: 0 });
    expect(decodeValue(new Uint8Array(count - 1), selfDescribed(format))).toMatchObject({
      problem: { code: 'meter.value.bytes-missing', facts: { sent: count - 1, needed: count } },
    });
  });
});

// Bits as `layout.ts` counts them: arithmetic.
describe('an integer of any bits', () => {
  const bitsOf = (more: Partial<Extract<Layout, { kind: 'bits' }>>) =>
    ({
      kind: 'bits',
      firstBit: 0,
      bits: 12,
      signed: false,
      exponent: 0,
      scale: 1,
      offset: 0,
      ...more,
    }) as const;

  test.each([
    // 0xABCD low byte first: its lowest twelve bits, those from bit 4 on, and four in the middle.
    ['cdab', { bits: 12 }, 0xbcd],
    ['cdab', { firstBit: 4, bits: 12 }, 0xabc],
    ['cdab', { firstBit: 6, bits: 4 }, 0xf],
    // From bit 12 to bit 20, over two bytes of three.
    ['00f00c', { firstBit: 12, bits: 8 }, 0xcf],
    // 0xABCD as it is written: bits are counted from its highest.
    ['abcd', { bits: 12, byteOrder: 'high-first' }, 0xabc],
    ['abcd', { firstBit: 4, bits: 12, byteOrder: 'high-first' }, 0xbcd],
    ['00abcd', { firstBit: 12, bits: 8, byteOrder: 'high-first' }, 0xbc],
    // Two's complement of the same twelve bits.
    ['ff0f', { bits: 12, signed: true }, -1],
    ['0008', { bits: 12, signed: true }, -2048],
    ['ff07', { bits: 12, signed: true }, 2047],
    ['0080', { firstBit: 15, bits: 1 }, 1],
  ] as const)('0x%s under %j is %i', (hex, more, value) => {
    const bytes = Uint8Array.from(Buffer.from(hex, 'hex'));
    expect(decodeLayout(bytes, bitsOf(more))).toEqual({ ok: true, value });
    expect(Buffer.from(bytes).toString('hex')).toBe(hex);
  });

  test('its exponent, scale and offset are those of any integer', () => {
    const layout = bitsOf({ exponent: -1, scale: 2, offset: 0.5 });
    expect(decodeLayout(Uint8Array.of(65, 0), layout)).toEqual({ ok: true, value: 13.5 });
  });

  test('an offset alone is added as well', () => {
    expect(decodeLayout(Uint8Array.of(65, 0), bitsOf({ offset: -5 }))).toEqual({ ok: true, value: 60 });
  });

  test('a packet that ends before its last bit is refused with the bytes that it needs', () => {
    expect(decodeLayout(new Uint8Array(2), bitsOf({ firstBit: 5 }))).toMatchObject({
      problem: { code: 'meter.value.bytes-missing', facts: { sent: 2, needed: 3 } },
    });
    expect(decodeLayout(new Uint8Array(2), bitsOf({ firstBit: 4 })).ok).toBe(true);
  });
});

describe('what a layout can hold, and where it looks', () => {
  const number = (format: number, more: Partial<Layout> = {}): Layout =>
    ({ ...layout, format, ...more }) as Layout;
  const bits: Layout = {
    kind: 'bits',
    firstBit: 12,
    bits: 8,
    signed: false,
    exponent: 0,
    scale: 1,
    offset: 0,
  };

  test.each<[string, Layout, { min: number; max: number } | null]>([
    ['uint8', number(4), { min: 0, max: 255 }],
    ['sint8', number(12), { min: -128, max: 127 }],
    ['uint16 in tenths', number(6, { exponent: -1 }), { min: 0, max: 6553.5 }],
    ['uint8 of half points from 4 on', number(4, { scale: 0.5, offset: 4 }), { min: 4, max: 131.5 }],
    ['uint8 that counts down', number(4, { scale: -1, offset: 100 }), { min: -155, max: 100 }],
    ['eight bits', bits, { min: 0, max: 255 }],
    ['eight bits with a sign', { ...bits, signed: true }, { min: -128, max: 127 }],
    ['a float', number(20), null],
    ['a medical float', number(22), null],
    ['text', { ...layout, kind: 'text', nth: 1 }, null],
  ])('%s', (_, of, range) => {
    expect(representableRange(of)).toEqual(range);
  });

  test.each<[string, Layout, { from: number; count: number | null }]>([
    ['a number at its offset', number(7, { byteOffset: 3 }), { from: 3, count: 3 }],
    ['bits in all bytes that have one of them', bits, { from: 1, count: 2 }],
    ['bits that end with a byte', { ...bits, firstBit: 8 }, { from: 1, count: 1 }],
    ['text to the end', { ...layout, kind: 'text', byteOffset: 2, nth: 1 }, { from: 2, count: null }],
  ])('%s', (_, of, place) => {
    expect(placeOf(of)).toEqual(place);
  });
});

describe('IEEE 754 floats', () => {
  // Node's own writer as the other side.
  test('a 32-bit and a 64-bit float are read back', () => {
    const short = Buffer.alloc(4);
    short.writeFloatLE(12.5);
    const long = Buffer.alloc(8);
    long.writeDoubleLE(12.6);
    expect(decodeValue(short, selfDescribed(20))).toEqual({ ok: true, value: 12.5 });
    expect(decodeValue(long, selfDescribed(21))).toEqual({ ok: true, value: 12.6 });
  });

  // Math.fround gives the 32-bit float nearest to a number: 13.7 is sent as 13.699999809265137.
  test('a 32-bit float is the decimal that its maker wrote', () => {
    const bytes = Buffer.alloc(4);
    for (let tenths = 0; tenths <= 2000; tenths++) {
      bytes.writeFloatLE(tenths / 10);
      expect(decodeValue(bytes, selfDescribed(20))).toEqual({ ok: true, value: tenths / 10 });
    }
    for (const value of [1.45, 1_234_500, 3.4028234663852886e38, 2 ** -149, 16777217]) {
      bytes.writeFloatLE(value);
      const decoded = decodeValue(bytes, selfDescribed(20));
      expect(decoded.ok && Math.fround(decoded.value)).toBe(Math.fround(value));
    }
  });

  // Bluetooth SIG, Format Types, column "Exponent Value": No for the floats.
  test('the exponent of the description does not apply to a float', () => {
    const short = Buffer.alloc(4);
    short.writeFloatLE(12.5);
    expect(decodeValue(short, selfDescribed(20, -2))).toEqual({ ok: true, value: 12.5 });
  });

  test.each([
    [Number.NaN, 'meter.value.not-valid'],
    [Number.POSITIVE_INFINITY, 'meter.value.above-scale'],
    [Number.NEGATIVE_INFINITY, 'meter.value.below-scale'],
  ])('%d is no reading: %s', (value, code) => {
    const short = Buffer.alloc(4);
    short.writeFloatLE(value);
    expect(decodeValue(short, selfDescribed(20))).toEqual({
      ok: false,
      noReading: true,
      problem: { code },
    });
  });
});

describe('IEEE 11073 FLOAT and SFLOAT', () => {
  // HL7 Personal Health Device implementation guide, page "MDER FLOATs and SFLOATs", tables of examples (looked up).
  test.each([
    [0x00000002, 2],
    [0xff000014, 2.0],
    [0xfe0000c8, 2.0],
    [0x01000002, 20],
    [0x02000002, 200],
    [0x000000c8, 200],
    [0x000004d2, 1234],
    [0x00fffb2e, -1234],
  ])('FLOAT word %i', (whole, value) => {
    expect(decodeValue(octets(whole, 4), selfDescribed(23))).toEqual({ ok: true, value });
  });

  test.each([
    [0x0002, 2],
    [0xf014, 2.0],
    [0xe0c8, 2.0],
    [0x1002, 20],
    [0x2002, 200],
    [0x00c8, 200],
    [0x04d2, 1234],
    [0x0b2e, -1234],
  ])('SFLOAT word %i', (whole, value) => {
    expect(decodeValue(octets(whole, 2), selfDescribed(22))).toEqual({ ok: true, value });
  });

  // The same page, "Special FLOAT and SFLOAT Values".
  test.each([
    [0x007fffff, 0x07ff, true, 'meter.value.not-valid'],
    [0x007ffffe, 0x07fe, true, 'meter.value.above-scale'],
    [0x00800002, 0x0802, true, 'meter.value.below-scale'],
    [0x00800000, 0x0800, true, 'meter.value.not-at-resolution'],
    [0x00800001, 0x0801, false, 'meter.value.reserved-code'],
  ])(
    'special value: FLOAT word %i and SFLOAT word %i are no reading, each with its reason',
    (float, sfloat, noReading, code) => {
      const noValue = { ok: false, noReading, problem: { code } };
      expect(decodeValue(octets(float, 4), selfDescribed(23))).toEqual(noValue);
      expect(decodeValue(octets(sfloat, 2), selfDescribed(22))).toEqual(noValue);
    },
  );
});

// Special values have the exponent 0 (the same page): with another one they are numbers.
test('the mantissa of a special value with an exponent is a number', () => {
  expect(decodeValue(octets(0xf7ff, 2), selfDescribed(22))).toEqual({ ok: true, value: 204.7 });
  expect(decodeValue(octets(0x1802, 2), selfDescribed(22))).toEqual({ ok: true, value: -20_460 });
});

test('a 64-bit float below every number is below the scale of its meter', () => {
  const bytes = Buffer.alloc(8);
  bytes.writeDoubleLE(Number.NEGATIVE_INFINITY);
  expect(decodeValue(bytes, selfDescribed(21))).toMatchObject({
    noReading: true,
    problem: { code: 'meter.value.below-scale' },
  });
});

describe('text', () => {
  const textOf = (unit: 'pct' | 'ohm') => ({
    value: { ...layout, kind: 'text' as const, nth: 1 },
    unit,
    origin: 'self-described' as const,
  });

  test.each([
    ['12.6 %', 12.6],
    ['12,6%', 12.6],
    [' 7.0\0\0', 7],
    ['+9', 9],
    ['18.2 % MC', 18.2],
    ['−0.4 %', -0.4],
    ['12.6%H', 12.6],
    ['12.6 % HOLD', 12.6],
    ['12.6 % H MC', 12.6],
  ])('%j is %d %%', (shown, value) => {
    expect(decodeValue(text(shown), textOf('pct'))).toEqual({ ok: true, value });
  });

  test.each([
    ['470 kΩ', 470_000],
    ['12.6 MΩ', 12.6e6],
    ['3 Gohm', 3e9],
    ['1.2e6', 1.2e6],
    ['1.2e+6', 1.2e6],
    ['1.2e-3', 0.0012],
    ['1.2e10', 1.2e10],
    ['470 Ω', 470],
    ['470 ohms', 470],
  ])('%j is %d ohms', (shown, value) => {
    expect(decodeValue(text(shown), textOf('ohm'))).toEqual({ ok: true, value });
  });

  test.each([
    ['1,234', 'meter.value.shows-ambiguous', { shown: '1,234' }],
    ['12.6 MΩ', 'meter.value.shows-other-unit', { shown: '12.6 MΩ', unit: 'pct' }],
    ['12.6 %RH', 'meter.value.shows-none', { shown: '12.6 %RH' }],
    ['12.6 9', 'meter.value.shows-none', { shown: '12.6 9' }],
    ['12.6%H2', 'meter.value.shows-none', { shown: '12.6%H2' }],
    ['<script>alert(1)</script>', 'meter.value.shows-none', { shown: '<script>alert(1)</sc…' }],
  ])('%j is refused with what it shows', (shown, code, facts) => {
    expect(decodeValue(text(shown), textOf('pct'))).toEqual({
      ok: false,
      noReading: false,
      problem: { code, facts },
    });
  });

  // Common practice, no source: what displays show with nothing between the pins.
  test.each([
    ['OL', 'OL'],
    ['---', '---'],
    ['−−.−', '−−.−'],
    ['\0', ''],
    ['a\u0007b', 'a·b'],
    ['a\0b', 'a·b'],
    [' Err \0\0', 'Err'],
    ['Take the pins out...', 'Take the pins out...'],
    ['Take the pins out now', 'Take the pins out no…'],
  ])('%j, without a digit, is the meter saying that it has none', (sent, shown) => {
    expect(decodeValue(text(sent), textOf('pct'))).toEqual({
      ok: false,
      noReading: true,
      problem: { code: 'meter.value.shows-none', facts: { shown } },
    });
  });

  test('ohms are no percentage, and a percentage is no ohms', () => {
    expect(decodeValue(text('12.6 %'), textOf('ohm'))).toMatchObject({
      problem: { code: 'meter.value.shows-other-unit', facts: { shown: '12.6 %', unit: 'ohm' } },
    });
  });

  test('a number beside another one does not stand alone', () => {
    const second = { ...textOf('pct'), value: { ...textOf('pct').value, nth: 2 } };
    expect(decodeValue(text('12.6,12.6'), second)).toMatchObject({ ok: false });
  });

  test('bytes that are no UTF-8 are refused', () => {
    expect(decodeValue(Uint8Array.of(0x31, 0xff), textOf('pct'))).toEqual({
      ok: false,
      noReading: false,
      problem: { code: 'meter.value.not-text' },
    });
  });
});

describe('bytes from the air', () => {
  test.each([
    [0, 'meter.value.bytes-missing'],
    [1, 'meter.value.bytes-missing'],
    [3, 'meter.value.bytes-extra'],
  ])('%i bytes for a 16-bit value are refused with both numbers', (sent, code) => {
    expect(decodeValue(new Uint8Array(sent), selfDescribed(6))).toEqual({
      ok: false,
      noReading: false,
      problem: { code, facts: { sent, needed: 2 } },
    });
  });

  test('a number behind the value is one more only where the value was to be alone', () => {
    const described = selfDescribed(6);
    expect(decodeValue(Uint8Array.of(126, 0, 9), { ...described, origin: 'mapped-by-hand' })).toEqual({
      ok: true,
      value: 126,
    });
    expect(decodeLayout(Uint8Array.of(126, 0, 9), described.value)).toEqual({ ok: true, value: 126 });
  });

  test('a number that no double can hold is refused', () => {
    const tooLarge = { ...selfDescribed(21).value, scale: 1e60 };
    const bytes = Buffer.alloc(8);
    bytes.writeDoubleLE(1e300);
    expect(decodeLayout(bytes, tooLarge)).toEqual({
      ok: false,
      noReading: false,
      problem: { code: 'meter.value.too-large' },
    });
  });

  test('any bytes under any description give a finite number or a problem, and never throw', () => {
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 40 }),
        anyLayoutOf,
        fc.constantFrom('pct' as const, 'ohm' as const),
        fc.constantFrom('self-described' as const, 'mapped-by-hand' as const),
        (bytes, anyLayout, unit, origin) => {
          const decoded = decodeValue(bytes, { value: anyLayout, unit, origin });
          if (decoded.ok) expect(Number.isFinite(decoded.value)).toBe(true);
          else expect(english).toHaveProperty([decoded.problem.code]);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('an integer value lies within what its layout can hold', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(2, 3, 4, 5, 6, 7, 8, 12, 13, 14, 15, 16),
        fc.integer({ min: -3, max: 3 }),
        fc.uint8Array({ minLength: 8, maxLength: 8 }),
        (format, exponent, bytes) => {
          expect(readableFormats).toContain(format);
          const description = { ...selfDescribed(format, exponent), origin: 'mapped-by-hand' as const };
          const decoded = decodeValue(bytes, description);
          const range = representableRange(description.value)!;
          expect(decoded.ok && decoded.value >= range.min && decoded.value <= range.max).toBe(true);
        },
      ),
    );
  });
});
