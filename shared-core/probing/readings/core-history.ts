/** What a board's history tells of its core where no pins reached it: core less shell by the day, as its last forecast has it. */
import { z } from 'zod';
import { DAY_MS } from '../../time.ts';
import { type CoreAhead, coreAheadSchema } from '../../wood/drying/core-ahead.ts';
import type { HistoryProfile } from './profile-posterior.ts';

/** By the day, the earliest first; empty where the board had no history. */
export const coreHistorySchema = z.array(coreAheadSchema);
export type CoreHistory = readonly CoreAhead[];

/** One standard deviation of how far the shell strays, by the weather of the last days, from what the forecast has, points. Common practice, no source. */
export const SHELL_SD_POINTS = 0.85;
/** The model's own error in a gradient, as a part of it. Common practice, no source. */
export const GRADIENT_SHARE = 0.15;
/** Less sure than this, history could not make any board Ready, and says nothing, points. Common practice, no source. */
export const MOST_HISTORY_SD_POINTS = 1.5;
/** A forecast is made as of the end of its day. */
const BEFORE_MS = DAY_MS;

/** Whether it says anything of that instant, be it that there was no history. @param atMs  UTC, ms */
export const reaches = (history: CoreHistory, atMs: number): boolean =>
  history.length === 0 || (atMs >= history[0]!.atMs - BEFORE_MS && atMs <= history.at(-1)!.atMs);

/**
 * What history tells of shell and core at that instant, with everything that is open about it.
 *
 * @param atMs  UTC, ms
 * @returns     null where it does not reach that day, or tells too little
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
  const differencePct = between((each) => each.differencePct);
  const differenceSdPct = Math.hypot(
    between((each) => each.sdPct),
    SHELL_SD_POINTS,
    GRADIENT_SHARE * differencePct,
  );
  return differenceSdPct > MOST_HISTORY_SD_POINTS ? null : { differencePct, differenceSdPct };
}
