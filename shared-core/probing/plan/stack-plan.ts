/** What to do with a stack: its call from its boards, how many to probe, and which ones next. */
import { z } from 'zod';
import { callMarks } from '../../labels/call-mark.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Call, callSchema, type ReasonedCall, reasonedCallSchema } from '../calls/assessment.ts';
import { counted, pct, rangeOf } from '../calls/wording.ts';
import { boardsForMean, boardsForNoneWet, type ProbeNext, probeNext } from './sample-size.ts';

/** One in so many boards of a stack may be unfit without harm: they are found when it is worked. Common practice, no source. */
const ONE_IN = 10;
/** The stack's average is wanted to this, % MC. */
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
  /** The call of its latest round; null where it was never probed. */
  call: Call | null;
  /** Its average today with one standard uncertainty above 0, % MC; null where nothing is known of it. */
  today: { averagePct: number; standardUncertaintyPct: number } | null;
  /** By its forecast; null without one. */
  probabilityReady: number | null;
}

export const stackPlanSchema = z.object({
  call: reasonedCallSchema,
  boards: z.number().int(),
  probed: z.number().int(),
  /** 0.5 to 0.999. */
  certainty: z.number(),
  /** Boards to probe, all of them ready, to be so certain that at most one in ten is not. */
  toKnowReady: z.number().int(),
  /** Boards to probe to know the stack's average to a margin, with the spread between boards that it is for, % MC. */
  toKnowMean: z.object({ boards: z.number().int(), marginPct: z.number(), spreadPct: z.number() }),
  /** Those of which nothing is known, then those that their last round left in doubt, then the most informative. */
  next: z.array(
    z.object({
      boardId: z.number().int(),
      code: z.string(),
      call: callSchema.nullable(),
      why: z.string(),
    }),
  ),
});
export type StackPlan = z.infer<typeof stackPlanSchema>;

/**
 * Plans the next walk over a stack.
 *
 * The number to probe is that of a random sample from the finite stack (`sample-size.ts`). The boards named first are
 * those most in doubt, not random ones; if they are ready, the others are the likelier to be.
 *
 * @param boards      all boards of the stack, one or more
 * @param certainty   0.5 to 0.999
 * @throws RangeError without boards, or for a certainty outside its range
 */
