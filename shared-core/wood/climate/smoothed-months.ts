import type { MonthlyAir } from './monthly-air.ts';

/**
 * A typical year's humidity and EMC without the chance of single years. Each of its months is a month of another year,
 * chosen mostly by its sun, so a dry November may stand between two damp months. Every month is taken with half the weight
 * and its two neighbors with a quarter each; the mean of the year stays. Temperatures stay: years differ less in them.
 *
 * Source: the 1-2-1 or Hanning filter, a three-point moving average with binomial weights. That it brings a station's
 * months nearer to those of its neighbors, which have other years: `tests/reference/tmy3-typical-years.test.ts`.
 *
 * @param air  twelve months
 */
export function smoothedMonths(air: MonthlyAir): MonthlyAir {
  return air.map((month, at) => {
    const [before, after] = [air[(at + 11) % 12], air[(at + 1) % 12]] as [typeof month, typeof month];
    const smoothed = (of: (each: typeof month) => number): number =>
      (of(before) + 2 * of(month) + of(after)) / 4;
    return { ...month, rh: smoothed(({ rh }) => rh), emcPct: smoothed(({ emcPct = Number.NaN }) => emcPct) };
  });
}
