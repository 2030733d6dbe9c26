/** What to do with a stack: its call from its boards, how many to probe, and which ones next. */
import { z } from 'zod';
import { mean } from '../../wood/maths/mean.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Message, message, messageSchema } from '../../words/message.ts';
import { type Call, callSchema } from '../calls/assessment.ts';
import { dueKindSchema, type NextStep } from '../calls/next-step.ts';
import { boardsForMean, boardsForNoneWet, probeNext } from './sample-size.ts';
import { ONE_IN } from './stack-call.ts';

/** The stack's average is to be known to this, % MC. */
export const MEAN_MARGIN_PCT = 1;
/** How far boards of a stack differ where too few were probed to tell, one standard deviation, % MC. Common practice, no source. */
export const USUAL_SPREAD_PCT = 1.5;
/** Boards that happen to agree do not promise that all do, % MC. */
const LEAST_SPREAD_PCT = 0.3;
/** A probing that could save less than this is not worth the walk, % MC. */
const LEAST_WORTH_PCT = 0.02;
/** Boards named to probe next: a person's walk, not a list of the stack. */
const MOST_NAMED = 12;

/** What is known of one board of the stack. */
export interface BoardStanding {
  boardId: number;
  code: string;
  /** Of its latest round; null where it was never probed. Its call is null where too few spots are read. Its average is null where it cannot be relied on. */
  latest: { call: Call | null; reason: Message; averagePct: number | null } | null;
  next: NextStep;
  /** Its average today with one standard uncertainty above 0, % MC; null where nothing is known of it. */
  today: { averagePct: number; standardUncertaintyPct: number } | null;
}

export const stackPlanSchema = z.object({
  boards: z.number().int(),
  probed: z.number().int(),
  /** 0.5 to 0.999. */
  certainty: z.number(),
  /** Boards to probe, all of them ready, to be so certain that at most one in ten is not. */
  toKnowReady: z.number().int(),
  /** Boards to probe to know the stack's average to a margin, with the spread between boards that it is for, % MC. */
  toKnowMean: z.object({ boards: z.number().int(), marginPct: z.number(), spreadPct: z.number() }),
  /** What to say instead of those numbers where every board was probed. */
  allProbed: messageSchema.nullable(),
  /** Boards that are due to be probed, the most urgent first; then those never probed, the most informative first. */
  next: z.array(
    z.object({
      boardId: z.number().int(),
      code: z.string(),
      call: callSchema.nullable(),
      why: messageSchema,
    }),
  ),
  /** Where none is named: that none needs probing today, and from when on one does. */
  whyNone: messageSchema,
});
export type StackPlan = z.infer<typeof stackPlanSchema>;

/**
 * Plans the next walk over a stack.
 *
 * The number to probe is that of a random sample from the finite stack (`sample-size.ts`). The boards named are those
 * whose own next step is to be probed (`calls/next-step.ts`), and of those never probed as many as that number lacks.
 *
 * @param boards      all boards of the stack, one or more
 * @param certainty   0.5 to 0.999
 * @throws RangeError without boards, or for a certainty outside its range
 */
export function planStack(boards: readonly BoardStanding[], endUse: EndUse, certainty: number): StackPlan {
  const probed = boards.filter(({ latest }) => latest !== null && latest.call !== null);
  const toKnowReady = boardsForNoneWet(boards.length, 1 / ONE_IN, certainty);
  const { spreadPct, of } = spreadOf(probed);
  return {
    boards: boards.length,
    probed: probed.length,
    certainty,
    toKnowReady,
    toKnowMean: {
      boards: boardsForMean(boards.length, spreadPct, MEAN_MARGIN_PCT, certainty, of),
      marginPct: MEAN_MARGIN_PCT,
      spreadPct,
    },
    allProbed: probed.length < boards.length ? null : allProbedOf(boards),
    next: nextOf(boards, endUse, Math.max(0, toKnowReady - probed.length)),
    whyNone: whyNone(boards),
  };
}

