/**
 * Normal distributions of one or a few parameters: what is needed to carry what is known of a board.
 */

type Matrix = readonly (readonly number[])[];

/** A multivariate normal distribution: plain numbers, so that it can be stored and sent. */
export type Gaussian = { mean: number[]; covariance: number[][] };

/**
 * What data alone say of parameters: inverse covariance, and that times the estimate. Zero where they say nothing,
 * so it exists even when the data could not fix the parameters by themselves; independent data simply add.
 */
export type Information = { matrix: number[][]; vector: number[] };

/**
 * Lower triangular factor L of a symmetric positive definite matrix, A = L L'.
 *
 * @returns null where A is not positive definite, as where a number in it is not finite
 */
export function cholesky(a: Matrix): number[][] | null {
  const lower = a.map((row) => row.map(() => 0));
  for (let i = 0; i < a.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i]![j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i === j && !(sum > 0 && sum < Number.POSITIVE_INFINITY)) return null;
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!;
    }
  }
  return lower;
}

/** Solves A x = b for a symmetric positive definite A; null where it is not. */
export function solvePositive(a: Matrix, b: readonly number[]): number[] | null {
  const lower = cholesky(a);
  if (lower === null) return null;
  const x = [...b];
  for (let i = 0; i < x.length; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - lower[i]![k]! * x[k]!;
    x[i] = x[i]! / lower[i]![i]!;
  }
  for (let i = x.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < x.length; k++) x[i] = x[i]! - lower[k]![i]! * x[k]!;
    x[i] = x[i]! / lower[i]![i]!;
  }
  return x;
}

/** Inverse of a symmetric positive definite matrix; null where it is not. */
export function inversePositive(a: Matrix): number[][] | null {
  const columns: number[][] = [];
  for (const j of a.keys()) {
    const column = solvePositive(
      a,
      a.map((_, i) => (i === j ? 1 : 0)),
    );
    if (column === null) return null;
    columns.push(column);
  }
  return columns.map((column, i) => column.map((value, j) => (value + columns[j]![i]!) / 2));
}

/** Matrix times vector. */
export const times = (a: Matrix, x: readonly number[]): number[] =>
  a.map((row) => row.reduce((sum, value, j) => sum + value * x[j]!, 0));

/** Prior and data together; null where the prior is no distribution, or the data are such that the two make none. */
export function posterior(prior: Gaussian, data: Information): Gaussian | null {
  const precision = inversePositive(prior.covariance);
  if (precision === null) return null;
  const vector = times(precision, prior.mean).map((value, i) => value + data.vector[i]!);
  const covariance = inversePositive(
    precision.map((row, i) => row.map((value, j) => value + data.matrix[i]![j]!)),
  );
  return covariance && { mean: times(covariance, vector), covariance };
}

/**
 * Standard normal distribution function (W. J. Cody's rational approximations would be closer; this is
 * Abramowitz and Stegun 7.1.26, from memory, with an absolute error below 1.5e-7).
 */
export function normalCdf(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const polynomial =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (polynomial * Math.exp(-x * x)) / 2;
  return z > 0 ? 1 - tail : tail;
}

/** 90 % point of the standard normal: 8 chances in 10 are between it and its mirror image. */
export const Z_90 = 1.2816;

/** Standard normal density. */
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/**
 * Standard normal quantile, by Newton's method on the distribution function.
 *
 * @param probability  0.0001 to 0.9999
 * @example normalQuantile(0.975) // 1.96
 */
export function normalQuantile(probability: number): number {
  if (!(probability >= 1e-4 && probability <= 1 - 1e-4)) {
    throw new RangeError(`Probability ${probability} is outside 0.0001 to 0.9999.`);
  }
  let z = 0;
  for (let i = 0; i < 60; i++) {
    // Far out Newton's step would overshoot.
    const change = (probability - normalCdf(z)) / normalDensity(z);
    z += Math.max(-0.5, Math.min(0.5, change));
    if (Math.abs(change) < 1e-9) break;
  }
  return z;
}
