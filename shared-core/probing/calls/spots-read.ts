/** How far a board is read, against the plan of its spots. */
import type { Estimate } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import type { Depth } from '../readings/reading.ts';
import { END_CLEARANCE_MM, type PlannedSpot } from '../readings/spots.ts';
import type { SpotsRead } from './assessment.ts';

export type SpotsByDepth = Record<Depth, number>;

/** So many readings of a depth are enough, whatever the plan has. */
export const ENOUGH = 2;

const depths = ['shell', 'average', 'core'] as const;

/** How many spots of each depth a plan has. */
export function spotsByDepth(plan: readonly Pick<PlannedSpot, 'spot'>[]): SpotsByDepth {
  const count = (depth: Depth) => plan.filter(({ spot }) => spot.depth === depth).length;
  return { shell: count('shell'), average: count('average'), core: count('core') };
}

/** The usual plan: two pairs of shell and core, or one on a board too short for two. */
function usualPlan({ lengthMm }: BoardEvidence['board']): SpotsByDepth {
  const isShort = lengthMm !== null && lengthMm < 2 * END_CLEARANCE_MM + 150;
  return isShort ? { shell: 1, average: 0, core: 1 } : { shell: 2, average: 0, core: 2 };
}

type Counted = Pick<Estimate, 'countedShell' | 'countedAverage' | 'countedCore'>;

/** How many readings of each depth are still needed; none where another plan's readings are enough by themselves. */
export function spotsLacking(
  { countedShell: shell, countedAverage: average, countedCore: core }: Counted,
  { board, plan = usualPlan(board) }: Pick<BoardEvidence, 'board' | 'plan'>,
): SpotsByDepth {
  const counted = { shell, average, core };
  const lacking = (depth: Depth) => Math.max(0, Math.min(ENOUGH, plan[depth]) - counted[depth]);
  const isEnough = average >= ENOUGH || (shell >= ENOUGH && core >= ENOUGH);
  return isEnough
    ? { shell: 0, average: 0, core: 0 }
    : { shell: lacking('shell'), average: lacking('average'), core: lacking('core') };
}

/** How many spots of the plan are read, of how many; null where that is enough for a call. */
export function halfProbed(
  counted: Counted,
  evidence: Pick<BoardEvidence, 'board' | 'plan'>,
): SpotsRead | null {
  const lacking = spotsLacking(counted, evidence);
  if (depths.every((depth) => lacking[depth] === 0)) return null;
  const { plan = usualPlan(evidence.board) } = evidence;
  const { countedShell: shell, countedAverage: average, countedCore: core } = counted;
  const has = { shell, average, core };
  const sum = (of: (depth: Depth) => number) => depths.reduce((total, depth) => total + of(depth), 0);
  return { read: sum((depth) => Math.min(has[depth], plan[depth])), planned: sum((depth) => plan[depth]) };
}
