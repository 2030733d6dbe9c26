import type { JudgedReading } from './reading.ts';

/**
 * Where the pins go next on a board: the first spot of its plan, from one of them on and round to it again, that has
 * no reading which counts; null when all have one.
 *
 * @param spots how many spots the plan has
 * @param from  the spot to begin at, an index into the plan
 */
export function openSpot(
  spots: number,
  readings: readonly Pick<JudgedReading, 'spotIndex' | 'counts'>[],
  from = 0,
): number | null {
  const filled = new Set(readings.filter(({ counts }) => counts).map(({ spotIndex }) => spotIndex));
  const order = Array.from({ length: spots }, (_, index) => (from + index) % spots);
  return order.find((index) => !filled.has(index)) ?? null;
}
