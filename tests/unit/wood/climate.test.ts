import { describe, expect, test } from 'vitest';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { emcPct } from '../../../shared-core/wood/climate/emc.ts';

describe('a year of air at a place', () => {
  // Invented: a cool damp winter, a warm dry June.
  const year = [80, 78, 72, 66, 62, 55, 60, 65, 72, 78, 82, 84].map((percent, month) => ({
    tempC: [1, 2, 6, 10, 15, 20, 22, 21, 17, 11, 5, 2][month]!,
    rh: percent / 100,
  }));

  test('brings wood lowest in its driest month', () => {
    const { monthlyEmcPct, driestEmcPct, driestMonth } = emcOfYear(year);
    expect(monthlyEmcPct).toHaveLength(12);
    expect(driestMonth).toBe(6);
    expect(driestEmcPct).toBe(emcPct(20, 0.55));
    // Table 4-2 at 70 °F and 55 %: 10.1 (from memory).
    expect(driestEmcPct).toBeCloseTo(10.1, 1);
  });

  test('in a heated room is the same all year, so no month is the driest', () => {
    const { monthlyEmcPct, driestMonth } = emcOfYear(Array(12).fill({ tempC: 20, rh: 0.4 }));
    expect(new Set(monthlyEmcPct).size).toBe(1);
    expect(driestMonth).toBeNull();
  });

  test('colder than the formula goes counts as -20 °C', () => {
    const { monthlyEmcPct } = emcOfYear(Array(12).fill({ tempC: -45, rh: 0.7 }));
    expect(monthlyEmcPct[0]).toBe(emcPct(-20, 0.7));
  });
});
