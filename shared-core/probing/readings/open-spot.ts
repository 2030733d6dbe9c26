import type { JudgedReading } from './reading.ts';
import { firstSpot, isReadAt, type PlannedSpot } from './spots.ts';

/** The newest reading that counts at each spot of a plan; undefined where none does. */
export const readingsBySpot = <R extends Pick<JudgedReading, 'spotIndex' | 'spot' | 'counts'>>(
  plan: readonly PlannedSpot[],
  readings: readonly R[],
): (R | undefined)[] =>
  plan.map((planned, index) =>
    readings.findLast(
      ({ counts, spotIndex, spot }) => counts && spotIndex === index && isReadAt(planned, spot),
    ),
  );

/**
 * Where the pins go next on a board: the first spot of its plan, from one of them on and round to it again, that has
 * no reading which counts; null when all have one.
 *
 * @param from  the spot to begin at, an index into the plan
 */
export function openSpot(
  plan: readonly PlannedSpot[],
  readings: readonly Pick<JudgedReading, 'spotIndex' | 'spot' | 'counts'>[],
  from = firstSpot(plan),
): number | null {
  const bySpot = readingsBySpot(plan, readings);
  const order = plan.map((_, index) => (from + index) % plan.length);
  return order.find((index) => bySpot[index] === undefined) ?? null;
}
