import { describe, expect, test } from 'vitest';
import { atDepthOf } from '../../../shared-core/wood/drying/model/at-depth.ts';
import { averageOf, dryingGrid } from '../../../shared-core/wood/drying/model/drying-grid.ts';
import { faceRatio, parabolicStart } from '../../../shared-core/wood/drying/model/parabolic-start.ts';

describe('a parabolic start', () => {
  test('has the given average and faces, and its middle by the parabola rule', () => {
    const grid = dryingGrid(28, true, 60);
    const profile = parabolicStart(grid, 20, 0.7);
    expect(averageOf(grid, profile)).toBeCloseTo(20, 10);
    expect(atDepthOf(grid, profile, 0)).toBeCloseTo(14, 2);
    // Average = shell + 2/3 (core - shell), so the core is 23 for a shell of 14.
    expect(atDepthOf(grid, profile, 0.5)).toBeCloseTo(23, 2);
  });

  test.each([0, 0.05, 0.1])('has the shell that was read at %f of its thickness', (depth) => {
    const grid = dryingGrid(54, true, 60);
    const profile = parabolicStart(grid, 24, faceRatio(19 / 24, depth));
    expect(atDepthOf(grid, profile, depth)).toBeCloseTo(19, 1);
  });

  test('takes no face for sure from a shell that was read where the average is', () => {
    expect(Math.abs(faceRatio(0.9, 0.21) - 1)).toBeLessThan(0.3);
  });
});
