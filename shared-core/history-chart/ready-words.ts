import { DAY_MS, isoOf } from '../time.ts';
import type { PlaceForecast } from '../wood/drying/forecast.ts';
import type { Words } from '../words/words.ts';

/** When a board is ready in a place: "Likely Sep 2027 (Jul 2027 – May 2028)", "Now", "Never: the air is too damp". */
export function readyWords(
  { reach: { earlyMs, likelyMs, lateMs }, never }: PlaceForecast,
  nowMs: number,
  { say }: Words,
): string {
  const isNow = (atMs: number) => atMs - nowMs < DAY_MS;
  if (earlyMs === null) return say(never ? 'forecast.never' : 'forecast.not-within');
  if (likelyMs === null) return say('forecast.unlikely', { earliestOn: isoOf(earlyMs) });
  if (!isNow(likelyMs)) {
    const from = isoOf(earlyMs);
    const readyWhen = { likely: isoOf(likelyMs), from, to: lateMs === null ? null : isoOf(lateMs) };
    // Without a latest day there are no 8 chances in 10 between two.
    return say(lateMs === null ? 'forecast.about' : 'forecast.likely', { readyWhen });
  }
  if (lateMs === null) return say('forecast.now-open');
  return isNow(lateMs) ? say('forecast.now') : say('forecast.now-until', { latestOn: isoOf(lateMs) });
}
