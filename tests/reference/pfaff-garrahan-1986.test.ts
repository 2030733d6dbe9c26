import { describe, expect, test } from 'vitest';
import { atWoodTempPct, NEUTRAL_TEMP_C, pfaffGarrahan } from '../../shared-core/wood/moisture/temperature.ts';

/** The formula as it stands, on its own neutral temperature. */
function byFormula(shownPct: number, woodTempC: number): number {
  const { gain, offset } = pfaffGarrahan(woodTempC);
  return gain * shownPct + offset;
}

describe('Pfaff and Garrahan, Forest Products Journal 36(3), 1986: shown % to MC, a = 1, b = 0', () => {
  // Worked by hand from the formula: (M + 0.567 - 0.0260 T + 0.000051 T²) / (0.881 · 1.0056^T).
  test.each([
    // (10 + 0.567 - 0.52 + 0.0204) / (0.881 · 1.11817) = 10.0674 / 0.98511
    [10, 20, 10.22],
    // (15 + 0.567 - 0.13 + 0.001275) / (0.881 · 1.02832) = 15.438275 / 0.90595
    [15, 5, 17.04],
    // (20 + 0.567 - 0.26 + 0.0051) / (0.881 · 1.05743) = 20.3121 / 0.93160
    [20, 10, 21.8],
    // (8 + 0.567 - 1.04 + 0.0816) / (0.881 · 1.25030) = 7.6086 / 1.10151
    [8, 40, 6.91],
    // (12 + 0.567) / 0.881
    [12, 0, 14.26],
  ])('shown %f %% in wood of %f °C is %f %%', (shownPct, woodTempC, mcPct) => {
    expect(byFormula(shownPct, woodTempC)).toBeCloseTo(mcPct, 2);
  });

  test.each([6, 10, 15, 20, 28])('leaves a shown %f %% as it is at its neutral temperature', (shownPct) => {
    expect(Math.abs(byFormula(shownPct, NEUTRAL_TEMP_C) - shownPct)).toBeLessThan(0.01);
  });

  test.each([7, 12, 18])('a meter made for 26.7 °C is right at 26.7 °C: shown %f %%', (shownPct) => {
    expect(atWoodTempPct(pfaffGarrahan, shownPct, 26.7, 26.7)).toBeCloseTo(shownPct, 12);
  });

  // Wood Handbook (FPL-GTR-190, chapter 13): approximately 0.5 % MC for each 5.6 °C (10 °F), more in colder wood.
  test.each([
    [10, 17.1],
    [12, 17.1],
    [10, 28.3],
    [12, 28.3],
  ])('follows the rule of 0.5 %% for each 5.6 °C: shown %f %% in wood of %f °C', (shownPct, woodTempC) => {
    const rule = (0.5 * (NEUTRAL_TEMP_C - woodTempC)) / 5.6;
    // "Approximately": within a fifth of a percent for one step.
    expect(Math.abs(byFormula(shownPct, woodTempC) - shownPct - rule)).toBeLessThan(0.2);
  });
});
