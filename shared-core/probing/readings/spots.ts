import { type Message, message } from '../../words/message.ts';
import { averageDepthMm, type CoreWay, type PlanBasis, pinLengthMm } from './plan-basis.ts';
import type { Depth, Spot } from './reading.ts';

/** Ends dry faster than the rest: stay this far from them, mm. EN 13183-2 (resistance method), from memory. */
export const END_CLEARANCE_MM = 300;
/** A fresh crosscut this far from an end shows the wood as it is within, mm. Common practice, no source. */
const CUT_FROM_END_MM = 500;
/** Two places closer together than this show little more than one, mm. Common practice, no source. */
const SPACING_MM = 150;

/** One spot for the pins, where along the board it is, and how the wood there is reached. */
export type PlannedSpot = { along: Message; spot: Spot; by: 'pins' | CoreWay };

/** A board as far as its plan of spots goes. */
export type BoardToPlan = { lengthMm: number | null; thicknessMm: number; planBasis: PlanBasis };

/** The spots in the order a person walks them, and what is to be said of the plan (nothing where it is as it should be). */
export type SpotPlan = { plan: PlannedSpot[]; remarks: Message[] };

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
 * Depth below the face, mm, where a spot tells what it is meant to tell, if the pins reach it. Core: mid-thickness.
 * Average: a quarter of the thickness. Shell: a tenth of it, 2 to 6 mm, to the nearest half millimeter (common practice,
 * no source), and never past a fifth of a thin board.
 *
 * @param thicknessMm board thickness, mm, above 0
 */
export function plannedDepthMm(depth: Depth, thicknessMm: number): number {
  if (depth === 'core') return thicknessMm / 2;
  if (depth === 'average') return thicknessMm / 4;
  const tenth = Math.min(6, Math.max(2, Math.round(thicknessMm / 5) / 2));
  return Math.min(tenth, thicknessMm / 5);
}

/** How many places along a board are read where the pins tell one depth there, and where they tell shell or both. */
const PLACES = { average: 3, shell: 2, pairs: 2 } as const;

/**
 * Where to push the pins on one board: places evenly spread along it, none within 300 mm of an end where the length
 * allows, each for the depths that the pins tell there; then the core where a person chose another way to it. A board
 * too short for that is probed in its middle.
 *
 * @param lengthMm    board length, mm, above 0; null when not known
 * @param thicknessMm board thickness, mm, above 0
 * @param places      how many places along it to plan, 1 to 10
 * @throws RangeError outside the ranges above
 */
export function planSpots({
  lengthMm,
  thicknessMm,
  planBasis,
  places = PLACES[planBasis.faces],
}: BoardToPlan & { places?: number }): SpotPlan {
  if (!(thicknessMm > 0)) throw new RangeError(`A board's thickness must be above 0 mm, not ${thicknessMm}.`);
  if (lengthMm !== null && !(lengthMm > 0))
    throw new RangeError(`A board's length must be above 0 mm, not ${lengthMm}.`);
  if (!Number.isInteger(places) || places < 1 || places > 10)
    throw new RangeError(`Between 1 and 10 places can be planned, not ${places}.`);

  const { faces, core, pins } = planBasis;
  const { placesAlong, remark } = lengthMm === null ? unmeasured(places) : measured(lengthMm, places);
  const depths: Depth[] = faces === 'pairs' ? ['shell', 'core'] : [faces];
  const throughFace = placesAlong.flatMap(({ along, fromEndMm }) =>
    depths.map(
      (depth): PlannedSpot => ({
        along,
        spot: { depth, depthMm: pinDepthMm(depth, thicknessMm, planBasis), fromEndMm, face: 'face' },
        by: 'pins',
      }),
    ),
  );
  const plan = [...throughFace, ...(core === null ? [] : coreSpots(core, lengthMm, thicknessMm))];
  // The middle of a fresh split face is far from its ends, however short the piece.
  const isNearEnds = remark !== null && core !== 'fresh-split';
  const isAssumed = faces !== 'pairs' && (pins?.lengthMm ?? null) === null;
  const assumed = message('spot-plan.pins-assumed', { pinsMm: pinLengthMm(pins) });
  return { plan, remarks: [...(isNearEnds ? [remark] : []), ...(isAssumed ? [assumed] : [])] };
}

/** Where a round of a board begins: what is split anyway is split first, as its fresh face decides; else the first spot. */
export const firstSpot = (plan: readonly PlannedSpot[]): number =>
  Math.max(
    0,
    plan.findIndex(({ by }) => by === 'fresh-split'),
  );

/** How deep the pins are to go, mm: as deep as the spot asks for, or as deep as they reach. */
function pinDepthMm(depth: Depth, thicknessMm: number, { pins }: PlanBasis): number {
  if (depth === 'average') return averageDepthMm(thicknessMm, pins);
  const planned = plannedDepthMm(depth, thicknessMm);
  // Pairs are planned where the pins reach the middle, or were before their length was asked for; any pins reach a shell.
  return (pins?.lengthMm ?? null) === null ? planned : Math.min(planned, pinLengthMm(pins));
}

/** The core where no pins reach it from a face: on a crosscut in both halves of the width, else at two places along. */
function coreSpots(by: CoreWay, lengthMm: number | null, thicknessMm: number): PlannedSpot[] {
  const depthMm = plannedDepthMm('core', thicknessMm);
  if (by === 'fresh-cut') {
    const fromEndMm = lengthMm === null ? CUT_FROM_END_MM : Math.min(CUT_FROM_END_MM, lengthMm / 2);
    return [message('spot.cut-left'), message('spot.cut-right')].map((along) => ({
      along,
      spot: { depth: 'core', depthMm, fromEndMm, face: 'fresh-cut' },
      by,
    }));
  }
  const { placesAlong } = lengthMm === null ? unmeasured(PLACES.shell) : measured(lengthMm, PLACES.shell);
  return placesAlong.map(({ along, fromEndMm }) => ({
    along: by === 'long-pins' ? along : message(`spot.${by}`, { along }),
    spot: { depth: 'core', depthMm, fromEndMm, face: by === 'long-pins' ? 'face' : by },
    by,
  }));
}

