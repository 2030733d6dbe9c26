/** What all packets say for or against a way to read them, in bits. How much each thing says is our judgment. */
import { describe, expect, test } from 'vitest';
import { hasMoved, judgeLayout, movementBonus } from '../../../shared-core/gatt/judge-layout.ts';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import type { ByteMotion } from '../../../shared-core/gatt/movement.ts';

const plain = { exponent: 0, scale: 1, offset: 0 } as const;
// Bluetooth SIG, Assigned Numbers, Format Types (checked): uint8 is 4, uint16 is 6, uint32 is 8, sint8 is 12.
const number = (format: number, byteOffset = 0, exponent = 0): Layout => ({
  kind: 'number',
  format,
  byteOffset,
  ...plain,
  exponent,
});
const text: Layout = { kind: 'text', byteOffset: 0, nth: 1, ...plain };
const packetsOf = (...bytes: readonly number[][]) =>
  bytes.map((each, at) => ({ atMs: at * 100, bytes: Uint8Array.from(each) }));
const bytesOf = (...values: number[]) => packetsOf(...values.map((value) => [value & 255]));
const words = (...letters: string[]) =>
  packetsOf(...letters.map((each) => [...new TextEncoder().encode(each)]));
const times = (count: number, value: number): number[] => Array.from({ length: count }, () => value);
/** For so many different numbers. */
const forDifferent = (count: number) => 1.5 * Math.log2(1 + count);

describe('what a layout reads', () => {
  const readsOf = (layout: Layout, packets: ReturnType<typeof packetsOf>, unit: 'pct' | 'ohm' = 'pct') =>
    judgeLayout(layout, packets, unit).reads;

  test('is told once of each packet that differs', () => {
    expect(readsOf(number(4, 0, -1), bytesOf(134, 257, 134, 98)).map(Number)).toEqual([13.4, 0.1, 9.8]);
  });

  test('is nothing where it is no number, or one that no wood has', () => {
    expect(readsOf(number(12), bytesOf(13, 0, -5))).toEqual(['13.0000000', '', '']);
    expect(readsOf(number(4), bytesOf(200, 201)).map((read) => read !== '')).toEqual([true, false]);
    expect(readsOf(text, words('13.4', '--.-'))).toEqual(['13.4000000', '']);
    expect(readsOf(number(4), bytesOf(201), 'ohm')).toEqual(['201.000000']);
  });

  test('is the same number, however it was multiplied', () => {
    const thirds = { ...number(4), scale: 1 / 3 };
    expect(readsOf(thirds, bytesOf(10))).toEqual(['3.33333333']);
  });
});

