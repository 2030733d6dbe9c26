import type { ForecastDetails } from '../contract/forecast.ts';
import { DAY_MS, isoOf } from '../time.ts';
import type { PlaceForecast } from '../wood/drying/forecast.ts';
import type { Words } from '../words/words.ts';

/** When a board is ready in a place: "Likely Sep 2027 (Jul 2027 – May 2028)", "Now", "Unlikely: the air is too damp …". */
export function readyWords(
  { places, endUse, nowMs }: Pick<ForecastDetails, 'places' | 'endUse' | 'nowMs'>,
  { placeId, reach: { earlyMs, likelyMs, lateMs } }: PlaceForecast,
  { say }: Words,
): string {
  const isNow = (atMs: number) => atMs - nowMs < DAY_MS;
  if (likelyMs === null) {
    const emcPct = places.find((each) => each.placeId === placeId)!.lowestEmcPct;
    if (emcPct > endUse.maxPct) return say('forecast.air-too-damp', { emcPct });
    return earlyMs === null
      ? say('forecast.not-within')
      : say('forecast.unlikely', { earliestOn: isoOf(earlyMs) });
  }
  if (!isNow(likelyMs)) {
    const from = isoOf(earlyMs ?? likelyMs);
    const readyWhen = { likely: isoOf(likelyMs), from, to: lateMs === null ? null : isoOf(lateMs) };
    // Without a latest day there are no 8 chances in 10 between two.
    return say(lateMs === null ? 'forecast.about' : 'forecast.likely', { readyWhen });
  }
  if (lateMs === null) return say('forecast.now-open');
  return isNow(lateMs) ? say('forecast.now') : say('forecast.now-until', { latestOn: isoOf(lateMs) });
}
