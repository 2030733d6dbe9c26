import { emcPct } from './emc.ts';
import { saturationPressurePa } from './moist-air.ts';
import type { Air } from './monthly-air.ts';

/**
 * The EMC that wood follows in a number of hours, % MC. Water leaves by saturation vapor pressure, so hours are weighted by
 * it. A face that follows each hour is at the mean of their EMC, and a face that follows none at the EMC of their mean air.
 * A board is about halfway (`station.ts`).
 *
 * @param hours  at least one; as `emcPct` takes them
 */
export function followedEmcPct(hours: readonly Pick<Air, 'tempC' | 'rh'>[]): number {
  const weights = hours.map(({ tempC }) => saturationPressurePa(tempC));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const weighted = (of: (hour: Pick<Air, 'tempC' | 'rh'>) => number): number =>
    hours.reduce((sum, hour, at) => sum + (weights[at] as number) * of(hour), 0) / total;
  const ofMeanAir = emcPct(
    weighted(({ tempC }) => tempC),
    // By rounding the mean of equal ones can be above them.
    Math.min(
      weighted(({ rh }) => rh),
      Math.max(...hours.map(({ rh }) => rh)),
    ),
  );
  return (weighted(({ tempC, rh }) => emcPct(tempC, rh)) + ofMeanAir) / 2;
}
