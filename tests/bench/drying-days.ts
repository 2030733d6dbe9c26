/** Days that the model takes a board to a moisture content, with the middle of its prior and with all of it. */
import { DAY_MS } from '../../shared-core/time.ts';
import { forecastBoard } from '../../shared-core/wood/drying/forecast.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  runBoard,
} from '../../shared-core/wood/drying/history-fit.ts';
import { worked } from '../unit/worked.ts';

/** How far is looked. */
export const MOST_DAYS = 1500;

/** With the middle of the prior; infinite where it takes longer than 1500 days. */
export function middleDays(board: DryingBoard, untilPct: number): number {
  const { atMs } = board.start;
  const daily = Array.from({ length: MOST_DAYS }, (_, day) => atMs + day * DAY_MS);
  const model = boardModel(board);
  const { averagePct } = runBoard(
    model,
    dryingPrior(board).mean,
    board.stays,
    atMs,
    daily.at(-1)!,
    null,
    daily,
    [],
  );
  const at = averagePct.findIndex((mc) => mc <= untilPct);
  if (at < 1) return Number.POSITIVE_INFINITY;
  const [before, after] = [averagePct[at - 1]!, averagePct[at]!];
  return at - 1 + (before - untilPct) / (before - after);
}

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
