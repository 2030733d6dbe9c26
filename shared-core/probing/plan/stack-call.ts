/** What to do with a stack, from counts of its boards: its call, and what about it is due. */
import { z } from 'zod';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Message, message, messageSchema } from '../../words/message.ts';
import { type Call, callSchema } from '../calls/assessment.ts';
import type { ProbeWhy } from '../calls/outlook.ts';
import { boardsForNoneWet } from './sample-size.ts';

/** One in so many boards of a stack may be unfit without harm: they are found when it is worked. Common practice, no source. */
export const ONE_IN = 10;
/** How sure a stack that is called ready has to be. Common practice, no source. */
const CERTAINTY = 0.9;

/** Boards of a stack, counted; those that were moved elsewhere are not among them. */
export interface StackFigures {
  placeName: string;
  endUse: Pick<EndUse, 'minPct' | 'maxPct'>;
  boards: number;
  calls: Record<Call, number>;
  /** Mean of the boards' averages, each of its latest round, % MC; null where none was probed. */
  averagePct: number | null;
  /** Boards of which a reading today would be of use. */
  probeWhy: Record<ProbeWhy, number>;
  /** One of those to be probed again, with the reason of its call. */
  toProbeAgain: { boardCode: string; why: Message } | null;
  /** UTC, ISO 8601; null for never. */
  lastProbedAt: string | null;
}

export const stackCallSchema = z.object({
  /** Null where no board was probed yet. */
  call: callSchema.nullable(),
  /** The first says it, the second why. */
  reasons: z.array(messageSchema).min(1),
});
export type StackCall = z.infer<typeof stackCallSchema>;

/** What a stack can be due for, the most urgent first. */
export const dueKindSchema = z.enum([
  'first-round',
  'should-be-ready',
  'probe-again',
  'may-not-be-ready',
  'could-change-call',
  'bring-in',
]);
export type DueKind = z.infer<typeof dueKindSchema>;
export const stackDueSchema = z.object({ kind: dueKindSchema, why: messageSchema });
export type StackDue = z.infer<typeof stackDueSchema>;

const probedOf = ({ calls }: Pick<StackFigures, 'calls'>): number =>
  Object.values(calls).reduce((sum, count) => sum + count, 0);

/** @returns null for a stack without boards */
export function callOnStack(stack: StackFigures): StackCall | null {
  const { boards, calls, probeWhy } = stack;
  if (boards === 0) return null;
  const probed = probedOf(stack);
  const sure = { certaintyPct: 100 * CERTAINTY, oneIn: ONE_IN };
  const toKnowReady = boardsForNoneWet(boards, 1 / ONE_IN, CERTAINTY);
  if (probed === 0) {
    return {
      call: null,
      reasons: [
        message('stack-call.not-probed-yet'),
        message('stack-call.probe-so-many', { boards: toKnowReady, ...sure }),
      ],
    };
  }
  if (calls.ready === probed) {
    const gone = probeWhy['may-not-be-ready'];
    if (gone > 0)
      return probeAgain(
        message('stack-call.may-not-be-ready', { boards: gone }),
        ...notProbed(boards - probed),
      );
    const more = toKnowReady - probed;
    if (more > 0) return probeAgain(message('stack-call.ready-so-far', { probed, more, ...sure }));
    return {
      call: 'ready',
      reasons: [message('stack-call.all-ready', { probed }), message('stack-call.sure', sure)],
    };
  }
  const turned = probeWhy['should-be-ready'];
  if (2 * turned > probed - calls.ready)
    return probeAgain(
      message('stack-call.should-be-ready', { boards: turned }),
      ...(calls.ready > 0 ? [message('stack-call.also.ready', { boards: calls.ready })] : []),
      ...notProbed(boards - probed),
    );
  return callOfMost(stack, probed);
}

const probeAgain = (...reasons: Message[]): StackCall => ({ call: 'probe-again', reasons });
const notProbed = (boards: number): Message[] =>
  boards > 0 ? [message('stack-call.not-probed', { boards })] : [];

const NOT_READY = ['keep-drying', 'bring-in', 'probe-again'] as const;

function callOfMost(stack: StackFigures, probed: number): StackCall {
  const { boards, calls, averagePct, endUse, placeName, toProbeAgain } = stack;
  const call = NOT_READY.reduce((most, each) => (calls[each] > calls[most] ? each : most));
  const count = { boards: calls[call], probed };
  const targetRange = { minPct: endUse.minPct, maxPct: endUse.maxPct };
  const others = (['ready', ...NOT_READY] as const).filter((each) => each !== call && calls[each] > 0);
  return {
    call,
    reasons: [
      message(`stack-call.${count.boards === probed ? 'all' : 'some'}.${call}`, count),
      ...(call === 'bring-in'
        ? [message('stack-call.they-are-dry', { boards: count.boards, placeName })]
        : []),
      ...(call === 'probe-again' && toProbeAgain ? [message('stack-call.reason-of', toProbeAgain)] : []),
      ...(averagePct === null ? [] : [message('stack-call.average', { averagePct, targetRange })]),
      ...others.map((each) => message(`stack-call.also.${each}`, { boards: calls[each] })),
      ...notProbed(boards - probed),
    ],
  };
}

/** What to do about a stack first; null where nothing is. */
export function dueOfStack(stack: StackFigures): StackDue | null {
  const { boards, calls, probeWhy, lastProbedAt, toProbeAgain, placeName } = stack;
  const probed = probedOf(stack);
  if (boards === 0) return null;
  if (probed === 0) return { kind: 'first-round', why: message('stack-call.not-probed-yet') };
  const is: Partial<Record<DueKind, Message | false | null>> = {
    'should-be-ready':
      probeWhy['should-be-ready'] > 0 &&
      message('stack-call.should-be-ready', { boards: probeWhy['should-be-ready'] }),
    'probe-again':
      toProbeAgain && message('stack-call.some-to-probe', { boards: calls['probe-again'], ...toProbeAgain }),
    'may-not-be-ready':
      probeWhy['may-not-be-ready'] > 0 &&
      message('stack-call.may-not-be-ready', { boards: probeWhy['may-not-be-ready'] }),
    'could-change-call':
      probeWhy['could-change-call'] > 0 &&
      lastProbedAt !== null &&
      message('stack-call.could-change', { boards: probeWhy['could-change-call'], probedOn: lastProbedAt }),
    'bring-in':
      calls['bring-in'] > 0 && message('stack-call.dry-as-place', { boards: calls['bring-in'], placeName }),
  };
  for (const kind of dueKindSchema.options) {
    const why = is[kind];
    if (why) return { kind, why };
  }
  return null;
}
