import { describe, expect, test } from 'vitest';
import { targetForRoom } from '../../../shared-core/wood/species/target.ts';

describe('the target that a room sets', () => {
  test('runs from the EMC of its driest air to that of its dampest, to 0.1', () => {
    // Wood Handbook, Table 4-2, 70 °F: 6.2 at 30 %, 9.2 at 50 %.
    expect(targetForRoom({ tempC: 21.1, driestRh: 0.3, dampestRh: 0.5 })).toEqual({
      minPct: 6.2,
      maxPct: 9.2,
    });
  });

  test('is 2 points wide around its EMC in a room that never changes', () => {
    const { minPct, maxPct } = targetForRoom({ tempC: 21.1, driestRh: 0.4, dampestRh: 0.4 });
    expect(maxPct - minPct).toBeCloseTo(2, 10);
    // Table 4-2, 70 °F and 40 %: 7.7.
    expect((minPct + maxPct) / 2).toBeCloseTo(7.7, 1);
  });

  test('never goes below zero', () => {
    expect(targetForRoom({ tempC: 30, driestRh: 0, dampestRh: 0.01 }).minPct).toBe(0);
  });

  test('is refused where the driest is damper than the dampest', () => {
    expect(() => targetForRoom({ tempC: 20, driestRh: 0.5, dampestRh: 0.4 })).toThrow(RangeError);
  });
});
