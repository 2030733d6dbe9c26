/** Days that the model takes a board to a moisture content. */
import { DAY_MS } from '../../shared-core/time.ts';
import { forecastBoard } from '../../shared-core/wood/drying/forecast.ts';
import type { DryingBoard } from '../../shared-core/wood/drying/history-fit.ts';
import { worked } from '../unit/worked.ts';

/** How far ahead the forecast goes. */
export const MOST_DAYS = 1500;

/** 10, 50 and 90 % of the days until the average is there, forecast on the first day, before any reading. */
export function forecastDays(board: DryingBoard, untilPct: number): [number, number, number] {
  const { atMs } = board.start;
  const { reach } = worked(
    forecastBoard({
      nowMs: atMs,
      board,
      readings: [],
      siblings: [],
      endUse: { minPct: 0, maxPct: untilPct, maxShellCorePct: 100 },
      elsewhere: [],
      placeId: 1,
      horizonDays: MOST_DAYS,
    }),
  ).places[0]!;
  const days = (ms: number | null): number => (ms === null ? Number.POSITIVE_INFINITY : (ms - atMs) / DAY_MS);
  return [days(reach.earlyMs), days(reach.likelyMs), days(reach.lateMs)];
}

export const geometricMean = (values: readonly number[]): number =>
  Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);
