import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';

/**
 * The end of the board that a reading's distance is from; null where the plan of spots does not tell, as for an extra
 * reading, or where the board's length was edited since.
 */
export function endOfReading(
  { spotIndex, spot: { depth, fromEndMm } }: Pick<JudgedReading, 'spotIndex' | 'spot'>,
  board: Parameters<typeof planSpots>[0],
): 'left' | 'right' | 'middle' | null {
  if (spotIndex === null || fromEndMm === null) return null;
  const alike = planSpots(board).plan.flatMap(({ spot }, index) =>
    spot.depth === depth && spot.fromEndMm !== null && Math.abs(spot.fromEndMm - fromEndMm) < 1
      ? [index]
      : [],
  );
  if (!alike.includes(spotIndex)) return null;
  // Spots are planned from the left end to the right, as far from either end; the middle one alone has no other.
  if (alike.length === 1) return 'middle';
  return spotIndex === alike[0] ? 'left' : 'right';
}
