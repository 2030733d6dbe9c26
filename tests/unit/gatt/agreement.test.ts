/** Whether a display would have shown a typed number. How long a value rests and how near it stays is our judgment. */
import { describe, expect, test } from 'vitest';
import { agreement } from '../../../shared-core/gatt/agreement.ts';
import type { StoredStretch } from '../../../shared-core/gatt/stretch.ts';

/** Numbers stored, and for how many ms each was the newest. */
const stretch = (...parts: readonly (readonly [stored: number | null, ms: number])[]): StoredStretch =>
  parts.map(([stored, ms]) => ({ stored, ms }));
const typed = (value: number, resolution: number) => ({ value, resolution, fromMs: 0, toMs: 0 });
/** Tenths beside a number; null where they do not show it. */
const agrees = (near: StoredStretch, shown = typed(13.4, 0.1), late: StoredStretch = []) =>
  agreement(shown, near, () => late, 0.1, 0);

describe('a number agrees', () => {
  test('fully where nothing else was shown, and by a bit less for each half of the time', () => {
    expect(agrees(stretch([134, 2000]))).toBe(0);
    expect(agrees(stretch([134, 1000], [200, 1000]))).toBe(-1);
    expect(agrees(stretch([200, 1500], [134, 500]))).toBe(-2);
  });

  test('by five bits less at worst, however short it was shown', () => {
    expect(agrees(stretch([134, 500], [200, 500 * 63]))).toBe(-5);
  });

  test('two bits less where the pins were lifted by then, and eight at worst', () => {
    const lifted = stretch([0, 3000]);
    expect(agrees(lifted, typed(13.4, 0.1), stretch([134, 2000]))).toBe(-2);
    expect(agrees(lifted, typed(13.4, 0.1), stretch([134, 2000], [0, 6000]))).toBe(-4);
    expect(agrees(lifted, typed(13.4, 0.1), stretch([134, 500], [0, 500 * 127]))).toBe(-8);
    expect(agrees(lifted, typed(13.4, 0.1), stretch([133, 2000], [0, 6000]))).toBeNull();
  });

  test('with a scale and an offset', () => {
    const near = stretch([34, 1000]);
    expect(agreement(typed(13.5, 0.1), near, () => [], 0.25, 5)).toBe(0);
    expect(agreement(typed(13.6, 0.1), near, () => [], 0.25, 5)).toBeNull();
  });
});

describe('a display of fewer digits', () => {
  const ofHundredths = (stored: number) =>
    agreement(typed(13.4, 0.1), stretch([stored, 1000]), () => [], 0.01, 0);

  test('rounds', () => {
    expect([1335, 1336, 1344, 1345].map(ofHundredths)).toEqual([0, 0, 0, 0]);
    expect(ofHundredths(1334)).toBeNull();
  });

  test('or cuts off, which is less likely', () => {
    expect([1346, 1349].map(ofHundredths)).toEqual([Math.log2(0.4), Math.log2(0.4)]);
    expect(ofHundredths(1350)).toBeNull();
  });
});

describe('the value stays near the number for 0.4 s', () => {
  test('within one and a half of its last digits', () => {
    const beside = (stored: number) => agrees(stretch([134, 200], [stored, 200]));
    expect(beside(135)).toBe(-1);
    expect(beside(136)).toBeNull();
    // Exactly one and a half.
    expect(agrees(stretch([100, 200], [115, 200]), typed(10, 1))).toBe(-1);
  });

  test('or within 1.2% of it', () => {
    const beside = (stored: number) => agrees(stretch([410, 200], [stored, 200]), typed(41, 0.1));
    expect(beside(414)).toBe(-1);
    expect(beside(406)).toBe(-1);
    expect(beside(415)).toBeNull();
  });

  test('at one time, not in two', () => {
    expect(agrees(stretch([134, 200], [200, 100], [134, 200]))).toBeNull();
    expect(agrees(stretch([134, 200], [null, 100], [134, 200]))).toBeNull();
  });

  test('and shows it in that time', () => {
    expect(agrees(stretch([135, 500], [200, 100], [134, 200]))).toBeNull();
    expect(agrees(stretch([134, 200], [200, 100], [135, 500]))).toBeNull();
  });

  test('and is there: no value is not a value of zero', () => {
    expect(agrees(stretch([1, 200], [null, 200]), typed(0.1, 0.1))).toBeNull();
  });
});
