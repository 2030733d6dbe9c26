import { describe, expect, test } from 'vitest';
import { normalCdf } from '../../../shared-core/wood/maths/gaussian.ts';
import { normalPoints } from '../../../shared-core/wood/maths/normal-points.ts';

describe('points that stand for a standard normal distribution', () => {
  test.each([
    [8, 2],
    [64, 6],
    [80, 20],
  ])('%i of them in %i dimensions have mean 0 and the identity as covariance', (count, dimensions) => {
    const points = normalPoints(count, dimensions);
    expect(points).toHaveLength(count);
    for (let i = 0; i < dimensions; i++) {
      expect(points.reduce((sum, p) => sum + p[i]!, 0)).toBeCloseTo(0, 9);
      for (let j = 0; j < dimensions; j++) {
        const covariance = points.reduce((sum, p) => sum + p[i]! * p[j]!, 0) / count;
        expect(covariance).toBeCloseTo(i === j ? 1 : 0, 9);
      }
    }
  });

  // The greatest distance between their share below a value and the normal distribution (Kolmogorov's). Of 64 points
  // drawn by chance it is 0.105 on average (0.87 / √64); these must do better along every axis and across.
  test('lie more evenly than by chance along every axis, and across all of them', () => {
    const points = normalPoints(64, 6);
    const axes = [0, 1, 2, 3, 4, 5].map((i) => [0, 1, 2, 3, 4, 5].map((j) => (i === j ? 1 : 0)));
    for (const axis of [...axes, Array<number>(6).fill(1 / Math.sqrt(6))]) {
      const along = points.map((p) => p.reduce((sum, v, j) => sum + v * axis[j]!, 0)).sort((a, b) => a - b);
      const gaps = along.map((z, k) => Math.abs((k + 0.5) / along.length - normalCdf(z)));
      expect(Math.max(...gaps)).toBeLessThan(0.09);
    }
  });

  test('are the same each time', () => {
    expect(normalPoints(64, 6)).toEqual(normalPoints(64, 6));
  });

  test.each([
    [7, 1],
    [4, 2],
    [8, 0],
  ])('%i in %i dimensions are refused', (count, dimensions) => {
    expect(() => normalPoints(count, dimensions)).toThrow(RangeError);
  });
});