describe('all packets say', () => {
  const bonusOf = (layout: Layout, packets: ReturnType<typeof packetsOf>, unit: 'pct' | 'ohm' = 'pct') =>
    judgeLayout(layout, packets, unit).bonus;
  const bonus = (...values: number[]) => bonusOf(number(4), bytesOf(...values));
  const signed = (...values: number[]) => bonusOf(number(12), bytesOf(...values));

  test('more the more numbers differ', () => {
    expect(bonus(10, 11, 12, 13, 14)).toBe(forDifferent(5));
    expect(bonus(10, 11, 12, 12, 13, 14, 13)).toBe(forDifferent(5));
    expect(bonus(10, 10, 10)).toBe(forDifferent(1));
  });

  test('the same of zero, which a meter may read in the air', () => {
    expect(bonus(0, 1, 2, 3, 4)).toBe(forDifferent(5));
  });

  test('less where some hold no number', () => {
    const short = packetsOf([0, 10], [0], [0, 11], [0], [0, 12], [0], [0, 13], [0], [0, 14], [0]);
    expect(bonusOf(number(4, 1), short)).toBe(forDifferent(5) - 1.5);
  });

  test('less where it reads several numbers that no wood has: above 200% or below 0%', () => {
    // One alone may say that the pins are in the air.
    expect(bonus(197, 198, 199, 200, 201, 201, 201)).toBe(forDifferent(4));
    expect(bonus(198, 199, 200, 201, 202)).toBe(forDifferent(3) - 4);
    expect(signed(-1, 0, 1, 2, 3)).toBe(forDifferent(4));
    expect(signed(-2, -1, 0, 1, 2)).toBe(forDifferent(3) - 4);
  });

  test('less where ohms are more than anything measures', () => {
    const ofTens = (...values: number[]) =>
      bonusOf(
        number(8, 0, 10),
        packetsOf(...values.map((value) => [value & 255, (value >> 8) & 255, value >> 16, 0])),
        'ohm',
      );
    expect(ofTens(99_996, 99_997, 99_998, 99_999, 100_000)).toBe(forDifferent(5));
    expect(ofTens(99_997, 99_998, 99_999, 100_000, 100_001)).toBe(forDifferent(4));
    expect(ofTens(99_998, 99_999, 100_000, 100_001, 100_002)).toBe(forDifferent(3) - 4);
  });

  test('less where it goes through its whole range again and again, not where pins go in and out', () => {
    expect(bonus(10, 20, 10, 20, 10, 20, 10, 20, 10, 20)).toBe(forDifferent(2) - 8);
    expect(bonus(...times(5, 10), ...times(10, 20), ...times(5, 10))).toBe(forDifferent(2));
    expect(bonus(...times(5, 10), ...times(3, 20), ...times(2, 10))).toBe(forDifferent(2) - 1);
  });

  test('no more of a step of a quarter of the range than of a smaller one', () => {
    expect(bonus(10, 12, 14, 16, 18)).toBe(forDifferent(5));
    expect(bonus(10, 13, 14, 16, 18)).toBeCloseTo(forDifferent(5) - 1, 9);
  });

  test('nothing of what came long ago', () => {
    const wild = Array.from({ length: 100 }, (_, at) => (at % 2 === 0 ? 255 : 201 + (at % 50)));
    const rest = Array.from({ length: 300 }, (_, at) => 10 + Math.floor(at / 50));
    expect(bonus(...wild, ...rest)).toBe(bonus(...rest));
    expect(bonus(...wild, ...rest.slice(0, 200))).toBeLessThan(bonus(...rest.slice(0, 200)));
  });

  test('little, where none of them holds a number', () => {
    expect(bonusOf(text, words('--.-', '--.-'))).toBe(-3);
  });
});

test('a number has moved where it was ever another one, or none', () => {
  const moved = (layout: Layout, packets: ReturnType<typeof packetsOf>) => hasMoved(layout, packets, 'pct');
  expect(moved(number(4), bytesOf(10, 10, 11))).toBe(true);
  expect(moved(number(4), bytesOf(10, 10, 10))).toBe(false);
  expect(moved(number(4), packetsOf([10, 1], [10, 2]))).toBe(false);
  expect(moved(number(4, 1), packetsOf([10, 1], [10]))).toBe(true);
  expect(moved(number(4), [])).toBe(false);
});

describe('a layout is likelier', () => {
  const bonus = (layout: Layout, ...motions: ByteMotion[]) =>
    movementBonus(layout, motions.length, { motions, liveliest: null, size: 0 });

  test('where no byte of it counts up', () => {
    expect(bonus(number(6, 1), 'still', 'moves', 'still')).toBe(2);
    expect(bonus(number(6, 1), 'still', 'moves', 'counts')).toBe(-4);
    expect(bonus(number(6, 1), 'still', 'counts', 'moves')).toBe(-4);
    // Beside it is no matter.
    expect(bonus(number(4, 1), 'counts', 'moves', 'counts')).toBe(2);
  });

  test('unless it is text, where digits of other numbers count', () => {
    expect(bonus(text, 'counts', 'still', 'moves')).toBe(2);
  });

  test('where no byte beside it moves, of which it may be a part', () => {
    expect(bonus(number(4, 1), 'still', 'moves', 'still')).toBe(2);
    expect(bonus(number(4, 1), 'moves', 'moves', 'still')).toBe(1.5);
    expect(bonus(number(4, 1), 'still', 'moves', 'moves')).toBe(1.5);
    expect(bonus(number(4, 1), 'still', 'moves', 'still', 'moves')).toBe(2);
    expect(bonus(number(4, 0), 'moves', 'still')).toBe(2);
  });
});
