import { type Message, message } from '../../words/message.ts';
import type { JudgedReading } from './reading.ts';
import { planSpots } from './spots.ts';

type Taken = Pick<JudgedReading, 'roundId' | 'spotIndex' | 'spot'>;

/**
 * Where along the board a reading was taken: as the plan of spots has it; where the board's length was edited since,
 * its distance from the end that it was nearer to; null where nothing is known.
 *
 * @param readings  of the board, this one among them
 */
export function alongBoard(
  reading: Taken,
  board: Parameters<typeof planSpots>[0],
  readings: readonly Taken[],
): Message | null {
  const { spotIndex, spot } = reading;
  const planned = spotIndex === null ? undefined : planSpots(board).plan[spotIndex];
  if (planned?.spot.depth === spot.depth && isAlike(planned.spot.fromEndMm, spot.fromEndMm))
    return planned.along;
  const end = endOf(reading, readings);
  if (spot.fromEndMm !== null) {
    return end
      ? message(`spot.from-${end}`, { fromDistanceMm: spot.fromEndMm })
      : message('board.spot-from-end', { fromEndDistanceMm: spot.fromEndMm });
  }
  return end && message(`spot.nearer-${end}`);
}

/** A plan's second pair is always toward the right end, and its first toward the left where there was a second. */
function endOf({ roundId, spotIndex }: Taken, readings: readonly Taken[]): 'left' | 'right' | null {
  if (spotIndex === null) return null;
  if (spotIndex >= SPOTS_A_PAIR) return 'right';
  const hadTwoPairs = readings.some(
    (other) => other.roundId === roundId && (other.spotIndex ?? 0) >= SPOTS_A_PAIR,
  );
  return hadTwoPairs ? 'left' : null;
}

/** Shell and core. */
const SPOTS_A_PAIR = 2;

const isAlike = (plannedMm: number | null, mm: number | null): boolean =>
  plannedMm === null || mm === null ? plannedMm === mm : Math.abs(plannedMm - mm) < 1;
