/** How the air of days and seasons strays from that of the months. */
import type { DayToDay } from './station.ts';

/** Seasons of one year against the mean ones, as a share of the EMC: half a point at 13 %. Common practice, no source. */
export const SEASON_SHARE = 0.5 / 13;

/** Of days outdoors: the middle of the 1,020 stations of `seeds/weather-stations.json`. */
export const SWINGS_OUTDOORS: DayToDay = { sdPct: 3.3, lag: 0.5 };
