import { type Message, message } from '../../words/message.ts';
import { coreWaySchema, PAIRS, type PlanBasis } from './plan-basis.ts';
import type { JudgedReading } from './reading.ts';
import { type BoardToPlan, isReadAt, type PlannedSpot, planSpots, spotAt } from './spots.ts';

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
  const [, planned] = planOf(reading, board, bases, isSame) ?? [];
  if (planned) return planned.along;
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
): [PlanBasis, PlannedSpot] | null {
  if (spotIndex === null) return null;
  for (const planBasis of bases) {
    const planned = spotAt({ ...board, planBasis }, spotIndex);
    if (planned && isReadAt(planned, spot) && (planned.by === 'fresh-cut' || isSame(planned)))
      return [planBasis, planned];
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
  return side === 'left' && !goesRight ? null : side;
}

function sideOf(
  reading: Taken,
  { thicknessMm }: Board,
  bases: readonly PlanBasis[],
): 'left' | 'right' | null {
  const [planBasis, planned] = planOf(reading, { thicknessMm, lengthMm: null }, bases) ?? [];
  if (!planBasis || !planned) return null;
  const { plan } = planSpots({ lengthMm: null, thicknessMm, planBasis });
  const places = [...new Set(plan.filter(({ by }) => by === planned.by).map(({ along }) => along))];
  const place = plan[reading.spotIndex ?? -1];
  if (!place) return null;
  const fromMiddle = places.indexOf(place.along) - (places.length - 1) / 2;
  return fromMiddle === 0 ? null : fromMiddle < 0 ? 'left' : 'right';
}

const isAlike = (plannedMm: number | null, mm: number | null): boolean =>
  plannedMm === null || mm === null ? plannedMm === mm : Math.abs(plannedMm - mm) < 1;
