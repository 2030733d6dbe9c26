import type { Verdict } from './assessment.ts';
import { counted } from './wording.ts';

/** A board's call in a round, or that its readings are still being judged; null for a board not probed in it. */
export type CallInRound = Verdict | 'being-judged' | null;

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
 * @param calls one for each board of the stack
 */
export function summariseRound(calls: readonly CallInRound[]): RoundSummary {
  const verdicts: Record<Verdict, number> = { ready: 0, 'bring-in': 0, 'keep-drying': 0, 'probe-again': 0 };
  for (const call of calls) if (call !== null && call !== 'being-judged') verdicts[call] += 1;
  const boards = calls.length;
  const probed = calls.filter((call) => call !== null).length;
  return { boards, probed, verdicts, sentence: sentenceOf(boards, probed, verdicts) };
}

function sentenceOf(boards: number, probed: number, verdicts: Record<Verdict, number>): string {
  if (boards === 0) return 'There are no boards in this stack.';
  if (probed === 0) return `None of ${counted(boards, 'board')} probed yet.`;
  const rest = (['bring-in', 'keep-drying', 'probe-again'] as const)
    .filter((verdict) => verdicts[verdict] > 0)
    .map((verdict) => `${verdicts[verdict]} ${SAID[verdict]}`);
  const beingJudged = probed - Object.values(verdicts).reduce((sum, count) => sum + count, 0);
  if (beingJudged > 0) rest.push(`${beingJudged} being judged`);
  const left = boards - probed;
  if (left > 0) rest.push(`${left} not probed`);
  return `${[`${verdicts.ready} of ${boards} ready`, ...rest].join(', ')}.`;
}
