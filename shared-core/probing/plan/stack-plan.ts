/** What to do with a stack: its call from its boards, how many to probe, and which ones next. */
import { z } from 'zod';
import { mean } from '../../wood/maths/mean.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Message, message, messageSchema } from '../../words/message.ts';
import { type Call, callSchema } from '../calls/assessment.ts';
import { boardsForMean, boardsForNoneWet, probeNext } from './sample-size.ts';
import { ONE_IN } from './stack-call.ts';

/** The stack's average is to be known to this, % MC. */
const MEAN_MARGIN_PCT = 1;
/** How far boards of a stack differ where too few were probed to tell, one standard deviation, % MC. Common practice, no source. */
const USUAL_SPREAD_PCT = 1.5;
/** Boards that happen to agree do not promise that all do, % MC. */
const LEAST_SPREAD_PCT = 0.3;
/** A probing that could save less than this is not worth the walk, % MC. */
const LEAST_WORTH_PCT = 0.02;
/** Boards named to probe next: a person's walk, not a list of the stack. */
const MOST_NAMED = 12;
const FEWEST_NAMED = 3;

/** What is known of one board of the stack. */
export interface BoardStanding {
  boardId: number;
  code: string;
  /** The call of its latest round with the reason that decided it; null where it was never probed. */
  latest: { call: Call; reason: Message } | null;
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
  /** Those of which nothing is known, then those to be probed again, then the most informative. */
  next: z.array(
    z.object({
      boardId: z.number().int(),
      code: z.string(),
      call: callSchema.nullable(),
      why: messageSchema,
    }),
  ),
});
export type StackPlan = z.infer<typeof stackPlanSchema>;

/**
 * Plans the next walk over a stack.
 *
 * The number to probe is that of a random sample from the finite stack (`sample-size.ts`). The boards named first are
 * those least sure, not random ones; if they are ready, the others are the likelier to be.
 *
 * @param boards      all boards of the stack, one or more
 * @param certainty   0.5 to 0.999
 * @throws RangeError without boards, or for a certainty outside its range
 */
export function planStack(boards: readonly BoardStanding[], endUse: EndUse, certainty: number): StackPlan {
  const probed = boards.filter(({ latest }) => latest !== null);
  const toKnowReady = boardsForNoneWet(boards.length, 1 / ONE_IN, certainty);
  const spreadPct = spreadOf(probed);
  return {
    boards: boards.length,
    probed: probed.length,
    certainty,
    toKnowReady,
    toKnowMean: {
      boards: boardsForMean(boards.length, spreadPct, MEAN_MARGIN_PCT, certainty),
      marginPct: MEAN_MARGIN_PCT,
      spreadPct,
    },
    next: nextOf(boards, endUse, Math.max(FEWEST_NAMED, toKnowReady - probed.length)),
  };
}

function spreadOf(probed: readonly BoardStanding[]): number {
  const averages = probed.flatMap(({ today }) => (today === null ? [] : [today.averagePct]));
  if (averages.length < 3) return USUAL_SPREAD_PCT;
  const center = mean(averages);
  const squares = averages.reduce((sum, value) => sum + (value - center) ** 2, 0);
  return Math.max(LEAST_SPREAD_PCT, Math.sqrt(squares / (averages.length - 1)));
}

/** Boards of which something is known today. */
type KnownBoard = BoardStanding & { today: NonNullable<BoardStanding['today']> };

function nextOf(boards: readonly BoardStanding[], endUse: EndUse, count: number): StackPlan['next'] {
  const known = boards.filter((board): board is KnownBoard => board.today !== null);
  const toProbeAgain = known.filter(({ latest }) => latest?.call === 'probe-again');
  const most = Math.min(MOST_NAMED, Math.max(count, toProbeAgain.length));
  const unknown = spread(
    boards.filter(({ today }) => today === null),
    most,
  );
  const others = new Map(
    known.filter((board) => !toProbeAgain.includes(board)).map((board) => [board.boardId, board]),
  );
  const ranked = probeNext(
    [...others.values()].map(({ boardId, today }) => ({ boardId, ...today })),
    endUse,
  )
    .filter(({ worthPct }) => worthPct >= LEAST_WORTH_PCT)
    .map(({ boardId }) => others.get(boardId)!);
  const named = (board: BoardStanding, why: Message) => ({
    boardId: board.boardId,
    code: board.code,
    call: board.latest?.call ?? null,
    why,
  });
  return [
    ...unknown.map((board) => named(board, message('stack-plan.next.nothing-known'))),
    ...toProbeAgain.map((board) => named(board, board.latest!.reason)),
    ...ranked.map((board) => named(board, whyProbe(board, endUse))),
  ].slice(0, most);
}

/** So many of a list, evenly from its first to its last: boards all through the stack. */
function spread<T>(list: readonly T[], most: number): T[] {
  const step = list.length / most;
  return step <= 1 ? [...list] : Array.from({ length: most }, (_, i) => list[Math.floor(i * step)] as T);
}

function whyProbe({ latest, today }: KnownBoard, { minPct, maxPct }: EndUse): Message {
  const { averagePct, standardUncertaintyPct } = today;
  const isUpper = Math.abs(averagePct - maxPct) <= Math.abs(averagePct - minPct);
  return message(latest === null ? 'stack-plan.next.never-probed' : 'stack-plan.next.near-limit', {
    averagePct,
    errorPoints: standardUncertaintyPct,
    limitPct: isUpper ? maxPct : minPct,
  });
}
