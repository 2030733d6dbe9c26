import { type Message, message } from '../../words/message.ts';
import { coreWaySchema, PAIRS, type PlanBasis } from './plan-basis.ts';
import type { JudgedReading } from './reading.ts';
import { type BoardToPlan, isReadAt, isSameSpot, type PlannedSpot, planSpots, spotAt } from './spots.ts';

type Taken = Pick<JudgedReading, 'roundId' | 'spotIndex' | 'spot'>;
type Board = Omit<BoardToPlan, 'planBasis'>;

const withCore = (faces: PlanBasis['faces']): PlanBasis[] =>
  [null, ...coreWaySchema.options].map((core) => ({ faces, core, pins: null }));
const ofAverage = withCore('average');
const ofShell = [PAIRS, ...withCore('shell')];

/** Every plan that a round's readings may be of. Where two have the same spot under one number, it is at the same place. */
const basesOf = (readings: readonly Taken[]): PlanBasis[] =>
  readings.some(({ spot }) => spot.depth === 'average') ? ofAverage : ofShell;

/**
 * Where along the board a reading was taken: as the plan of spots has it; where the board's length was edited since,
 * its distance from the end that it was nearer to; null where nothing is known.
 *
 * @param readings  of the board, this one among them
 */
export function alongBoard(reading: Taken, board: Board, readings: readonly Taken[]): Message | null {
  const { spot, roundId } = reading;
  const ofRound = readings.filter((each) => each.roundId === roundId);
  const bases = basesOf(ofRound);
  const isSame = (planned: PlannedSpot) => isAlike(planned.spot.fromEndMm, spot.fromEndMm);
  const found = planOf(reading, board, bases, isSame);
  if (found) return found.planned.along;
  const end = endOf(reading, board, bases, ofRound);
  if (spot.fromEndMm !== null) {
    return end
      ? message(`spot.from-${end}`, { fromDistanceMm: spot.fromEndMm })
      : message('board.spot-from-end', { fromEndDistanceMm: spot.fromEndMm });
  }
  return end && message(`spot.nearer-${end}`);
}

/** A plan that has the reading's spot under its number, and that spot. */
function planOf(
  { spotIndex, spot }: Taken,
  board: Board,
  bases: readonly PlanBasis[],
  isSame: (planned: PlannedSpot) => boolean = () => true,
): { planBasis: PlanBasis; planned: PlannedSpot } | null {
  if (spotIndex === null) return null;
  for (const planBasis of bases) {
    const planned = spotAt({ ...board, planBasis }, spotIndex);
    if (planned && isReadAt(planned, spot) && (planned.by === 'fresh-cut' || isSame(planned)))
      return { planBasis, planned };
  }
  return null;
}

/** Which end a spot was nearer to: a plan goes from left to right, and begins at the left where it had several places. */
function endOf(
  reading: Taken,
  board: Board,
  bases: readonly PlanBasis[],
  ofRound: readonly Taken[],
): 'left' | 'right' | null {
  const side = sideOf(reading, board, bases);
  const goesRight = ofRound.some((other) => sideOf(other, board, bases) === 'right');
  return goesRight ? side : null;
}

function sideOf(
  reading: Taken,
  { thicknessMm }: Board,
  bases: readonly PlanBasis[],
): 'left' | 'right' | null {
  const unmeasured = { thicknessMm, lengthMm: null };
  const found = planOf(reading, unmeasured, bases);
  if (!found) return null;
  const { planBasis, planned } = found;
  const alike = planSpots({ ...unmeasured, planBasis }).plan.filter((each) => isReadAt(each, planned.spot));
  const place = alike.findIndex((each) => isSameSpot(each, planned));
  if (place < 0) return null;
  const fromMiddle = place - (alike.length - 1) / 2;
  return fromMiddle < 0 ? 'left' : fromMiddle > 0 ? 'right' : null;
}

const isAlike = (plannedMm: number | null, mm: number | null): boolean =>
  plannedMm === null ? mm === null : mm !== null && Math.abs(plannedMm - mm) < 1;
