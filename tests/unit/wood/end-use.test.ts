import { describe, expect, test } from 'vitest';
import { builtInEndUses } from '../../../shared-core/wood/species/built-in.ts';
import { usualTolerance } from '../../../shared-core/wood/species/end-use.ts';

const use = (id: string) => builtInEndUses.find((each) => each.id === id)!;

/** Common practice, no source. */
describe('what a use allows beyond its target', () => {
  test('wood for furniture still works at 9 to 10%, two points above its target', () => {
    expect(use('furniture')).toMatchObject({ maxPct: 8, tolerancePoints: 2, minIsAdvice: false });
  });

  test('framing and outdoor work allow more than furniture', () => {
    const outdoors = ['framing', 'outdoor-furniture', 'exterior-most-us', 'joinery-exterior-europe'];
    for (const id of outdoors) {
      expect(use(id).tolerancePoints).toBeGreaterThan(use('furniture').tolerancePoints);
      expect(use(id).minIsAdvice).toBe(true);
    }
  });

  test('air-dried stock may be drier than its target', () => {
    expect(use('air-dried-stock').minIsAdvice).toBe(true);
  });

  test('firewood has no shell–core limit', () => {
    expect(use('firewood').maxShellCorePct).toBeNull();
  });

  test.each([
    [
      { minPct: 7, maxPct: 9 },
      { tolerancePoints: 2, minIsAdvice: false },
    ],
    [
      { minPct: 9, maxPct: 13 },
      { tolerancePoints: 2, minIsAdvice: false },
    ],
    [
      { minPct: 12, maxPct: 15 },
      { tolerancePoints: 3, minIsAdvice: true },
    ],
    [
      { minPct: 0, maxPct: 20 },
      { tolerancePoints: 4, minIsAdvice: true },
    ],
  ])('a use saved earlier with the target %o gets the usual one', (target, tolerance) => {
    expect(usualTolerance(target)).toEqual(tolerance);
  });
});
