import { expect, test } from 'vitest';
import { coverageFactor } from '../../../shared-core/wood/maths/student-t.ts';

// JCGM 100:2008 (GUM), Table G.2, columns 90 %, 95 % and 99 % (from memory); printed to 0.01.
test.each([
  [1, 6.31, 12.71, 63.66],
  [2, 2.92, 4.3, 9.92],
  [3, 2.35, 3.18, 5.84],
  [4, 2.13, 2.78, 4.6],
  [5, 2.02, 2.57, 4.03],
  [8, 1.86, 2.31, 3.36],
  [10, 1.81, 2.23, 3.17],
  [20, 1.72, 2.09, 2.85],
  [50, 1.68, 2.01, 2.68],
  [Number.POSITIVE_INFINITY, 1.645, 1.96, 2.576],
])('t for %d degrees of freedom', (degrees, t90, t95, t99) => {
  expect(Math.abs(coverageFactor(0.9, degrees) - t90)).toBeLessThan(0.0051);
  expect(Math.abs(coverageFactor(0.95, degrees) - t95)).toBeLessThan(0.0051);
  expect(Math.abs(coverageFactor(0.99, degrees) - t99)).toBeLessThan(0.0051);
});

// One degree of freedom is the Cauchy distribution: t = tan(π p / 2), exactly.
test.each([0.1, 0.5, 0.9, 0.99])('one degree of freedom, coverage %d', (probability) => {
  expect(coverageFactor(probability, 1)).toBeCloseTo(Math.tan((Math.PI * probability) / 2), 8);
});

// Two degrees of freedom: t = p √(2 / (1 - p²)), exactly.
test.each([0.1, 0.5, 0.9, 0.99])('two degrees of freedom, coverage %d', (probability) => {
  expect(coverageFactor(probability, 2)).toBeCloseTo(probability * Math.sqrt(2 / (1 - probability ** 2)), 8);
});

test('broken degrees of freedom lie between the whole ones', () => {
  const t = coverageFactor(0.9, 4.5);
  expect(t).toBeLessThan(coverageFactor(0.9, 4));
  expect(t).toBeGreaterThan(coverageFactor(0.9, 5));
});

test.each([
  [0, 5],
  [1, 5],
  [0.9, 0.5],
  [0.9, Number.NaN],
])('refuses coverage %d with %d degrees', (probability, degrees) => {
  expect(() => coverageFactor(probability, degrees)).toThrow(RangeError);
});
