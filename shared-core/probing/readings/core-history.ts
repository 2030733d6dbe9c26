/** The core of a board where no pins reached it, by its history: core less shell for each day, from its last forecast. */
import { z } from 'zod';
import { DAY_MS } from '../../time.ts';
import { type CoreAhead, coreAheadSchema } from '../../wood/drying/core-ahead.ts';
import type { HistoryProfile } from './profile-posterior.ts';

/** By the day, the earliest first; empty where the board had no history. */
export const coreHistorySchema = z.array(coreAheadSchema);
export type CoreHistory = readonly CoreAhead[];

/** One standard deviation of how far the weather of the last days moves the shell from its forecast, points. Common practice, no source. */
export const SHELL_SD_POINTS = 0.85;
/**
 * So much further is the core above the shell than by its forecast, points: that knows the months and not the weather, and
 * takes a meter that reads low for a drier board. Half of the mean of 1,650 drawn boards: of 100 boards that are Ready by it,
 * 1 or 2 are not after one round (`tests/bench/calls-by-harm.bench.ts`). With 0.45, 1 is not, and fewer fine boards are Ready.
 */
export const CORE_BEHIND_POINTS = 0.3;
/** The model's own error in a gradient, as a part of it. Common practice, no source. */
export const GRADIENT_SHARE = 0.15;
/** A history less certain than this could make no board Ready, and is not used, points. Common practice, no source. */
export const MOST_HISTORY_SD_POINTS = 1.5;
/** A forecast is made as of the end of its day. */
const BEFORE_MS = DAY_MS;

/** Whether it covers that instant; an empty one covers every instant: there was no history. @param atMs  UTC, ms */
export const reaches = (history: CoreHistory, atMs: number): boolean =>
  history.length === 0 || (atMs >= history[0]!.atMs - BEFORE_MS && atMs <= history.at(-1)!.atMs);

/**
 * The difference of core and shell at that instant by history, with its whole uncertainty.
 *
 * @param atMs  UTC, ms
 * @returns     null where it does not cover that day, or is too uncertain
 */
export function profileAt(history: CoreHistory, atMs: number): HistoryProfile | null {
  if (history.length < 2 || !reaches(history, atMs)) return null;
  const nextAt = Math.max(
    1,
    history.findIndex((each) => each.atMs >= atMs),
  );
  const before = history[nextAt - 1]!;
  const after = history[nextAt]!;
  const part = Math.max(0, (atMs - before.atMs) / (after.atMs - before.atMs));
  const between = (of: (each: CoreAhead) => number): number => of(before) + part * (of(after) - of(before));
  const forecastPct = between((each) => each.differencePct);
  const differencePct = forecastPct + CORE_BEHIND_POINTS;
  const differenceSdPct = Math.hypot(
    between((each) => each.sdPct),
    SHELL_SD_POINTS,
    GRADIENT_SHARE * forecastPct,
  );
  return differenceSdPct > MOST_HISTORY_SD_POINTS ? null : { differencePct, differenceSdPct };
}
