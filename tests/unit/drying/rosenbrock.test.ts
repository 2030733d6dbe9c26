/**
 * The numbers of ROS3PL against what they must meet: E. Hairer and G. Wanner, Solving Ordinary Differential Equations II
 * (1996), section IV.7: order conditions of Table 7.1 (with beta_ii = gamma), and the stability function; from memory.
 */
import { expect, test } from 'vitest';
import { ros3pl } from '../../../shared-core/wood/drying/model/rosenbrock.ts';

type Matrix = number[][];
const times = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => b[0]!.map((_, j) => row.reduce((sum, value, k) => sum + value * b[k]![j]!, 0)));
const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * b[i]!, 0);

const { gamma, a21, a3, c2, c3, c4 } = ros3pl;
/** Rows filled up to four. */
const four = (row: readonly number[]): number[] => [0, 1, 2, 3].map((j) => row[j] ?? 0);

/** Inverse of the lower triangle 1/gamma - C, which is the book's Gamma. */
function invertLower(lower: Matrix): Matrix {
  const inverse = lower.map((row) => row.map(() => 0));
  for (let i = 0; i < 4; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = i === j ? 1 : 0;
      for (let k = j; k < i; k++) sum -= lower[i]![k]! * inverse[k]![j]!;
      inverse[i]![j] = sum / lower[i]![i]!;
    }
  }
  return inverse;
}
const bigGamma = invertLower(
  [[], c2, c3, c4].map((row, i) => four(row).map((c, j) => (i === j ? 1 / gamma : -c))),
);
const alpha = times([[], [a21], a3, a3].map(four), bigGamma);
const beta = alpha.map((row, i) => row.map((value, j) => value + bigGamma[i]![j]!));
const ones = [1, 1, 1, 1];
const sums = (matrix: Matrix): number[] => matrix.map((row) => dot(row, ones));
const weightsOf = (inU: readonly number[]): number[] => times([[...inU]], bigGamma)[0]!;

/** Left sides of the conditions: of the first order, the second, and the two of the third. */
const conditions = (inU: readonly number[]): number[] => {
  const b = weightsOf(inU);
  return [
    dot(b, ones),
    dot(b, sums(beta)),
    dot(
      b,
      sums(alpha).map((value) => value ** 2),
    ),
    dot(
      b,
      beta.map((row) => dot(row, sums(beta))),
    ),
  ];
};

const expectClose = (found: readonly number[], expected: readonly number[]): void => {
  for (const [i, value] of expected.entries()) expect(found[i]).toBeCloseTo(value, 12);
};

test('where a stage is taken, and how far its time is ahead, are the row sums', () => {
  expectClose(sums(alpha), ros3pl.alpha);
  expectClose(sums(bigGamma), ros3pl.gammaOf);
});

test('a step is of third order', () => {
  expectClose(conditions(ros3pl.m), [1, 1 / 2, 1 / 3, 1 / 6]);
});

test('the method within is of second order and not of third, so the error goes with the cube of the step', () => {
  const [first, second, third] = conditions(ros3pl.m.map((m, i) => m - ros3pl.error[i]!));
  expectClose([first!, second!], [1, 1 / 2]);
  expect(Math.abs(third! - 1 / 3)).toBeGreaterThan(0.05);
});

test.each([0.2, 0.5, 0.9, 1])('within a step, at %f of it, it is of third order too', (s) => {
  const inU = ros3pl.dense.map(([d1, d2, d3]) => s * (d1 + s * (d2 + s * d3)));
  expectClose(conditions(inU), [s, s ** 2 / 2, s ** 3 / 3, s ** 3 / 6]);
});

test('it is L-stable: no decay is too fast for it, and the fastest are gone after one step', () => {
  // Third order and four equal poles leave one stability function; |R| on the imaginary axis bounds it left of it.
  const b = weightsOf(ros3pl.m);
  /** R(z) = 1 + z b (1 - z beta)^-1 1, by forward substitution in complex numbers. */
  const size = (re: number, im: number): number => {
    const k: [number, number][] = [];
    for (const [i, row] of beta.entries()) {
      let [x, y] = [1, 0];
      for (const [j, [kx, ky]] of k.entries()) {
        x += row[j]! * (re * kx - im * ky);
        y += row[j]! * (re * ky + im * kx);
      }
      const [px, py] = [1 - re * row[i]!, -im * row[i]!];
      const p = px * px + py * py;
      k.push([(x * px + y * py) / p, (y * px - x * py) / p]);
    }
    const [sx, sy] = k.reduce(([x, y], [kx, ky], i) => [x + b[i]! * kx, y + b[i]! * ky], [0, 0]);
    return Math.hypot(1 + re * sx - im * sy, re * sy + im * sx);
  };
  for (let power = -2; power <= 6; power += 0.1) {
    expect(size(0, 10 ** power)).toBeLessThanOrEqual(1 + 1e-12);
    expect(size(-(10 ** power), 0)).toBeLessThan(1);
  }
  expect(size(-1e8, 0)).toBeLessThan(1e-6);
});