export function planStack(boards: readonly BoardStanding[], endUse: EndUse, certainty: number): StackPlan {
  const probed = boards.filter(({ call }) => call !== null);
  const toKnowReady = boardsForNoneWet(boards.length, 1 / ONE_IN, certainty);
  const spreadPct = spreadOf(probed);
  return {
    call: callOf(boards, probed, endUse, certainty, toKnowReady),
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
  const mean = averages.reduce((sum, value) => sum + value, 0) / averages.length;
  const squares = averages.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.max(LEAST_SPREAD_PCT, Math.sqrt(squares / (averages.length - 1)));
}

const NOT_READY = ['keep-drying', 'bring-in', 'probe-again'] as const;

function callOf(
  boards: readonly BoardStanding[],
  probed: readonly BoardStanding[],
  endUse: EndUse,
  certainty: number,
  toKnowReady: number,
): ReasonedCall {
  const sure = `${Math.round(certainty * 1000) / 10} %`;
  const all = counted(boards.length, 'board');
  if (probed.length === 0) {
    return {
      call: 'probe-again',
      reasons: [
        `None of its ${all} was probed yet: if ${counted(toKnowReady, 'board')} read ready, at most one in ${ONE_IN} is not, with ${sure} certainty.`,
      ],
    };
  }
  const saying = (call: Call) => probed.filter((board) => board.call === call).length;
  const ready = saying('ready');
  const gone = probed.filter(
    ({ call, probabilityReady }) => call === 'ready' && (probabilityReady ?? 1) < 0.5,
  );
  if (ready === probed.length && gone.length > 0) {
    return {
      call: 'probe-again',
      reasons: [
        gone.length === 1
          ? '1 board was ready when last probed and, by the forecast, may no longer be: probe it.'
          : `${gone.length} of the ${ready} boards that were ready when last probed may no longer be, by the forecast: probe them.`,
      ],
    };
  }
  if (ready === probed.length) {
    const short = toKnowReady - probed.length;
    return short <= 0
      ? {
          call: 'ready',
          reasons: [
            `All ${probed.length} probed boards are ready: with ${sure} certainty no more than one in ${ONE_IN} of its ${all} is not.`,
          ],
        }
      : {
          call: 'probe-again',
          reasons: [
            `All ${probed.length} probed boards are ready, but of ${all} it takes ${toKnowReady} to be ${sure} certain that no more than one in ${ONE_IN} is not: probe ${short} more.`,
          ],
        };
  }
  const unready = probed.filter(({ call }) => call !== 'ready');
  const turned = unready.filter(({ probabilityReady }) => (probabilityReady ?? 0) >= 0.5);
  if (2 * turned.length > unready.length) {
    return {
      call: 'probe-again',
      reasons: [
        unready.length === 1
          ? '1 board was not ready when last probed and should be by now, by the forecast: probe it.'
          : `${turned.length} of the ${unready.length} boards that were not ready when last probed should be by now, by the forecast: probe them.`,
      ],
    };
  }
  const leading = NOT_READY.toSorted((a, b) => saying(b) - saying(a))[0] as Call;
  const reasons = [
    `${saying(leading)} of ${counted(probed.length, 'probed board')}: ${callMarks[leading].word.toLowerCase()}. ${averageOf(unready)}${rangeOf(endUse)} is wanted.`,
  ];
  if (ready > 0) reasons.push(`${counted(ready, 'board')} can be taken out: ready.`);
  const left = boards.length - probed.length;
  if (left > 0) reasons.push(`${counted(left, 'board')} not probed yet.`);
  return { call: leading, reasons };
}

function averageOf(boards: readonly BoardStanding[]): string {
  const averages = boards.flatMap(({ today }) => (today === null ? [] : [today.averagePct]));
  if (averages.length === 0) return '';
  const mean = averages.reduce((sum, value) => sum + value, 0) / averages.length;
  return `The boards not ready stand at about ${pct(mean)} today; `;
}

function nextOf(boards: readonly BoardStanding[], endUse: EndUse, wanted: number): StackPlan['next'] {
  const questionableOnes = boards.filter(({ today, call }) => today !== null && call === 'probe-again');
  const most = Math.min(MOST_NAMED, Math.max(wanted, questionableOnes.length));
  const unknown = boards.filter(({ today }) => today === null);
  const named = spread(unknown, most).map(({ boardId, code, call }) => ({
    boardId,
    code,
    call,
    why: 'Nothing is known of it yet.',
  }));
  for (const { boardId, code, call } of questionableOnes.slice(0, Math.max(0, most - named.length)))
    named.push({ boardId, code, call, why: 'Its last round ended in “probe again”; its page says why.' });
  const known = new Map(
    boards.flatMap((board) =>
      board.today === null || board.call === 'probe-again' ? [] : [[board.boardId, board]],
    ),
  );
  const ranked = probeNext(
    [...known.values()].flatMap(({ boardId, today }) => (today === null ? [] : [{ boardId, ...today }])),
    endUse,
  ).filter(({ worthPct }) => worthPct >= LEAST_WORTH_PCT);
  for (const each of ranked.slice(0, Math.max(0, most - named.length))) {
    const { boardId, code, call, today } = known.get(each.boardId) as BoardStanding;
    named.push({ boardId, code, call, why: whyProbe(each, call, today, endUse) });
  }
  return named;
}

/** So many of a list, evenly from its first to its last: boards all through the pile. */
function spread<T>(list: readonly T[], most: number): T[] {
  const step = list.length / most;
  return step <= 1 ? [...list] : Array.from({ length: most }, (_, i) => list[Math.floor(i * step)] as T);
}

function whyProbe(
  { wrongCall }: ProbeNext,
  call: Call | null,
  today: BoardStanding['today'],
  endUse: EndUse,
): string {
  const { averagePct, standardUncertaintyPct } = today as NonNullable<BoardStanding['today']>;
  const upper = Math.abs(averagePct - endUse.maxPct) <= Math.abs(averagePct - endUse.minPct);
  const limit = upper ? endUse.maxPct : endUse.minPct;
  return `${call === null ? 'Never probed; about' : 'About'} ${pct(averagePct)} today, give or take ${pct(standardUncertaintyPct)}, near the limit of ${pct(limit)}: ${Math.round(100 * wrongCall)} % chance that what it looks like is wrong.`;
}