/** How far boards differ, and how many that was found from; null where it is only the usual spread. */
function spreadOf(probed: readonly BoardStanding[]): { spreadPct: number; of: number | null } {
  const averages = probed.flatMap(({ today }) => (today === null ? [] : [today.averagePct]));
  if (averages.length < 3) return { spreadPct: USUAL_SPREAD_PCT, of: null };
  const center = mean(averages);
  const squares = averages.reduce((sum, value) => sum + (value - center) ** 2, 0);
  const spreadPct = Math.max(LEAST_SPREAD_PCT, Math.sqrt(squares / (averages.length - 1)));
  return { spreadPct, of: averages.length };
}

/** Boards of which something is known today. */
type KnownBoard = BoardStanding & { today: NonNullable<BoardStanding['today']> };

/** @param lacking  how many of those never probed are to be named */
function nextOf(boards: readonly BoardStanding[], endUse: EndUse, lacking: number): StackPlan['next'] {
  const toProbe = dueKindSchema.options.flatMap((kind) =>
    boards.filter(({ latest, next }) => latest !== null && next.step === 'probe' && next.due === kind),
  );
  const unprobed = boards.filter(({ latest }) => latest === null);
  const known = unprobed.filter((board): board is KnownBoard => board.today !== null);
  const most = Math.min(MOST_NAMED, lacking);
  const unknown = spread(
    unprobed.filter(({ today }) => today === null),
    most,
  );
  const ranked = probeNext(
    known.map(({ boardId, today }) => ({ boardId, ...today })),
    endUse,
  )
    .filter(({ worthPct }) => worthPct >= LEAST_WORTH_PCT)
    .map(({ boardId }) => known.find((board) => board.boardId === boardId)!);
  const named = (board: BoardStanding, why: Message) => ({
    boardId: board.boardId,
    code: board.code,
    call: board.latest?.call ?? null,
    why,
  });
  return [
    ...toProbe.map((board) => named(board, board.next.why ?? board.latest!.reason)),
    ...[
      ...unknown.map((board) => named(board, message('stack-plan.next.nothing-known'))),
      ...ranked.map((board) => named(board, whyProbe(board, endUse))),
    ].slice(0, most),
  ].slice(0, MOST_NAMED);
}

/** What the last readings of all boards found. */
function allProbedOf(boards: readonly BoardStanding[]): Message {
  const averages = boards.flatMap(({ latest }) => latest?.averagePct ?? []);
  const counts = {
    boards: boards.length,
    ready: boards.filter(({ latest }) => latest?.call === 'ready').length,
  };
  return averages.length === 0
    ? message('stack-plan.all-probed-no-average', counts)
    : message('stack-plan.all-probed', {
        ...counts,
        unaveraged: boards.length - averages.length,
        averaged: averages.length,
        averagePct: mean(averages),
        averagesInterval: { minPct: Math.min(...averages), maxPct: Math.max(...averages) },
      });
}

function whyNone(boards: readonly BoardStanding[]): Message {
  const from = boards.flatMap(({ next }) => (next.step === 'wait' ? (next.probeMs ?? []) : []));
  return from.length === 0
    ? message('stack-plan.next.none')
    : message('stack-plan.next.none-until', { probeOn: new Date(Math.min(...from)).toISOString() });
}

/** So many of a list, evenly from its first to its last: boards all through the stack. */
function spread<T>(list: readonly T[], most: number): T[] {
  const step = list.length / most;
  return step <= 1 ? [...list] : Array.from({ length: most }, (_, i) => list[Math.floor(i * step)] as T);
}

function whyProbe({ today }: KnownBoard, { minPct, maxPct }: EndUse): Message {
  const { averagePct, standardUncertaintyPct } = today;
  const isUpper = Math.abs(averagePct - maxPct) <= Math.abs(averagePct - minPct);
  return message('stack-plan.next.never-probed', {
    averagePct,
    errorPoints: standardUncertaintyPct,
    limitPct: isUpper ? maxPct : minPct,
  });
}
