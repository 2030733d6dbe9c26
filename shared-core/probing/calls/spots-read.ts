/** How far a board is read, against the plan of its spots. */
import type { Estimate } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import { isMoved, isSlip } from '../readings/exclusion.ts';
import type { Depth, Reading } from '../readings/reading.ts';
import { countSpots, END_CLEARANCE_MM, type PlannedSpot } from '../readings/spots.ts';
import type { SpotsRead } from './assessment.ts';

export type SpotsByDepth = Record<Depth, number>;

/** So many spots of a depth that nothing speaks against are enough for a call, once all of the plan are read. */
export const ENOUGH = 2;

const depths = ['shell', 'average', 'core'] as const;

/** How many spots of each depth a plan has. */
export function spotsByDepth(plan: readonly Pick<PlannedSpot, 'spot'>[]): SpotsByDepth {
  const count = (depth: Depth) => plan.filter(({ spot }) => spot.depth === depth).length;
  return { shell: count('shell'), average: count('average'), core: count('core') };
}

/**
 * The plan of a round of which no more is to come: no more spots of a depth than have a reading that is not excluded. So
 * a notebook page is as whole as it was typed, and a round that read every spot stays whole where a reading is excluded
 * or moved to another board later. One that left spots open keeps its plan. So does one of which nothing is left: the
 * round before tells more.
 */
export function planOfFinished(
  plan: SpotsByDepth,
  readings: readonly Reading[],
  { isTyped }: { isTyped: boolean },
): SpotsByDepth {
  const left = spotsByDepth(readings.filter(({ excluded }) => excluded === null));
  const isAnyLeft = depths.some((depth) => left[depth] > 0);
  if (!isAnyLeft || !(isTyped || wasWhole(plan, readings))) return plan;
  const most = (depth: Depth) => Math.min(plan[depth], left[depth]);
  return { shell: most('shell'), average: most('average'), core: most('core') };
}

/** Whether a round read every spot of a board's plan. It was another board's where all that it read was moved away. */
function wasWhole(plan: SpotsByDepth, readings: readonly Reading[]): boolean {
  const taken = readings.filter(
    ({ excluded, movedFrom }) => movedFrom === undefined && (isMoved(excluded) || !isSlip(excluded)),
  );
  if (taken.every(({ excluded }) => isMoved(excluded))) return false;
  const read = (depth: Depth) => countSpots(taken.filter(({ spot }) => spot.depth === depth));
  const counted = { countedShell: read('shell'), countedAverage: read('average'), countedCore: read('core') };
  const lacking = lackingOf(counted, plan);
  return depths.every((depth) => lacking[depth] === 0);
}

/** The usual plan: two pairs of shell and core, or one on a board too short for two. */
function usualPlan({ lengthMm }: BoardEvidence['board']): SpotsByDepth {
  const isShort = lengthMm !== null && lengthMm < 2 * END_CLEARANCE_MM + 150;
  return isShort ? { shell: 1, average: 0, core: 1 } : { shell: 2, average: 0, core: 2 };
}

/** How many readings of each depth count. */
export type Counted = Pick<Estimate, 'countedShell' | 'countedAverage' | 'countedCore'>;

/** How many spots of each depth are still needed for a call. */
export function spotsLacking(
  counted: Counted,
  { board, plan = usualPlan(board) }: Pick<BoardEvidence, 'board' | 'plan'>,
): SpotsByDepth {
  const enough = (depth: Depth) => Math.min(ENOUGH, plan[depth]);
  return lackingOf(counted, { shell: enough('shell'), average: enough('average'), core: enough('core') });
}

/** None where another plan's spots are enough by themselves: so many averages, or pairs of shell and core. */
function lackingOf(
  { countedShell: shell, countedAverage: average, countedCore: core }: Counted,
  needed: SpotsByDepth,
): SpotsByDepth {
  const atLeast = (depth: Depth) => Math.max(ENOUGH, needed[depth]);
  const isEnough = average >= atLeast('average') || (shell >= atLeast('shell') && core >= atLeast('core'));
  return isEnough
    ? { shell: 0, average: 0, core: 0 }
    : {
        shell: Math.max(0, needed.shell - shell),
        average: Math.max(0, needed.average - average),
        core: Math.max(0, needed.core - core),
      };
}

/** How many spots of the plan are read, of how many; null where that is all of them. */
export function halfProbed(
  counted: Counted,
  { board, plan = usualPlan(board) }: Pick<BoardEvidence, 'board' | 'plan'>,
): SpotsRead | null {
  const lacking = lackingOf(counted, plan);
  const sum = (of: (depth: Depth) => number) => depths.reduce((total, depth) => total + of(depth), 0);
  const open = sum((depth) => lacking[depth]);
  if (open === 0) return null;
  const planned = sum((depth) => plan[depth]);
  return { read: planned - open, planned };
}
