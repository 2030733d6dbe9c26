import { cholesky, normalQuantile } from './gaussian.ts';

/**
 * Points spread evenly over a standard normal distribution: their mean is 0 and their covariance the identity, exactly.
 *
 * An additive recurrence with the powers of the generalised golden ratio (M. Roberts, The unreasonable effectiveness of
 * quasirandom sequences, 2018; from memory), through the normal quantile; each point comes with its mirror image, and
 * the whole set is turned so that its covariance is right. Any projection is covered more evenly than by chance, so few
 * points do.
 *
 * @param count       even, 4 times `dimensions` or more
 * @param dimensions  1 to 20
 * @example normalPoints(8, 2).length // 8
 */
export function normalPoints(count: number, dimensions: number): number[][] {
  if (!(Number.isInteger(dimensions) && dimensions >= 1 && dimensions <= 20)) {
    throw new RangeError(`${dimensions} dimensions: it takes 1 to 20.`);
  }
  if (!(Number.isInteger(count) && count % 2 === 0 && count >= 4 * dimensions)) {
    throw new RangeError(`${count} points: it takes an even number, 4 for each dimension or more.`);
  }
  // The root above 1 of x^(d + 1) = x + 1.
  let ratio = 1.5;
  for (let i = 0; i < 60; i++) ratio = (1 + ratio) ** (1 / (dimensions + 1));
  const half = Array.from({ length: count / 2 }, (_, n) =>
    Array.from({ length: dimensions }, (_d, j) => {
      const at = (0.5 + (n + 1) / ratio ** (j + 1)) % 1;
      return normalQuantile(Math.min(1 - 1e-4, Math.max(1e-4, at)));
    }),
  );
  const covariance = Array.from({ length: dimensions }, (_, i) =>
    Array.from(
      { length: dimensions },
      (_d, j) => half.reduce((sum, p) => sum + p[i]! * p[j]!, 0) / half.length,
    ),
  );
  // So many points lie on no plane.
  const lower = cholesky(covariance)!;
  return half.flatMap((point) => {
    // Forward substitution: the point in the axes in which the set is round.
    const round: number[] = [];
    for (const [i, row] of lower.entries()) {
      round.push((point[i]! - round.reduce((sum, value, j) => sum + row[j]! * value, 0)) / row[i]!);
    }
    return [round, round.map((value) => -value)];
  });
}
