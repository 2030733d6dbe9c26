import { DAY_MS, isoOf } from '../time.ts';
import type { PlaceForecast } from '../wood/drying/forecast.ts';
import type { Words } from '../words/words.ts';

/** When a board is likely ready in a place: "Sep 2027 (Jul 2027 – May 2028)", "Now", "Never: the air is too damp". */
export function readyWords(
  { reach: { earlyMs, likelyMs, lateMs }, never }: PlaceForecast,
  nowMs: number,
  { say, formats }: Words,
): string {
  const isNow = (atMs: number) => atMs - nowMs < DAY_MS;
  if (earlyMs === null) return say(never ? 'forecast.never' : 'forecast.not-within');
  if (likelyMs === null) return say('forecast.unlikely', { earliestOn: isoOf(earlyMs) });
  if (!isNow(likelyMs)) {
    return formats.when({
      likely: isoOf(likelyMs),
      from: isoOf(earlyMs),
      to: lateMs === null ? null : isoOf(lateMs),
    });
  }
  if (lateMs === null) return say('forecast.now-open');
  return isNow(lateMs) ? say('forecast.now') : say('forecast.now-until', { latestOn: isoOf(lateMs) });
}
