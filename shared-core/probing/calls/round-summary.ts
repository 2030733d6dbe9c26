import type { Call } from './assessment.ts';
import { counted } from './wording.ts';

/** A board's call in a round, or that its readings are still being judged; null for a board not probed in it. */
export type CallInRound = Call | 'being-judged' | null;

export type RoundSummary = {
  boards: number;
  probed: number;
  calls: Record<Call, number>;
  sentence: string;
};

const SAID: Record<Call, string> = {
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
export function summariseRound(requests: readonly CallInRound[]): RoundSummary {
  const calls: Record<Call, number> = { ready: 0, 'bring-in': 0, 'keep-drying': 0, 'probe-again': 0 };
  for (const call of requests) if (call !== null && call !== 'being-judged') calls[call] += 1;
  const boards = requests.length;
  const probed = requests.filter((call) => call !== null).length;
  return { boards, probed, calls, sentence: sentenceOf(boards, probed, calls) };
}

function sentenceOf(boards: number, probed: number, calls: Record<Call, number>): string {
  if (boards === 0) return 'There are no boards in this stack.';
  if (probed === 0) return `None of ${counted(boards, 'board')} probed yet.`;
  const rest = (['bring-in', 'keep-drying', 'probe-again'] as const)
    .filter((call) => calls[call] > 0)
    .map((call) => `${calls[call]} ${SAID[call]}`);
  const beingJudged = probed - Object.values(calls).reduce((sum, count) => sum + count, 0);
  if (beingJudged > 0) rest.push(`${beingJudged} being judged`);
  const left = boards - probed;
  if (left > 0) rest.push(`${left} not probed`);
  return `${[`${calls.ready} of ${boards} ready`, ...rest].join(', ')}.`;
}
