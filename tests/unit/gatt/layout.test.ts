import { describe, expect, test } from 'vitest';
import {
  bitsLayoutSchema,
  conditionSchema,
  isSameLayout,
  type Layout,
  layoutSchema,
  lettersSchema,
} from '../../../shared-core/gatt/layout.ts';

const plain = { exponent: 0, scale: 1, offset: 0 } as const;
const number = { kind: 'number', format: 6, byteOffset: 0, ...plain } as const;
const bits = { kind: 'bits', firstBit: 0, bits: 12, signed: false, ...plain } as const;
const text = { kind: 'text', byteOffset: 0, nth: 1, ...plain } as const;
const letters = { kind: 'letters', byteOffset: 0, octets: 2 } as const;

type Values = readonly (number | string | undefined)[];
const isLayout = (layout: object) => layoutSchema.safeParse(layout).success;

describe('the least and the most of a layout', () => {
  // Longest value of an attribute, 512 bytes: Core Specification, Vol 3 Part F 3.2.9. Formats 1 to 27: Assigned Numbers,
  // Format Types, of which 25 is text. The others are ours.
  test.each<[string, object, string, Values, Values]>([
    ['byte where a number begins', number, 'byteOffset', [0, 511], [-1, 512, 0.5]],
    ['format', number, 'format', [1, 24, 26, 27], [0, 25, 28, 6.5]],
    ['byte order', number, 'byteOrder', [undefined, 'high-first'], ['low-first']],
    ['first bit', bits, 'firstBit', [0, 4095], [-1, 4096, 0.5]],
    ['count of bits', bits, 'bits', [1, 64], [0, 65, 1.5]],
    ['byte where a text begins', text, 'byteOffset', [0, 511], [-1, 512]],
    ['number of a text', text, 'nth', [1, 64], [0, 65, 1.5]],
    ['power of ten', number, 'exponent', [-10, 10], [-11, 11, 0.5]],
    ['factor', number, 'scale', [1e60, -1e60, 1 / 1e60, -1 / 1e60], [0, 1e61, -1e61, 1e-61, -1e-61]],
    ['offset', number, 'offset', [0, 1e60, -1e60], [1e61, -1e61]],
  ])('%s', (_, layout, part, allowed, refused) => {
    for (const value of allowed) expect(isLayout({ ...layout, [part]: value }), String(value)).toBe(true);
    for (const value of refused) expect(isLayout({ ...layout, [part]: value }), String(value)).toBe(false);
  });

  test('bits are of no other kind', () => {
    expect(bitsLayoutSchema.safeParse(bits).success).toBe(true);
    expect(bitsLayoutSchema.safeParse({ ...bits, kind: 'text' }).success).toBe(false);
  });

  test('letters', () => {
    const isLetters = (changes: object) => lettersSchema.safeParse({ ...letters, ...changes }).success;
    expect([{}, { octets: 1 }, { octets: 32 }, { byteOffset: 511 }].every(isLetters)).toBe(true);
    const refused = [{ octets: 0 }, { octets: 33 }, { octets: 1.5 }, { byteOffset: 512 }, { kind: 'text' }];
    expect(refused.some(isLetters)).toBe(false);
  });
});

test.each([
  ['scale', undefined, 'meter.form.wrong.times'],
  ['scale', -1e61, 'meter.form.wrong.times'],
  ['scale', 1e61, 'meter.form.wrong.times'],
  ['scale', 0, 'meter.form.wrong.times'],
  ['offset', undefined, 'meter.form.wrong.plus'],
  ['offset', -1e61, 'meter.form.wrong.plus'],
  ['offset', 1e61, 'meter.form.wrong.plus'],
])('a %s of %s says what to enter', (part, value, wrong) => {
  const { error } = layoutSchema.safeParse({ ...number, [part]: value });
  expect(error!.issues[0]).toMatchObject({ path: [part], message: wrong });
});

describe('a condition', () => {
  const isCondition = (condition: object) => conditionSchema.safeParse(condition).success;

  test('is a number of the packet that equals another', () => {
    expect([0, 1e60, -1e60].map((equals) => isCondition({ layout: number, equals }))).toEqual([
      true,
      true,
      true,
    ]);
    expect([1e61, -1e61].map((equals) => isCondition({ layout: number, equals }))).toEqual([false, false]);
    expect(isCondition({ layout: number })).toBe(false);
    expect(isCondition({ equals: 1 })).toBe(false);
    expect(conditionSchema.parse({ layout: bits, equals: 1 })).toEqual({ layout: bits, equals: 1 });
  });

  test('is a word of letters and digits, 16 at most', () => {
    for (const word of ['H', 'HOLD', '2', 'Ä1', 'A'.repeat(16)]) {
      expect(conditionSchema.parse({ word })).toEqual({ word });
    }
    for (const word of ['', 'A B', '-H', 'H-', '!', 'A'.repeat(17)])
      expect(isCondition({ word })).toBe(false);
  });

  test('is not empty', () => {
    expect(isCondition({})).toBe(false);
  });
});

describe('two layouts', () => {
  test('are the same whatever order their parts are in, and with or without a byte order that is absent', () => {
    const { kind, ...rest } = number;
    expect(isSameLayout(number, { ...rest, kind })).toBe(true);
    expect(isSameLayout(number, { ...number, byteOrder: undefined })).toBe(true);
  });

  test.each<[string, Layout]>([
    ['byte', { ...number, byteOffset: 1 }],
    ['byte order', { ...number, byteOrder: 'high-first' }],
    ['power of ten', { ...number, exponent: -1 }],
    ['kind', text],
  ])('differ by a %s', (_, other) => {
    expect(isSameLayout(number, other)).toBe(false);
  });
});
