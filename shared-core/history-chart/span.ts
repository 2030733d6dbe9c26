import type { ForecastDetails } from '../contract/forecast.ts';
import { DAY_MS } from '../time.ts';
import type { History } from './history-layers.ts';

/** From when to when a board's chart goes, UTC ms: from the last round on, unless all of it is asked for. */
export function spanOf(
  { findings, stays, forecast }: History,
  index: number,
  isWhole: boolean,
): { fromMs: number; toMs: number } {
  const events = [...findings.map(({ at }) => Date.parse(at)), ...stays.map(({ fromMs }) => fromMs)];
  const lastRead = findings.at(-1);
  return {
    fromMs:
      forecast && lastRead && !isWhole
        ? Date.parse(lastRead.at)
        : Math.min(...events, ...(forecast?.forecast.past.atMs.slice(0, 1) ?? [])),
    toMs: forecast ? endOf(forecast, index) : Math.max(...events),
  };
}

/** Past the day on which it is likely ready; a year ahead where there is none. */
function endOf({ forecast, nowMs }: ForecastDetails, index: number): number {
  const { reach, band } = forecast.places[index]!;
  const reachedMs = reach.lateMs ?? reach.likelyMs;
  const endMs =
    reachedMs === null ? nowMs + 365 * DAY_MS : Math.max(reachedMs + 45 * DAY_MS, nowMs + 90 * DAY_MS);
  return Math.min(endMs, band.atMs.at(-1)!);
}
