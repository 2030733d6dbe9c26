/** How warm wood is that nobody measured: as the air around it, give or take. */
import type { AssumedTemp } from '../../wood/moisture/correction.ts';
import type { PlaceFacts } from './evidence.ts';

/** Sun, frost and the hour of the day take wood so far from the month's mean air temperature, °C: two standard deviations. Common practice, no source. */
export const USUAL_TEMP_RANGE_C = { outdoors: 18, 'open-shed': 15, shop: 12, 'heated-room': 8 } as const;

/** Null where the air is not known. */
export const assumedTempIn = ({
  kind,
  airTempC = null,
}: Pick<PlaceFacts, 'kind' | 'airTempC'>): AssumedTemp | null =>
  airTempC === null ? null : { tempC: airTempC, sdK: USUAL_TEMP_RANGE_C[kind] / 2 };
