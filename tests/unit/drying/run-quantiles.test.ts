import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { errorShare, runQuantiles } from '../../../shared-core/wood/drying/run-quantiles.ts';
import { normalQuantile, Z_90 } from '../../../shared-core/wood/maths/gaussian.ts';

const even = (count: number): number[] => Array.from({ length: count }, () => 1 / count);

describe('quantiles over runs', () => {
  test('lie between the middles of the runs round them, as each weighs', () => {
    // Middles at 0.25, 0.6 and 0.85: by hand.
    const { plain } = runQuantiles([0.5, 0.2, 0.3], 0.5);
    expect(plain([10, 20, 30])).toEqual({ low: 10, median: 10 + (10 * 0.25) / 0.35, high: 30 });
  });

  test('do not go by the order of the runs, nor by what was asked before', () => {
    const { plain, withError } = runQuantiles(even(4), 0.5);
    const sorted = plain([1, 2, 3, 4]);
    expect(plain([4, 2, 1, 3])).toEqual(sorted);
    expect(withError([14, 12, 11, 13])).toEqual(runQuantiles(even(4), 0.5).withError([11, 12, 13, 14]));
  });

  test('of equal values with other weights do not go by what was asked before', () => {
    const weights = [9, 2, 3, 8, 1, 4, 4, 1, 6].map((share) => share / 38);
    const values = [2, 2, 2, 2, 2, 2, 60, 60, 2];
    const asked = runQuantiles(weights, 0.5);
    asked.withError([2, 2, 2, 2, 2, 2, 3, 2, 2]);
    expect(asked.withError(values)).toEqual(runQuantiles(weights, 0.5).withError(values));
  });

  test('with an error are as wide as both together', () => {
    const runs = Array.from({ length: 400 }, (_, k) => 20 + 2 * normalQuantile((k + 0.5) / 400));
    const { low, median, high } = runQuantiles(even(400), 1.5).withError(runs);
    expect(median).toBeCloseTo(20, 2);
    // Standard deviations of 2 and 1.5 are 2.5 together.
    expect((high - low) / (2 * Z_90)).toBeCloseTo(2.5, 1);
  });

  test('have a smaller error where wood is dry, in proportion below 13 %', () => {
    const { withError } = runQuantiles(even(50), 0.5);
    const width = (pct: number): number => {
      const { low, high } = withError(Array.from({ length: 50 }, () => pct));
      return high - low;
    };
    expect(width(13)).toBeGreaterThan(0);
    expect(width(26)).toBeCloseTo(width(13), 9);
    expect(width(6.5)).toBeCloseTo(width(13) / 2, 9);
  });

  test('of one run without error are its value', () => {
    expect(runQuantiles([1], 0).withError([8])).toEqual({ low: 8, median: 8, high: 8 });
  });

  test('are those of all runs sorted, three times each with the error that Gauss and Hermite give', () => {
    const parts = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 30 });
    // Many equal values, and none that rounding alone makes equal.
    const tenths = fc.integer({ min: 20, max: 600 }).map((value) => value / 10);
    const given = parts.chain((shares) =>
      fc.record({
        shares: fc.constant(shares),
        days: fc.array(fc.array(tenths, { minLength: shares.length, maxLength: shares.length }), {
          minLength: 1,
          maxLength: 4,
        }),
      }),
    );
    fc.assert(
      fc.property(given, ({ shares, days }) => {
        const weights = shares.map((share) => share / shares.reduce((sum, each) => sum + each, 0));
        const { withError } = runQuantiles(weights, 0.5);
        for (const values of days) {
          const all = values.flatMap((value, k) =>
            [
              [-Math.sqrt(3), 1 / 6],
              [0, 2 / 3],
              [Math.sqrt(3), 1 / 6],
            ].map(([away, share]) => ({
              value: value + away! * 0.5 * errorShare(value),
              weight: share! * weights[k]!,
            })),
          );
          const { low, median, high } = withError(values);
          expect(low).toBeCloseTo(simply(all, 0.1), 6);
          expect(median).toBeCloseTo(simply(all, 0.5), 6);
          expect(high).toBeCloseTo(simply(all, 0.9), 6);
        }
      }),
    );
  });
});

/** Straight between the middles of sorted weighted values, and level beyond the first and last. */
function simply(all: { value: number; weight: number }[], probability: number): number {
  let below = 0;
  const middles = all
    .toSorted((a, b) => a.value - b.value)
    .map(({ value, weight }) => {
      below += weight;
      return { value, at: below - weight / 2 };
    });
  const next = middles.findIndex(({ at }) => at >= probability);
  if (next === 0) return middles[0]!.value;
  if (next < 0) return middles.at(-1)!.value;
  const [a, b] = [middles[next - 1]!, middles[next]!];
  return a.value + ((b.value - a.value) * (probability - a.at)) / (b.at - a.at);
}
