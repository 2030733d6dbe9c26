/** How warm wood is that nobody measured: as the air around it, give or take. */
import type { AssumedTemp } from '../../wood/moisture/correction.ts';
import type { PlaceFacts } from './evidence.ts';

/** Sun, frost and the hour of the day take wood so far from the month's mean air temperature, °C: two standard deviations. Common practice, no source. */
export const USUAL_TEMP_RANGE_C = { outdoors: 18, 'open-shed': 15, shop: 12, 'heated-room': 8 } as const;

/** Wood follows the air of the day by some hours: so far it is from that at the moment, °C, as a part of the range above. Common practice, no source. */
const MEASURED_SHARE = 1 / 2;

/** Null where the air is not known. */
export function assumedTempIn({
  kind,
  airTempC = null,
  isAirMeasured = false,
}: Pick<PlaceFacts, 'kind' | 'airTempC' | 'isAirMeasured'>): AssumedTemp | null {
  if (airTempC === null) return null;
  const sdK = USUAL_TEMP_RANGE_C[kind] / 2;
  return { tempC: airTempC, sdK: isAirMeasured ? sdK * MEASURED_SHARE : sdK };
}
