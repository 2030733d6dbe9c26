import { saidLongLength } from '../../units/said.ts';
import type { Depth, Spot } from './reading.ts';

/** Ends dry faster than the rest: stay this far from them, mm. EN 13183-2 (resistance method), from memory. */
export const END_CLEARANCE_MM = 300;
const clear = saidLongLength(END_CLEARANCE_MM);
/** Two places closer together than this tell hardly more than one, mm. Common practice, no source. */
const PLACE_SPACING_MM = 150;

/** One spot for the pins, with the words that send a person there. */
export type PlannedSpot = { label: string; spot: Spot };

/** The spots in the order a person walks them, and what the plan could not do (null when it is as it should be). */
export type SpotPlan = { plan: PlannedSpot[]; remark: string | null };

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
 * Depth of the pin tips below the face, mm. Core: mid-thickness. Shell: a tenth of the thickness, 2 to 6 mm, to
 * the nearest half millimetre (common practice, no source), and never past a fifth of a thin board.
 *
 * @param thicknessMm board thickness, mm, above 0
 */
export function plannedDepthMm(depth: Depth, thicknessMm: number): number {
  if (depth === 'core') return thicknessMm / 2;
  const tenth = Math.min(6, Math.max(2, Math.round(thicknessMm / 5) / 2));
  return Math.min(tenth, thicknessMm / 5);
}

/**
 * Where to push the pins on one board: shell and core at each of several places along it, evenly spread, none
 * within 300 mm of an end where the length allows. A board too short for that is probed in its middle.
 *
 * @param lengthMm    board length, mm, above 0; null when not known
 * @param thicknessMm board thickness, mm, above 0
 * @param placesAlong how many places along the board are wanted, 1 to 10
 * @throws RangeError outside the ranges above
 */
export function planSpots({
  lengthMm,
  thicknessMm,
  placesAlong = 2,
}: {
  lengthMm: number | null;
  thicknessMm: number;
  placesAlong?: number;
}): SpotPlan {
  if (!(thicknessMm > 0)) throw new RangeError(`A board's thickness must be above 0 mm, not ${thicknessMm}.`);
  if (lengthMm !== null && !(lengthMm > 0))
    throw new RangeError(`A board's length must be above 0 mm, not ${lengthMm}.`);
  if (!Number.isInteger(placesAlong) || placesAlong < 1 || placesAlong > 10)
    throw new RangeError(`Between 1 and 10 places along a board can be planned, not ${placesAlong}.`);

  const { places, remark } =
    lengthMm === null ? unmeasuredPlaces(placesAlong) : measuredPlaces(lengthMm, placesAlong);
  const plan = places.flatMap(({ where, fromEndMm }) =>
    (['shell', 'core'] as const).map(
      (depth): PlannedSpot => ({
        label: `${depth === 'shell' ? 'Shell' : 'Core'}, ${where}`,
        spot: { depth, depthMm: plannedDepthMm(depth, thicknessMm), fromEndMm, face: 'face' },
      }),
    ),
  );
  return { plan, remark };
}

type Place = { where: string; fromEndMm: number | null };

function measuredPlaces(lengthMm: number, wanted: number): { places: Place[]; remark: string | null } {
  const usableMm = lengthMm - 2 * END_CLEARANCE_MM;
  const most = usableMm < 0 ? 1 : 1 + Math.floor(usableMm / PLACE_SPACING_MM);
  const count = Math.min(wanted, most);
  const places = Array.from({ length: count }, (_, index): Place => {
    const even = (lengthMm * (index + 1)) / (count + 1);
    const fromLeft =
      usableMm < 0 ? lengthMm / 2 : Math.min(lengthMm - END_CLEARANCE_MM, Math.max(END_CLEARANCE_MM, even));
    const fromRight = lengthMm - fromLeft;
    const fromEndMm = Math.min(fromLeft, fromRight);
    if (Math.abs(fromLeft - fromRight) < 1)
      return { where: `in the middle, ${saidLongLength(fromEndMm)} from either end`, fromEndMm };
    return {
      where: `${saidLongLength(fromEndMm)} from the ${fromLeft < fromRight ? 'left' : 'right'} end`,
      fromEndMm,
    };
  });
  if (usableMm < 0)
    return {
      places,
      remark: `This board is only ${saidLongLength(lengthMm)} long: no place on it is ${clear} from both ends. Probe its middle, and trust the result less, because the ends dry first.`,
    };
  if (count < wanted)
    return {
      places,
      remark: `This board is only ${saidLongLength(lengthMm)} long: there is room for ${count === 1 ? 'one place' : `${count} places`} at least ${clear} from both ends, not for ${wanted}.`,
    };
  return { places, remark: null };
}

function unmeasuredPlaces(wanted: number): { places: Place[]; remark: string } {
  const places = Array.from({ length: wanted }, (_, index): Place => {
    const percent = Math.round((100 * (index + 1)) / (wanted + 1));
    return {
      where: percent === 50 ? 'in the middle' : `${percent} % of the way along from the left end`,
      fromEndMm: null,
    };
  });
  return { places, remark: `This board's length is not known: keep at least ${clear} from both ends.` };
}
