/**
 * In which order things happened to a board within one local day. Sawing always comes first. What has a time is ordered by
 * it; where only the day of a move or of a reading is known, a person says which came first.
 */
import { z } from 'zod';

/** Which came first on a day on which a board was moved and probed. */
export const dayOrderSchema = z.enum(['moved-first', 'probed-first']);
export type DayOrder = z.infer<typeof dayOrderSchema>;

/** Of two that follow each other on one day, the later comes so long after the other. */
const AFTER_MS = 1000;

/** An instant, UTC, ms; where only its day is known, one that stands for it. */
export interface Dated {
  atMs: number;
  isDayOnly: boolean;
}

/** What else happened to the board on that day, UTC, ms. */
export interface SameDay {
  /** The first and the last instant that the move can have. */
  fromMs: number;
  untilMs: number;
  /** Its other moves of the day that came before this one, and those that came after it. */
  movesBeforeMs: readonly number[];
  movesAfterMs: readonly number[];
  readings: readonly Dated[];
}

/** `order-missing`: a person must say which came first. `no-room`: what was said cannot be; a time says more. */
export type OrderProblem = 'order-missing' | 'no-room';

/**
 * The instant of a move among what else happened to the board on that day. A reading of the same instant comes after it.
 *
 * @param order  what a person said; null while nobody did
 * @returns       UTC, ms
 */
export function momentOfMove(
  move: Dated,
  { fromMs, untilMs, movesBeforeMs, movesAfterMs, readings }: SameDay,
  order: DayOrder | null,
): number | OrderProblem {
  const isOpen = readings.some(({ isDayOnly }) => isDayOnly || move.isDayOnly);
  if (isOpen && order === null) return 'order-missing';
  const readMs = isOpen ? readings.map(({ atMs }) => atMs) : [];
  if (!move.isDayOnly && !isOpen) return move.atMs;
  const afterMs = Math.max(
    fromMs - 1,
    ...(move.isDayOnly ? movesBeforeMs : []),
    ...(order === 'probed-first' ? readMs : []),
  );
  const beforeMs = Math.min(
    Math.max(untilMs, afterMs + 1) + 1,
    ...(move.isDayOnly ? movesAfterMs : []),
    ...(order === 'moved-first' ? readMs : []),
  );
  if (move.atMs > afterMs && move.atMs < beforeMs) return move.atMs;
  const gapMs = Math.min(AFTER_MS, Math.floor((beforeMs - afterMs) / 2));
  if (gapMs < 1) return 'no-room';
  return move.atMs <= afterMs ? afterMs + gapMs : beforeMs - gapMs;
}

const OTHER: Readonly<Record<DayOrder, DayOrder>> = {
  'moved-first': 'probed-first',
  'probed-first': 'moved-first',
};

/**
 * The instant of a page of readings of which only the day is known, among the moves of its boards on that day.
 *
 * @param atMs   what stands for the day, UTC, ms
 * @param order  what a person said; null while nobody did
 * @returns      UTC, ms
 */
export function momentOfPage(
  atMs: number,
  { fromMs, untilMs, moves }: Pick<SameDay, 'fromMs' | 'untilMs'> & { moves: readonly Dated[] },
  order: DayOrder | null,
): number | OrderProblem {
  const day = { fromMs, untilMs, movesBeforeMs: [], movesAfterMs: [], readings: moves };
  return momentOfMove({ atMs, isDayOnly: true }, day, order && OTHER[order]);
}
