/** What to do with a stack, from counts of its boards: its call, and what about it is due. */
import { z } from 'zod';
import { DAY_MS } from '../../time.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type DayRange, type Message, message, messageSchema } from '../../words/message.ts';
import { type Call, callSchema } from '../calls/assessment.ts';
import { limitsForIndoors } from '../calls/call-here.ts';
import { type DueKind, dueKindSchema } from '../calls/next-step.ts';
import { boardsForNoneWet } from './sample-size.ts';

/** One in so many boards of a stack may be unfit without harm: they are found when it is worked. Common practice, no source. */
export const ONE_IN = 10;
/** How sure a stack that is called ready has to be. Common practice, no source. */
export const CERTAINTY = 0.9;

/** Boards of a stack, counted; those that were moved elsewhere are not among them. */
export interface StackFigures {
  endUse: Pick<EndUse, 'minPct' | 'maxPct'>;
  boards: number;
  /** With readings, but too few for a call. */
  halfProbed: number;
  calls: Record<Call, number>;
  /** Mean of the boards' averages, each of its latest round, % MC; null where none can be relied on. */
  averagePct: number | null;
  /** Of so many boards. */
  averaged: number;
  /** When those were read first and last, UTC instants; null where there are none. */
  averageRead: DayRange | null;
  /** The code of the only one of these; null where there are more, or none. */
  averagedCode: string | null;
  /** Boards by what each is due for today (`calls/next-step.ts`). */
  due: Record<DueKind, number>;
  /** The code of the only board that is to dry on before it is moved; null where there are more, or none. */
  laterCode: string | null;
  /** One of those to be probed again, with the reason of its call. */
  toProbeAgain: { boardCode: string; why: Message } | null;
  /** Readings of the open round, and boards of which it has read every spot; null where no round is open. */
  openRound: { readings: number; boardsDone: number } | null;
}

export const stackCallSchema = z.object({
  /** Null where no board was probed yet. */
  call: callSchema.nullable(),
  /** The first says it. */
  reasons: z.array(messageSchema).min(1),
});
export type StackCall = z.infer<typeof stackCallSchema>;

/** What a stack is due for as one of its boards. */
const ownDueKinds = dueKindSchema.exclude(['move-later']);
/** The most urgent first. */
export const stackDueKindSchema = z.enum([
  'open-round',
  'move-back',
  /** Its day to be probed has come (`next-probe.ts`). */
  'overdue',
  ...ownDueKinds.exclude(['move-back']).options,
  'more-boards',
]);
export const stackDueSchema = z.object({
  kind: stackDueKindSchema,
  why: messageSchema,
  /** Where it is due for boards elsewhere alone: their place. */
  placeId: z.number().int().positive().optional(),
});
export type StackDue = z.infer<typeof stackDueSchema>;

/** Whether what a stack is due for is a move, or a place to move it to. */
export const isMoveDue = (kind: StackDue['kind']): boolean =>
  kind === 'bring-in' || kind === 'move-back' || kind === 'add-place';

const probedOf = ({ calls }: Pick<StackFigures, 'calls'>): number =>
  Object.values(calls).reduce((sum, count) => sum + count, 0);

/** How many more boards must be found ready before the stack is called so; 0 where it was probed enough for that. */
const moreToProbe = (stack: StackFigures): number =>
  Math.max(0, boardsForNoneWet(stack.boards, 1 / ONE_IN, CERTAINTY) - probedOf(stack));

/**
 * Its call from its boards, and the figures behind it. What to do first about it, and why, is `dueOfStack`.
 * @returns null for a stack without boards
 */
export function callOnStack(stack: StackFigures): StackCall | null {
  const { boards, calls, due } = stack;
  if (boards === 0) return null;
  const probed = probedOf(stack);
  if (probed === 0)
    return {
      call: null,
      reasons: stack.halfProbed === 0 ? [message('stack-call.not-probed-yet')] : withoutCall(stack, probed),
    };
  const probeAgain = (again: number): StackCall => ({
    call: 'probe-again',
    reasons: [callOf('probe-again', again, boards), ...others(stack, 'probe-again')],
  });
  const turned = due['should-be-ready'];
  if (2 * turned > probed - calls.ready) return probeAgain(turned);
  if (calls.ready < probed) return callOfMost(stack, probed);
  if (due['may-not-be-ready'] > 0) return probeAgain(due['may-not-be-ready']);
  // Nothing is left to be unsure of.
  if (probed === boards)
    return { call: 'ready', reasons: [message('stack-call.every-board-ready', { boards })] };
  const more = moreToProbe(stack);
  return more > 0
    ? { call: 'probe-again', reasons: [message('stack-call.probe-more', { more })] }
    : {
        call: 'ready',
        reasons: [message('stack-call.all-ready', { probed }), message('stack-call.sure', sure)],
      };
}

const sure = { certaintyPct: 100 * CERTAINTY, oneIn: ONE_IN };
const NOT_READY = ['keep-drying', 'bring-in', 'too-dry', 'probe-again'] as const;

/** Boards by call. Those to bring in that no place is dry enough for are apart: they need a place first. */
const saidOf = ({ calls, due }: StackFigures) => ({
  ...calls,
  'bring-in': calls['bring-in'] - due['add-place'],
  'add-place': due['add-place'],
});
type Said = keyof ReturnType<typeof saidOf>;

const callOf = (said: Exclude<Said, 'ready'>, boards: number, probed: number): Message =>
  message(`stack-call.${boards === probed ? 'all' : 'some'}.${said}`, { boards, probed });

