import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cholesky,
  inversePositive,
  normalCdf,
  normalQuantile,
  posterior,
  solvePositive,
  times,
} from '../../../shared-core/wood/maths/gaussian.ts';

/** B B' + 0.1, which is positive definite whatever B. */
const positive = fc
  .array(fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 4, maxLength: 4 }), {
    minLength: 4,
    maxLength: 4,
  })
  .map((b) =>
    b.map((row, i) => b.map((other, j) => row.reduce((sum, v, k) => sum + v * other[k]!, i === j ? 0.1 : 0))),
  );

describe('a positive definite matrix', () => {
  test('is its Cholesky factor times its transpose', () => {
    fc.assert(
      fc.property(positive, (a) => {
        const lower = cholesky(a)!;
        for (const [i, row] of a.entries()) {
          for (const [j, value] of row.entries()) {
            expect(lower[i]!.reduce((sum, v, k) => sum + v * lower[j]![k]!, 0)).toBeCloseTo(value, 9);
          }
        }
      }),
    );
  });

  test('times the solution gives the right side, and times its inverse gives one', () => {
    fc.assert(
      fc.property(positive, (a) => {
        const b = [1, -2, 3, 0.5];
        for (const [i, value] of times(a, solvePositive(a, b)!).entries())
          expect(value).toBeCloseTo(b[i]!, 7);
        const inverse = inversePositive(a)!;
        for (let j = 0; j < 4; j++) {
          const column = times(
            a,
            inverse.map((row) => row[j]!),
          );
          for (const [i, value] of column.entries()) expect(value).toBeCloseTo(i === j ? 1 : 0, 7);
        }
      }),
    );
  });

  test.each([
    [
      'one that is not',
      [
        [1, 2],
        [2, 1],
      ],
    ],
    [
      'numbers that are none',
      [
        [1, Number.NaN],
        [Number.NaN, 1],
      ],
    ],
    [
      'numbers past all bounds',
      [
        [Number.POSITIVE_INFINITY, 0],
        [0, 1],
      ],
    ],
  ])('is told from %s', (_, a) => {
    expect(cholesky(a)).toBeNull();
    expect(solvePositive(a, [1, 1])).toBeNull();
    expect(inversePositive(a)).toBeNull();
    expect(
      posterior(
        { mean: [0, 0], covariance: a },
        {
          matrix: [
            [1, 0],
            [0, 1],
          ],
          vector: [0, 0],
        },
      ),
    ).toBeNull();
  });
});

// Mean of a normal with known variance: Gelman and others, Bayesian Data Analysis, eq. 2.10 (from memory).
test('a prior and one reading meet at their precision-weighted mean', () => {
  const after = posterior({ mean: [10], covariance: [[4]] }, { matrix: [[1 / 1]], vector: [15 / 1] })!;
  expect(after.mean[0]).toBeCloseTo((10 / 4 + 15) / (1 / 4 + 1), 12);
  expect(after.covariance[0]![0]).toBeCloseTo(1 / (1 / 4 + 1), 12);
});

// NIST/SEMATECH e-Handbook, 1.3.6.7.1, table of the standard normal (from memory), to 5 places.
test.each([
  [0.5, 0.69146],
  [1, 0.84134],
  [1.645, 0.95002],
  [1.96, 0.975],
  [-2.5, 0.00621],
])('the normal distribution at %f is %f', (z, probability) => {
  expect(Math.abs(normalCdf(z) - probability)).toBeLessThan(6e-6);
});

test.each([[0.001], [0.05], [0.3], [0.5], [0.9], [0.975], [0.9995]])(
  'its quantile at %f undoes it',
  (probability) => {
    expect(normalCdf(normalQuantile(probability))).toBeCloseTo(probability, 8);
  },
);

test('has no quantile at 0 or 1', () => {
  expect(() => normalQuantile(0)).toThrow(RangeError);
  expect(() => normalQuantile(1)).toThrow(RangeError);
});
