import { reachesOtherFace, tells } from './depth-read.ts';
import type { Pins } from './pins.ts';
import { type PlanBasis, usualBasis } from './plan-basis.ts';
import { type Depth, depthSchema } from './reading.ts';
import { EXTRA_SPOTS, type PlannedSpot, planSpots, spotAt } from './spots.ts';

/** How deep the readings of a notebook's column were, mm; or as deep as the meter's pins reach, or not known. */
export type ColumnDepth = number | 'pins' | 'unknown';

/** Where the reading in one column of a notebook's page belongs on a board. */
export interface PageSpot {
  spotIndex: number;
  planned: PlannedSpot;
}

/** The plan of a board's spots, and one of them for each column. */
export interface PageSpots {
  planBasis: PlanBasis;
  spots: PageSpot[];
}

/** How deep it was, as a part of the thickness, from the nearer face. */
const shareOf = (depthMm: number, thicknessMm: number): number =>
  Math.min(depthMm, thicknessMm - depthMm) / thicknessMm;

const isInCore = (depth: ColumnDepth | Depth, thicknessMm: number): boolean =>
  depth === 'core' ||
  (typeof depth === 'number' &&
    !reachesOtherFace(depth, thicknessMm) &&
    tells.core(shareOf(depth, thicknessMm)));

/** What the plan has to tell from the faces, so that it has spots for the depths that a column names. */
function facesFor(columns: readonly (ColumnDepth | Depth)[], { faces }: PlanBasis): PlanBasis['faces'] {
  if (columns.includes('shell') || columns.includes('core')) return faces === 'average' ? 'shell' : faces;
  return columns.includes('average') ? 'average' : faces;
}

/**
 * The spots that the columns of a notebook's page belong to. Without a given depth they follow the board's plan; readings
 * of a given depth go to the next spot that tells that depth. What is beyond the plan was read elsewhere on the board.
 * The plan has spots of the depths that columns name; where they name the average besides another, it goes to the shell.
 * A column names no place along the board: the plan's stands in for it, and its depth where one is given.
 *
 * @param board    its sizes; thickness above 0 mm, length null where unknown
 * @param pins     of the meter; null where unknown
 * @param columns  the depth of each, or what it tells, from left to right
 */
export function pageSpots(
  board: { thicknessMm: number; lengthMm: number | null },
  pins: Pins | null,
  columns: readonly (ColumnDepth | Depth)[],
): PageSpots {
  const { thicknessMm } = board;
  const byPins = usualBasis(thicknessMm, pins);
  const usual: PlanBasis = { ...byPins, faces: facesFor(columns, byPins) };
  const isCoreRead = columns.some((depth) => isInCore(depth, thicknessMm));
  // Pins that were in the core reached it, whatever is known of those of the meter.
  const planBasis: PlanBasis =
    isCoreRead && usual.faces === 'shell' ? { ...usual, core: 'long-pins' } : usual;
  const planned = { ...board, planBasis };
  const { plan } = planSpots(planned);
  const depths = depthSchema.options.filter((depth) => plan.some(({ spot }) => spot.depth === depth));
  const isFree = plan.map(() => true);

  function depthMeant(column: ColumnDepth | Depth): Depth | null {
    if (column === 'pins' || column === 'unknown') return null;
    if (typeof column !== 'number') return depths.includes(column) ? column : depths[0]!;
    const share = shareOf(column, thicknessMm);
    const told = depths.filter((depth) => tells[depth](share));
    return told.at(-1) ?? depths[0]!;
  }

  const spots = columns.map((column, number): PageSpot => {
    const depth = depthMeant(column);
    const index = plan.findIndex(
      ({ spot, by }, at) => isFree[at] && (depth === null ? by === 'pins' : spot.depth === depth),
    );
    const spotIndex = index >= 0 ? index : EXTRA_SPOTS[depth ?? plan[number % plan.length]!.spot.depth];
    if (index >= 0) isFree[index] = false;
    const next = spotAt(planned, spotIndex)!;
    const depthMm = column === 'unknown' ? null : next.spot.depthMm;
    return { spotIndex, planned: { ...next, spot: { ...next.spot, depthMm, isAlongUnknown: true } } };
  });
  return { planBasis, spots };
}
