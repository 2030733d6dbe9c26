/**
 * The ways in which a packet may hold a number. The formats and the room they take: Bluetooth SIG, Assigned Numbers,
 * Format Types (checked). Which of them are common is common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import { bytesOfLayout, isInteger, possibleLayouts } from '../../../shared-core/gatt/possible-layouts.ts';
import { octetsOfFormat, readableFormats } from '../../../shared-core/gatt/value.ts';

const plain = { exponent: 0, scale: 1, offset: 0 };
const ascii = (text: string) => new TextEncoder().encode(text);
const made = (bytes: Uint8Array) => possibleLayouts(bytes).map(({ layout }) => layout);
const number = (format: number, byteOffset = 0, byteOrder?: 'high-first'): Layout => ({
  kind: 'number',
  format,
  byteOffset,
  byteOrder,
  ...plain,
});
const bits = (firstBit: number, count: number, byteOrder?: 'high-first'): Layout => ({
  kind: 'bits',
  firstBit,
  bits: count,
  signed: false,
  byteOrder,
  ...plain,
});
const text = (nth: number, byteOffset = 0): Layout => ({ kind: 'text', byteOffset, nth, ...plain });
const costIn = (bytes: Uint8Array, layout: Layout) =>
  possibleLayouts(bytes).find((each) => JSON.stringify(each.layout) === JSON.stringify(layout))!.cost;

describe('whole bytes', () => {
  test('one byte holds the formats of one octet, or seven bits of it from either end', () => {
    // 2 and 3 bits to octets, uint8 and sint8.
    expect(made(Uint8Array.of(0))).toEqual([
      ...[2, 3, 4, 12].map((format) => number(format)),
      ...[0, 1].flatMap((first) => [bits(first, 7), bits(first, 7, 'high-first')]),
    ]);
  });

  test('every format is tried at every byte that leaves it room, and in both orders where it has several', () => {
    const numbers = made(new Uint8Array(9)).filter(({ kind }) => kind === 'number');
    expect(numbers).toEqual(
      readableFormats.flatMap((format) => {
        const octets = octetsOfFormat(format)!;
        const at = Array.from({ length: 10 - octets }, (_, byteOffset) => byteOffset);
        return at.flatMap((byteOffset) =>
          octets === 1
            ? [number(format, byteOffset)]
            : [number(format, byteOffset), number(format, byteOffset, 'high-first')],
        );
      }),
    );
  });

  test('two plain bytes are likeliest, a signed number or a float less, a format that few use least', () => {
    const cost = (format: number) => costIn(new Uint8Array(8), number(format));
    expect(cost(6)).toBe(0);
    // SFLOAT; sint16; uint8; sint8; uint48.
    const ordered = [6, 22, 14, 4, 12, 9].map(cost);
    expect(ordered).toEqual(ordered.toSorted((a, b) => a - b));
    expect(new Set(ordered).size).toBe(6);
    expect(cost(10)).toBe(cost(9));
  });

  test('low byte first, as Bluetooth has it, is likelier than high byte first', () => {
    const bytes = new Uint8Array(2);
    expect(costIn(bytes, number(6, 0, 'high-first'))).toBeGreaterThan(costIn(bytes, number(6)));
    expect(costIn(bytes, bits(0, 10, 'high-first'))).toBeGreaterThan(costIn(bytes, bits(0, 10)));
    expect(costIn(bytes, number(14, 0, 'high-first'))).toBeGreaterThan(costIn(bytes, number(14)));
  });
});

describe('bits', () => {
  const inTwo = made(new Uint8Array(2)).flatMap((each) => (each.kind === 'bits' ? [each] : []));

  test('begin at any bit and end within the packet', () => {
    const firsts = (count: number) =>
      inTwo.filter((each) => each.bits === count && !each.byteOrder).map(({ firstBit }) => firstBit);
    expect(firsts(7)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(firsts(12)).toEqual([0, 1, 2, 3, 4]);
    expect(firsts(15)).toEqual([0, 1]);
  });

  test('are never a whole byte or two, which a number is', () => {
    expect(inTwo.filter((each) => each.bits % 8 === 0)).toEqual([]);
    const inThree = made(new Uint8Array(3));
    expect(inThree).toContainEqual(bits(4, 16));
    expect(inThree).not.toContainEqual(bits(0, 16));
    expect(inThree).not.toContainEqual(bits(8, 16));
    // But eight bits hold no more than 25.5 %, and are no field beside a byte.
    expect(inThree).toContainEqual(bits(8, 12));
  });

  test('are less likely than whole bytes, and an odd number of them less than ten or twelve', () => {
    const bytes = new Uint8Array(2);
    const cost = (count: number) => costIn(bytes, bits(0, count));
    expect(cost(12)).toBeGreaterThan(costIn(bytes, number(6)));
    expect(cost(10)).toBe(cost(12));
    expect(cost(11)).toBeGreaterThan(cost(12));
  });
});

describe('text', () => {
  const texts = (bytes: Uint8Array) => possibleLayouts(bytes).filter(({ layout }) => layout.kind === 'text');

  test('holds each of its numbers, the first likelier than the next', () => {
    const [first, second, ...more] = texts(ascii('MC 13.4 % T 21'));
    expect([first!.layout, second!.layout, more]).toEqual([text(1), text(2), []]);
    expect(first!.cost).toBe(0);
    expect(second!.cost).toBeGreaterThan(0);
  });

  test('may begin behind bytes that are none', () => {
    const packet = Uint8Array.of(0xa5, 1, ...ascii('13.4'), 0x7f, ...ascii('21'));
    expect(texts(packet).map(({ layout }) => (layout.kind === 'text' ? layout.byteOffset : null))).toEqual([
      2, 2, 7,
    ]);
  });

  // ASCII (RFC 20): space is 0x20, the last sign that can be seen, "~", is 0x7e, and 0x7f is a control.
  test('begins at a space as at a digit, and not at a control', () => {
    expect(texts(ascii(' 5'))).toHaveLength(1);
    expect(texts(ascii('~5'))).toHaveLength(1);
    expect(texts(Uint8Array.of(0x7f, 0x35)).map(({ layout }) => layout)).toEqual([text(1, 1)]);
    expect(texts(Uint8Array.of(0x1f, 0x35)).map(({ layout }) => layout)).toEqual([text(1, 1)]);
  });

  test('is in no packet of other bytes, nor in an empty one', () => {
    expect(texts(Uint8Array.of(1, 2, 0x80))).toEqual([]);
    expect(possibleLayouts(new Uint8Array())).toEqual([]);
  });
});

test('the bytes that a layout reads: of text, all to the end', () => {
  expect(bytesOfLayout(number(6, 2), 9)).toEqual({ from: 2, to: 4 });
  expect(bytesOfLayout(bits(12, 10), 9)).toEqual({ from: 1, to: 3 });
  expect(bytesOfLayout(text(2, 3), 9)).toEqual({ from: 3, to: 9 });
});

test('whole numbers need a scale; floats and text are the number itself', () => {
  expect([number(6), number(14), bits(0, 12)].map(isInteger)).toEqual([true, true, true]);
  // float32, SFLOAT of IEEE 11073.
  expect([number(20), number(22), text(1)].map(isInteger)).toEqual([false, false, false]);
});