/**
 * Numbers of the spots for more readings elsewhere on the board, as many as a person likes: beyond those of any plan, so
 * that they never mean one of its spots.
 */
export const EXTRA_SPOTS: Record<Depth, number> = { shell: 100, average: 101, core: 102 };

/** Whether a number is that of a spot beyond every plan. */
export const isExtraSpot = (index: number | null): boolean => index !== null && index >= EXTRA_SPOTS.shell;

/** At how many spots readings of one depth were taken; those beyond every plan are each at a new one. */
export function countSpots(readings: readonly { spotIndex: number | null }[]): number {
  const numbers = readings.map(({ spotIndex }) => spotIndex);
  const planned = numbers.filter((number) => number !== null && !isExtraSpot(number));
  return new Set(planned).size + numbers.length - planned.length;
}

/** For each depth of the board's plan, its number and its spot for more readings elsewhere. */
export function extraSpots(board: BoardToPlan): [index: number, PlannedSpot][] {
  const { plan } = planSpots(board);
  const depths = [...new Set(plan.map(({ spot }) => spot.depth))];
  return depths.map((depth) => {
    const like = plan.find(({ spot }) => spot.depth === depth)!;
    const elsewhere = { along: message('spot.elsewhere'), spot: { ...like.spot, fromEndMm: null } };
    return [EXTRA_SPOTS[depth], { ...like, ...elsewhere }];
  });
}

/** The spot of that number: one of the board's plan, or one elsewhere; undefined where the board has none. */
export function spotAt(board: BoardToPlan, index: number): PlannedSpot | undefined {
  return planSpots(board).plan[index] ?? new Map(extraSpots(board)).get(index);
}

/** Whether two plans have the same spot: of one depth, reached in one way, at one place along the board. */
export const isSameSpot = (one: PlannedSpot, other: PlannedSpot): boolean =>
  isReadAt(one, other.spot) && JSON.stringify(one.along) === JSON.stringify(other.along);

/** Whether a reading belongs to a planned spot, and was not taken by another plan. */
export const isReadAt = (planned: PlannedSpot | undefined, { depth, face }: Spot): boolean =>
  planned?.spot.depth === depth && planned.spot.face === face;

type Place = { along: Message; fromEndMm: number | null };
type Spread = { placesAlong: Place[]; remark: Message | null };

function measured(lengthMm: number, places: number): Spread {
  const usableMm = lengthMm - 2 * END_CLEARANCE_MM;
  const most = usableMm < 0 ? 1 : 1 + Math.floor(usableMm / SPACING_MM);
  const count = Math.min(places, most);
  const placesAlong = Array.from({ length: count }, (_, index): Place => {
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
  if (usableMm < 0) return { placesAlong, remark: message('spot-plan.short-board', facts) };
  if (count < places) return { placesAlong, remark: message('spot-plan.fewer', { ...facts, count, places }) };
  return { placesAlong, remark: null };
}

/** Parts of a board's length, %, that have a name. */
const NAMED_SHARES: Partial<Record<number, Message>> = {
  25: message('spot.quarter-from-left'),
  33: message('spot.third-from-left'),
  50: message('spot.half-way'),
  67: message('spot.third-from-right'),
  75: message('spot.quarter-from-right'),
};

function unmeasured(places: number): Spread {
  const placesAlong = Array.from({ length: places }, (_, index): Place => {
    const alongSharePct = Math.round((100 * (index + 1)) / (places + 1));
    return {
      along: NAMED_SHARES[alongSharePct] ?? message('spot.along', { alongSharePct }),
      fromEndMm: null,
    };
  });
  return { placesAlong, remark: message('spot-plan.length-unknown', { clearDistanceMm: END_CLEARANCE_MM }) };
}

/** "Core, 60 cm from the left end". */
export const spotName = ({ along, spot: { depth } }: Pick<PlannedSpot, 'along' | 'spot'>): Message =>
  message('spot.at', { depth, along });

/** Where the pins go, and how deep. */
export function pinsOf({ spot: { depth, depthMm }, by }: PlannedSpot): Message {
  if (depthMm === null) return message('spot.pins', { depth });
  if (by === 'long-pins') return message('spot.pins-long', { depthMm });
  if (by === 'fresh-split') return message('spot.pins-in-split');
  return by === 'pins' ? message('spot.pins-to', { depthMm }) : message('spot.pins-in-cut', { depthMm });
}

/** What to do before the pins go in; null where they go into a face. */
export function howTo({ spot: { fromEndMm, depthMm }, by }: PlannedSpot): Message | null {
  switch (by) {
    case 'pins':
      return null;
    case 'long-pins':
      return message('spot.how-long-pins');
    case 'fresh-rip':
      // Wood nearer to an edge than the thickness has dried from there as well.
      return message('spot.how-rip', { insideMm: 2 * (depthMm ?? 0) });
    case 'fresh-split':
      return message('spot.how-split');
    case 'fresh-cut':
      return fromEndMm !== null && fromEndMm < CUT_FROM_END_MM
        ? message('spot.how-cut-middle')
        : message('spot.how-cut', { fromEndDistanceMm: CUT_FROM_END_MM });
  }
}
