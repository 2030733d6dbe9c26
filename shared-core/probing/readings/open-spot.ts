import { depthRead } from './depth-read.ts';
import type { JudgedReading } from './reading.ts';
import { type BoardToPlan, firstSpot, isReadAt, type PlannedSpot, planSpots } from './spots.ts';

/** The newest reading that counts at each spot of a board's plan; undefined where none does. */
export const readingsBySpot = <R extends ReadingAtSpot>(
  board: BoardToPlan,
  readings: readonly R[],
): (R | undefined)[] =>
  planSpots(board).plan.map((planned, index) =>
    readings.findLast((reading) => reading.counts && isOfSpot(reading, index, planned, board.thicknessMm)),
  );

type ReadingAtSpot = Pick<JudgedReading, 'spotIndex' | 'spot' | 'counts' | 'depthFrom'>;

/**
 * Whether a reading tells what a planned spot is for. One whose depth a person has changed may tell another depth: the
 * spot is open again then.
 *
 * @param thicknessMm of the board
 */
export const isOfSpot = (
  reading: Omit<ReadingAtSpot, 'counts'>,
  index: number,
  planned: PlannedSpot,
  thicknessMm: number,
): boolean =>
  reading.spotIndex === index &&
  isReadAt(planned, reading.spot) &&
  (reading.depthFrom !== 'person' || depthRead(reading, thicknessMm) === planned.spot.depth);

/**
 * Where the pins go next on a board: the first spot of its plan, from one of them on and round to it again, that has
 * no reading which counts; null when all have one.
 *
 * @param given  the spot to begin at, an index into the plan; else the first that is gone to
 */
export function openSpot(
  board: BoardToPlan,
  readings: readonly ReadingAtSpot[],
  given?: number,
): number | null {
  const { plan } = planSpots(board);
  const from = given ?? firstSpot(plan);
  const bySpot = readingsBySpot(board, readings);
  const order = plan.map((_, index) => (from + index) % plan.length);
  return order.find((index) => bySpot[index] === undefined) ?? null;
}
