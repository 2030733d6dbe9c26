import { type Message, message } from '../../words/message.ts';
import { type Call, callSchema } from './assessment.ts';

/** A board's call in a round, or why its readings have none (yet); null for a board not probed in it. */
export type CallInRound = Call | 'half-probed' | 'being-judged' | null;

export type RoundSummary = {
  boards: number;
  probed: number;
  calls: Record<Call, number>;
  /** The same in one sentence. */
  message: Message;
};

/**
 * What one round over a stack's boards amounts to.
 *
 * @param ofBoards one for each board of the stack
 */
export function summarizeRound(ofBoards: readonly CallInRound[]): RoundSummary {
  const calls: Record<Call, number> = Object.fromEntries(
    callSchema.options.map((call) => [call, 0]),
  ) as Record<Call, number>;
  let probed = 0;
  let half = 0;
  for (const call of ofBoards) {
    if (call === null) continue;
    probed += 1;
    if (call === 'half-probed') half += 1;
    else if (call !== 'being-judged') calls[call] += 1;
  }
  const boards = ofBoards.length;
  return { boards, probed, calls, message: messageOf(boards, probed, half, calls) };
}

function messageOf(boards: number, probed: number, half: number, calls: Record<Call, number>): Message {
  if (boards === 0) return message('round-summary.no-boards');
  if (probed === 0) return message('round-summary.none-probed', { boards });
  const judged = Object.values(calls).reduce((sum, count) => sum + count, 0);
  const others = {
    'bring-in': calls['bring-in'],
    'keep-drying': calls['keep-drying'],
    'too-dry': calls['too-dry'],
    'probe-again': calls['probe-again'],
    'half-probed': half,
    'being-judged': probed - judged - half,
    'not-probed': boards - probed,
  };
  const counts = [
    message('round-summary.ready', { ready: calls.ready, boards }),
    ...Object.entries(others).flatMap(([which, count]) =>
      count === 0 ? [] : [message(`round-summary.${which as keyof typeof others}`, { boards: count })],
    ),
  ];
  return message('round-summary.calls', { counts });
}
