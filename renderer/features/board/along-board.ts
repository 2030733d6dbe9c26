import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/**
 * Where along the board a reading was taken, as the plan of spots had it; only its distance from an end where it was
 * not planned, or the board's length was edited since; null where nothing is known.
 */
export function alongBoard(
  { spotIndex, spot: { depth, fromEndMm } }: Pick<JudgedReading, 'spotIndex' | 'spot'>,
  board: Parameters<typeof planSpots>[0],
): Message | null {
  const planned = spotIndex === null ? undefined : planSpots(board).plan[spotIndex];
  if (planned?.spot.depth === depth && isAlike(planned.spot.fromEndMm, fromEndMm)) return planned.along;
  return fromEndMm === null ? null : message('board.spot-from-end', { fromEndDistanceMm: fromEndMm });
}

const isAlike = (plannedMm: number | null, mm: number | null): boolean =>
  plannedMm === null || mm === null ? plannedMm === mm : Math.abs(plannedMm - mm) < 1;
