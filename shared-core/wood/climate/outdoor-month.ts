import { emcPct } from './emc.ts';
import type { Air } from './monthly-air.ts';

/**
 * How far the EMC that wood follows outdoors lies above that of the month's mean temperature and humidity, % MC, by mean
 * humidity: averages over the months of 1,020 typical years (TMY3; `station.ts` has which EMC). Linear between, level beyond.
 */
export const ABOVE_MEANS: readonly (readonly [rh: number, points: number])[] = [
  [0.45, -0.8],
  [0.55, -0.6],
  [0.65, -0.1],
  [0.75, 0.15],
  [0.85, 0.3],
];

/** How far single months of the same stations are from that, % MC. */
export const ABOVE_MEANS_SD = 0.6;

/**
 * A month outdoors of which a person knows the mean temperature and humidity. Its hours come to another EMC than their mean:
 * damp nights hold more than dry days take, and more water leaves in warm, dry hours.
 *
 * @example outdoorMonth({ tempC: 15, rh: 0.75 }).emcPct // 14.5: 0.15 above that of the means
 */
export function outdoorMonth({ tempC, rh }: Pick<Air, 'tempC' | 'rh'>): Air {
  const emc = emcPct(tempC, rh) + aboveMeans(rh);
  return { tempC, rh, emcPct: Math.max(0, emc), emcSdPct: ABOVE_MEANS_SD };
}

function aboveMeans(rh: number): number {
  const above = ABOVE_MEANS.findIndex(([at]) => at >= rh);
  const [to, from] = [ABOVE_MEANS.at(above), ABOVE_MEANS[above - 1]];
  if (!to || !from || above < 0) return to?.[1] ?? 0;
  return from[1] + ((rh - from[0]) / (to[0] - from[0])) * (to[1] - from[1]);
}
