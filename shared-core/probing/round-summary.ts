import type { Assessment, Verdict } from './assessment.ts';
import { counted } from './wording.ts';

export type RoundSummary = {
  boards: number;
  probed: number;
  verdicts: Record<Verdict, number>;
  sentence: string;
};

const SAID: Record<Verdict, string> = {
  ready: 'ready',
  'bring-in': 'to bring in',
  'keep-drying': 'to keep drying',
  'probe-again': 'to probe again',
};

/**
 * What one round over a stack's boards amounts to.
 *
 * @param assessments one for each board of the stack; null for a board not probed in this round
 */
export function summariseRound(assessments: readonly (Assessment | null)[]): RoundSummary {
  const verdicts: Record<Verdict, number> = { ready: 0, 'bring-in': 0, 'keep-drying': 0, 'probe-again': 0 };
  for (const each of assessments) if (each !== null) verdicts[each.call.verdict] += 1;
  const boards = assessments.length;
  const probed = assessments.filter((each) => each !== null).length;
  return { boards, probed, verdicts, sentence: sentenceOf(boards, probed, verdicts) };
}

function sentenceOf(boards: number, probed: number, verdicts: Record<Verdict, number>): string {
  if (boards === 0) return 'There are no boards in this stack.';
  if (probed === 0) return `None of ${counted(boards, 'board')} probed yet.`;
  const rest = (['bring-in', 'keep-drying', 'probe-again'] as const)
    .filter((verdict) => verdicts[verdict] > 0)
    .map((verdict) => `${verdicts[verdict]} ${SAID[verdict]}`);
  const left = boards - probed;
  if (left > 0) rest.push(`${left} not probed`);
  return `${[`${verdicts.ready} of ${boards} ready`, ...rest].join(', ')}.`;
}
