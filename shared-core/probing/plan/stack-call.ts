/** What to do with a stack, from counts of its boards: its call, and what about it is due. */
import { z } from 'zod';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Message, message, messageSchema } from '../../words/message.ts';
import { type Call, callSchema } from '../calls/assessment.ts';
import { type DueKind, dueKindSchema } from '../calls/next-step.ts';
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
  /** Mean of the boards' averages, each of its latest round, % MC; null where none can be relied on. */
  averagePct: number | null;
  /** Boards by what each is due for today (`calls/next-step.ts`). */
  due: Record<DueKind, number>;
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

/** What a stack is due for: as one of its boards, or for boards of which too few were probed to call it ready. */
export const stackDueKindSchema = z.enum([...dueKindSchema.options, 'more-boards']);
export const stackDueSchema = z.object({ kind: stackDueKindSchema, why: messageSchema });
export type StackDue = z.infer<typeof stackDueSchema>;

const probedOf = ({ calls }: Pick<StackFigures, 'calls'>): number =>
  Object.values(calls).reduce((sum, count) => sum + count, 0);

/** How many more boards must be found ready before the stack is called so; 0 where it was probed enough for that. */
const moreToProbe = (stack: StackFigures): number =>
  Math.max(0, boardsForNoneWet(stack.boards, 1 / ONE_IN, CERTAINTY) - probedOf(stack));

/** @returns null for a stack without boards */
export function callOnStack(stack: StackFigures): StackCall | null {
  const { boards, calls, due } = stack;
  if (boards === 0) return null;
  const probed = probedOf(stack);
  const sure = { certaintyPct: 100 * CERTAINTY, oneIn: ONE_IN };
  if (probed === 0) {
    return {
      call: null,
      reasons: [
        message('stack-call.not-probed-yet'),
        message('stack-call.probe-so-many', { boards: moreToProbe(stack), ...sure }),
      ],
    };
  }
  if (calls.ready === probed) {
    const gone = due['may-not-be-ready'];
    if (gone > 0)
      return probeAgain(
        message('stack-call.may-not-be-ready', { boards: gone }),
        ...notProbed(boards - probed),
      );
    const more = moreToProbe(stack);
    if (more > 0) return probeAgain(message('stack-call.ready-so-far', { probed, more, ...sure }));
    return {
      call: 'ready',
      reasons: [message('stack-call.all-ready', { probed }), message('stack-call.sure', sure)],
    };
  }
  const turned = due['should-be-ready'];
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
  const { boards, calls, due, averagePct, endUse, placeName, toProbeAgain } = stack;
  const call = NOT_READY.reduce((most, each) => (calls[each] > calls[most] ? each : most));
  const count = { boards: calls[call], probed };
  const targetRange = { minPct: endUse.minPct, maxPct: endUse.maxPct };
  const others = (['ready', ...NOT_READY] as const).filter((each) => each !== call && calls[each] > 0);
  const first = dueOfStack(stack);
  const alsoDue = first && !['probe-again', 'bring-in'].includes(first.kind) ? [first.why] : [];
  return {
    call,
    reasons: [
      message(`stack-call.${count.boards === probed ? 'all' : 'some'}.${call}`, count),
      ...(due['bring-in'] > 0
        ? [message('stack-call.will-not-get-there', { boards: due['bring-in'], placeName })]
        : []),
      ...(call === 'probe-again' && toProbeAgain ? [message('stack-call.reason-of', toProbeAgain)] : []),
      ...alsoDue,
      ...(averagePct === null ? [] : [message('stack-call.average', { averagePct, targetRange })]),
      ...others.map((each) => message(`stack-call.also.${each}`, { boards: calls[each] })),
      ...notProbed(boards - probed),
    ],
  };
}

/** What to do about a stack first; null where nothing is. */
export function dueOfStack(stack: StackFigures): StackDue | null {
  const { boards, calls, due, lastProbedAt, toProbeAgain, placeName } = stack;
  const probed = probedOf(stack);
  if (boards === 0) return null;
  if (probed === 0) return { kind: 'first-round', why: message('stack-call.not-probed-yet') };
  const reasons: Partial<Record<StackDue['kind'], Message | null>> = {
    'should-be-ready': message('stack-call.should-be-ready', { boards: due['should-be-ready'] }),
    'probe-again':
      toProbeAgain && message('stack-call.some-to-probe', { boards: due['probe-again'], ...toProbeAgain }),
    'may-not-be-ready': message('stack-call.may-not-be-ready', { boards: due['may-not-be-ready'] }),
    'could-change-call':
      lastProbedAt === null
        ? null
        : message('stack-call.could-change', { boards: due['could-change-call'], probedOn: lastProbedAt }),
    'learns-rate': message('stack-call.learns-rate', { boards: due['learns-rate'] }),
    'bring-in': message('stack-call.to-move', { boards: due['bring-in'], placeName }),
  };
  for (const kind of dueKindSchema.options) {
    const why = reasons[kind];
    if (due[kind] > 0 && why) return { kind, why };
  }
  const more = moreToProbe(stack);
  return calls.ready === probed && more > 0
    ? { kind: 'more-boards', why: message('stack-call.more-boards', { more, probed }) }
    : null;
}
