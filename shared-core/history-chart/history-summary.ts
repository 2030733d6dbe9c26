import type { ForecastDetails } from '../contract/forecast.ts';
import type { LatestFinding } from '../contract/yard.ts';
import { DAY_MS } from '../time.ts';
import type { EndUse } from '../wood/species/end-use.ts';
import type { Words } from '../words/words.ts';
import { readyWords } from './ready-words.ts';

/** How a board changed, its target, what it likely is now and when it is ready in a place, in sentences. */
export function historySummary(
  findings: readonly LatestFinding[],
  endUse: Pick<EndUse, 'name' | 'minPct' | 'maxPct'> | null,
  ahead: { details: ForecastDetails; index: number } | null,
  words: Words,
): string {
  const { say } = words;
  const averages = findings.flatMap(({ at, averagePct, averageIs, isQuestionable }) =>
    averagePct === null || averageIs !== 'read' || isQuestionable ? [] : [{ at, averagePct }],
  );
  const [first, last] = [averages[0], averages.at(-1)];
  const change =
    !first || !last
      ? say('history.none')
      : first === last
        ? say('history.one', { averagePct: last.averagePct, probedOn: last.at })
        : say('history.more', {
            firstPct: first.averagePct,
            firstOn: first.at,
            lastPct: last.averagePct,
            lastOn: last.at,
          });
  return [
    change,
    ...(endUse ? [say('history.target', { useName: endUse.name, targetRange: endUse })] : []),
    ...(ahead ? aheadOf(ahead.details, ahead.index, last?.at ?? null, words) : []),
  ].join(' ');
}

function aheadOf(details: ForecastDetails, index: number, lastReadAt: string | null, words: Words): string[] {
  const { say } = words;
  const { forecast, places, nowMs, isByQuestionable } = details;
  const readyText = readyWords(places[index]!, words);
  const { name: placeName } = places[index]!;
  const { median, low, high } = forecast.now.average;
  // On the day of its readings, they say what it is now.
  const isReadToday = lastReadAt !== null && nowMs - Date.parse(lastReadAt) < DAY_MS;
  return [
    ...(isReadToday
      ? []
      : [
          isByQuestionable
            ? say('forecast.average-now-rough', { averagePct: median })
            : say('forecast.average-now', {
                averagePct: median,
                likelyInterval: { minPct: low, maxPct: high },
              }),
        ]),
    // Where it is, that is the first thing on its page.
    ...(index === 0 || readyText === null ? [] : [say('forecast.ready-in-place', { placeName, readyText })]),
  ];
}