/** How many boards have another call, or none. Those that the stack is due for, or that dry on before a move, stand in that sentence. */
function others(stack: StackFigures, said: Said): Message[] {
  const { calls } = stack;
  const counts = saidOf(stack);
  const probed = probedOf(stack);
  const told = [
    said,
    dueOfStack(stack)?.kind,
    ...(calls['keep-drying'] <= laterOf(stack) ? ['keep-drying'] : []),
  ];
  return [
    ...(['ready', ...NOT_READY, 'add-place'] as const)
      .filter((each) => !told.includes(each) && counts[each] > 0 && counts[each] < probed)
      .map((each) => message(`stack-call.also.${each}`, { boards: counts[each] })),
    ...withoutCall(stack, probed),
  ];
}

/** How many boards of it are read in part, unless that is what it is due for, and how many not at all. */
function withoutCall(stack: StackFigures, probed: number): Message[] {
  const { boards, halfProbed } = stack;
  const isDue = probed > 0 && dueOfStack(stack)?.kind === 'first-round';
  const unread = boards - probed - halfProbed;
  return [
    ...(halfProbed > 0 && !isDue ? [message('stack-call.half-probed', { boards: halfProbed })] : []),
    ...(unread > 0 ? [message('stack-call.not-probed', { boards: unread })] : []),
  ];
}

/** Boards of which its call says that they dry on before a move; with others that are to be moved now, that sentence tells of them. */
const laterOf = ({ due }: StackFigures): number => (due['bring-in'] === 0 ? due['move-later'] : 0);

const mostOf = (calls: StackFigures['calls']) =>
  NOT_READY.reduce((most, each) => (calls[each] > calls[most] ? each : most));

/** Boards of one round are read within a day: where they were not, an average says from when it is. */
const isOfSeveralDays = (read: DayRange | null): read is DayRange =>
  read !== null && Date.parse(read.to) - Date.parse(read.from) >= DAY_MS;

function callOfMost(stack: StackFigures, probed: number): StackCall {
  const { calls, averagePct, averaged, averageRead, averagedCode, laterCode, endUse } = stack;
  const call = mostOf(calls);
  const counts = saidOf(stack);
  const said = call === 'bring-in' && counts['bring-in'] === 0 ? 'add-place' : call;
  const later = laterOf(stack);
  return {
    call,
    reasons: [
      // "All" would be heard as all of the stack.
      callOf(said, counts[said], said === 'probe-again' ? stack.boards : probed),
      ...(later > 0
        ? [
            message('stack-call.to-move-later', {
              boards: later,
              boardCode: laterCode ?? '',
              ...limitsForIndoors,
            }),
          ]
        : []),
      ...(averagePct === null
        ? []
        : [
            message('stack-call.average', {
              averagePct,
              averaged,
              boardCode: averagedCode ?? '',
              targetRange: { minPct: endUse.minPct, maxPct: endUse.maxPct },
            }),
            ...(isOfSeveralDays(averageRead)
              ? [message('stack-call.average-read', { probedRange: averageRead })]
              : []),
          ]),
      ...others(stack, said),
    ],
  };
}

/** What to do about a stack first; null where nothing is. */
export function dueOfStack(stack: StackFigures): StackDue | null {
  const { boards, calls, due, toProbeAgain, openRound } = stack;
  const probed = probedOf(stack);
  if (boards === 0) return null;
  if (openRound !== null)
    return { kind: 'open-round', why: message('stack-call.open-round', { ...openRound, boards }) };
  const more = moreToProbe(stack);
  if (probed === 0)
    return {
      kind: 'first-round',
      why:
        more === boards
          ? message('stack-call.probe-all', { boards })
          : message('stack-call.probe-so-many', { boards: more, ...sure }),
    };
  const later = due['move-later'];
  const toMove = {
    boards: due['bring-in'] + later,
    now: due['bring-in'],
    later,
    ...limitsForIndoors,
  };
  const reasons: Partial<Record<DueKind, Message | null>> = {
    'first-round':
      stack.halfProbed > 0 ? message('stack-call.finish-probing', { boards: stack.halfProbed }) : null,
    'should-be-ready': message('stack-call.should-be-ready', { boards: due['should-be-ready'] }),
    'probe-again':
      toProbeAgain && message('stack-call.some-to-probe', { boards: due['probe-again'], ...toProbeAgain }),
    'may-not-be-ready': message('stack-call.may-not-be-ready', { boards: due['may-not-be-ready'] }),
    'could-change-call': message('stack-call.could-change', { boards: due['could-change-call'] }),
    'learns-rate': message('stack-call.learns-rate', { boards: due['learns-rate'] }),
    'bring-in': message('stack-call.to-move', toMove),
    'move-back': message('stack-call.move-back', { boards: due['move-back'] }),
    'add-place': message('stack-call.add-place', { boards: due['add-place'] }),
  };
  // What its call says comes first, so that both ask for one thing.
  const calledSo: Exclude<DueKind, 'move-later'>[] =
    mostOf(calls) === 'bring-in' ? ['bring-in', 'move-back', 'add-place'] : [];
  for (const kind of [...calledSo, ...ownDueKinds.options]) {
    const why = reasons[kind];
    if (due[kind] > 0 && why) return { kind, why };
  }
  return calls.ready === probed && more > 0
    ? { kind: 'more-boards', why: message('stack-call.ready-so-far', { more, probed, ...sure }) }
    : null;
}
