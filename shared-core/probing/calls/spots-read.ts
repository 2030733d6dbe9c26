/** How far a board is read, against the plan of its spots. */
import type { Estimate } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import type { Depth, Reading } from '../readings/reading.ts';
import { END_CLEARANCE_MM, type PlannedSpot } from '../readings/spots.ts';
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
 * The plan of a round of which no more is to come, as of a notebook page: no more spots of a depth than were read. It is as
 * whole as it is, and its few readings tell what they tell.
 */
export function planAsRead(
  plan: SpotsByDepth,
  readings: readonly Pick<Reading, 'spot' | 'excluded'>[],
): SpotsByDepth {
  const read = spotsByDepth(readings.filter(({ excluded }) => excluded === null));
  const most = (depth: Depth) => Math.min(plan[depth], read[depth]);
  return { shell: most('shell'), average: most('average'), core: most('core') };
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
