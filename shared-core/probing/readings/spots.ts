import { type Message, message } from '../../words/message.ts';
import type { Depth, Spot } from './reading.ts';

/** Ends dry faster than the rest: stay this far from them, mm. EN 13183-2 (resistance method), from memory. */
export const END_CLEARANCE_MM = 300;
/** Two pairs of spots closer together than this show little more than one, mm. Common practice, no source. */
const PAIR_SPACING_MM = 150;

/** One spot for the pins, and where along the board it is. */
export type PlannedSpot = { along: Message; spot: Spot };

/** The spots in the order a person walks them, and what the plan could not do (null when it is as it should be). */
export type SpotPlan = { plan: PlannedSpot[]; remark: Message | null };

/**
 * How near an end of this board the pins may go, mm: 300, or less where the board is too short for that; then only
 * its middle third serves.
 *
 * @param lengthMm board length, mm, above 0; null when not known (300 then)
 */
export function endClearanceMm(lengthMm: number | null): number {
  return lengthMm === null ? END_CLEARANCE_MM : Math.min(END_CLEARANCE_MM, lengthMm / 3);
}

/**
 * Depth of the pin tips below the face, mm. Core: mid-thickness. Average: a quarter of the thickness, where the MC
 * profile of a drying board has about its mean (E. M. Wengert, woodworkingnetwork.com, "All about moisture meters"). Shell: a tenth of the thickness, 2 to 6 mm, to
 * the nearest half millimeter (common practice, no source), and never past a fifth of a thin board.
 *
 * @param thicknessMm board thickness, mm, above 0
 */
export function plannedDepthMm(depth: Depth, thicknessMm: number): number {
  if (depth === 'core') return thicknessMm / 2;
  if (depth === 'average') return thicknessMm / 4;
  const tenth = Math.min(6, Math.max(2, Math.round(thicknessMm / 5) / 2));
  return Math.min(tenth, thicknessMm / 5);
}

/**
 * Where to push the pins on one board: pairs of spots, shell and core, evenly spread along it, none within 300 mm of an end where the length allows. A board too short for that is probed in its middle.
 *
 * @param lengthMm    board length, mm, above 0; null when not known
 * @param thicknessMm board thickness, mm, above 0
 * @param pairs       how many pairs of spots to plan, 1 to 10
 * @throws RangeError outside the ranges above
 */
export function planSpots({
  lengthMm,
  thicknessMm,
  pairs = 2,
}: {
  lengthMm: number | null;
  thicknessMm: number;
  pairs?: number;
}): SpotPlan {
  if (!(thicknessMm > 0)) throw new RangeError(`A board's thickness must be above 0 mm, not ${thicknessMm}.`);
  if (lengthMm !== null && !(lengthMm > 0))
    throw new RangeError(`A board's length must be above 0 mm, not ${lengthMm}.`);
  if (!Number.isInteger(pairs) || pairs < 1 || pairs > 10)
    throw new RangeError(`Between 1 and 10 pairs of spots can be planned, not ${pairs}.`);

  const { pairsAlong, remark } = lengthMm === null ? unmeasured(pairs) : measured(lengthMm, pairs);
  const plan = pairsAlong.flatMap(({ along, fromEndMm }) =>
    (['shell', 'core'] as const).map(
      (depth): PlannedSpot => ({
        along,
        spot: { depth, depthMm: plannedDepthMm(depth, thicknessMm), fromEndMm, face: 'face' },
      }),
    ),
  );
  return { plan, remark };
}

type Pair = { along: Message; fromEndMm: number | null };
type Spread = { pairsAlong: Pair[]; remark: Message | null };

function measured(lengthMm: number, pairs: number): Spread {
  const usableMm = lengthMm - 2 * END_CLEARANCE_MM;
  const most = usableMm < 0 ? 1 : 1 + Math.floor(usableMm / PAIR_SPACING_MM);
  const count = Math.min(pairs, most);
  const pairsAlong = Array.from({ length: count }, (_, index): Pair => {
    const even = (lengthMm * (index + 1)) / (count + 1);
    const fromLeft =
      usableMm < 0 ? lengthMm / 2 : Math.min(lengthMm - END_CLEARANCE_MM, Math.max(END_CLEARANCE_MM, even));
    const fromRight = lengthMm - fromLeft;
    const fromEndMm = Math.min(fromLeft, fromRight);
    const facts = { fromDistanceMm: fromEndMm };
    if (Math.abs(fromLeft - fromRight) < 1) return { along: message('spot.in-middle', facts), fromEndMm };
    return {
      along: message(fromLeft < fromRight ? 'spot.from-left' : 'spot.from-right', facts),
      fromEndMm,
    };
  });
  const facts = { boardLengthMm: lengthMm, clearDistanceMm: END_CLEARANCE_MM };
  if (usableMm < 0) return { pairsAlong, remark: message('spot-plan.short-board', facts) };
  if (count < pairs) return { pairsAlong, remark: message('spot-plan.fewer', { ...facts, count, pairs }) };
  return { pairsAlong, remark: null };
}

/** Parts of a board's length, %, that have a name. */
const NAMED_SHARES: Partial<Record<number, Message>> = {
  33: message('spot.third-from-left'),
  50: message('spot.half-way'),
  67: message('spot.third-from-right'),
};

function unmeasured(pairs: number): Spread {
  const pairsAlong = Array.from({ length: pairs }, (_, index): Pair => {
    const alongSharePct = Math.round((100 * (index + 1)) / (pairs + 1));
    return {
      along: NAMED_SHARES[alongSharePct] ?? message('spot.along', { alongSharePct }),
      fromEndMm: null,
    };
  });
  return { pairsAlong, remark: message('spot-plan.length-unknown', { clearDistanceMm: END_CLEARANCE_MM }) };
}

/** "Core, 60 cm from the left end". */
export const spotName = ({ along, spot: { depth } }: PlannedSpot): Message =>
  message('spot.at', { depth, along });

/** How deep the pins go. */
export const pinsOf = ({ spot: { depth, depthMm } }: PlannedSpot): Message =>
  depthMm === null ? message('spot.pins', { depth }) : message('spot.pins-to', { depth, depthMm });
