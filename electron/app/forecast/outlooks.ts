import type { Topic } from '../../../shared-core/contract/topics.ts';
import { outlookOf } from '../../../shared-core/probing/calls/outlook.ts';
import { RULES_VERSION } from '../../../shared-core/probing/calls/rules-version.ts';
import type { DueOutlook } from '../../store/outlook-table.ts';
import { readingMeasured } from '../air/measured-places.ts';
import type { AppContext } from '../context.ts';
import { isDisturbance } from '../fault-message.ts';
import type { Assessing } from '../judging/assessing.ts';
import { createBacklog, MOST_AT_A_TIME_MS } from '../judging/backlog.ts';
import type { Judging } from '../judging/judging.ts';
import type { Signal } from '../signal.ts';
import { boardToForecast, type PreparedBoard } from './board-to-forecast.ts';
import { coreHistoryOf, makeCoreHistory, needsCoreHistory, newestRoundOf } from './core-histories.ts';
import { endOfDay } from './end-of-day.ts';
import { type BoardToForecast, type Forecaster, MOST_SIBLINGS } from './forecast-messages.ts';
import { dayOf, judgementOf } from './judging-board.ts';
import { learnerOfPlaces, learnOfPlaces, restatePlaces } from './learned-of-places.ts';

/** Forecast at a time. */
const AT_A_TIME = 16;
/** Windows ask again for their lists no more often than this while many forecasts are made. */
const TELL_EVERY_MS = 1000;
/** While a person never pauses, forecasts wait so many times as long, and no longer: half a minute. */
const MOST_WAITS = 15;
/** Of a yard larger than this, the oldest forecasts are made again each day: the thread works some 40 a second. */
const MOST_A_DAY = 5000;

/**
 * Saves what the forecast says of each board, for lists, in the background. The file marks which boards are due; see
 * `store/migrations/0011-outlooks.ts`.
 *
 * @param afterMs how long nothing may have changed before work begins: a person who probes changes a stack every few seconds.
 *                After `MOST_WAITS` times that it begins anyway, in the gaps
 */
export function createOutlooks(
  context: AppContext,
  assessing: Assessing,
  judging: Judging,
  forecaster: Forecaster,
  changes: Signal<readonly Topic[]>,
  afterMs: number,
) {
  let waiting: NodeJS.Timeout | undefined;
  /** When the first change came after work last began; null where none did. */
  let changedMs: number | null = null;
  /** Marking those of another day as due. */
  const aging = {};
  let toldMs = 0;

  const stacks = createBacklog(context, async (stackId, yieldIfDue) => {
    for (const _ of readingMeasured(context.yard(), context.now())) if (!(await yieldIfDue())) return [];
    const { transaction } = context.yard();
    if (transaction(() => restatePlaces(context.yard(), context.now()))) {
      stacks.add(context.yard().outlooks.stacksDue());
      context.changed(['outlooks']);
    }
    // First, because forecasts start from rounds as they are judged.
    for (const { boardId } of context.yard().outlooks.dueInStack(stackId)) {
      await makeCoreHistory(context, assessing, judging, forecaster, boardId);
      if (!(await yieldIfDue())) return [];
    }
    const now = endOfDay(context.now());
    const withLearned = learnerOfPlaces(context.yard(), now);
    const known = new Map<number, PreparedBoard | null>();
    const prepared = (boardId: number): PreparedBoard | null => {
      const before = known.get(boardId);
      if (before !== undefined) return before;
      const row = context.yard().boards.get(boardId);
      const made = row && boardToForecast({ ...context, now: () => now }, assessing, row);
      const board = made?.ok ? { ...made.value, board: withLearned(made.value.board) } : null;
      known.set(boardId, board);
      return board;
    };
    const due = context.yard().outlooks.dueInStack(stackId);
    for (let start = 0; start < due.length; start += AT_A_TIME) {
      const some = due.slice(start, start + AT_A_TIME);
      const boards = new Set<BoardToForecast>();
      for (const { boardId } of some) {
        for (const id of [boardId, ...context.yard().boards.probedSiblings(boardId, MOST_SIBLINGS)]) {
          const board = prepared(id)?.board;
          if (board) boards.add(board);
          if (!(await yieldIfDue())) return [];
        }
      }
      const asked = some.filter(({ boardId }) => prepared(boardId)).map(({ boardId }) => boardId);
      const answers = asked.length > 0 ? await forecaster.ask({ boards: [...boards], boardIds: asked }) : [];
      // A log may have been imported meanwhile.
      for (const _ of readingMeasured(context.yard(), now)) if (!(await yieldIfDue())) return [];
      if (!(await yieldIfDue())) return [];
      const made = new Map(answers.map(({ boardId, made }) => [boardId, made]));
      for (let left: readonly DueOutlook[] = some; left.length > 0; ) {
        left = save(left, prepared, made, now);
        if (!(await yieldIfDue())) return [];
      }
      if (performance.now() - toldMs >= TELL_EVERY_MS) {
        toldMs = performance.now();
        context.changed(['outlooks']);
      }
    }
    return ['outlooks'];
  });

  /** Saves as many as there is time for, one at least. @returns the others */
  function save(
    due: readonly DueOutlook[],
    prepared: (boardId: number) => PreparedBoard | null,
    made: ReadonlyMap<number, Awaited<ReturnType<Forecaster['ask']>>[number]['made']>,
    now: string,
  ): readonly DueOutlook[] {
    const yard = context.yard();
    const { boards, outlooks, coreHistories, transaction } = yard;
    const beganMs = performance.now();
    const { left, isLearned } = transaction(() => {
      for (const [done, each] of due.entries()) {
        if (done > 0 && performance.now() - beganMs >= MOST_AT_A_TIME_MS)
          return { left: due.slice(done), isLearned: false };
        const answer = made.get(each.boardId);
        const board = answer?.ok ? boards.get(each.boardId) : undefined;
        const outlook =
          answer?.ok && board
            ? outlookOf(
                answer.value.forecast,
                judgementOf(context, assessing, board, answer.value, Date.parse(now)),
              )
            : null;
        const basis = prepared(each.boardId);
        // Nothing is learned of a place from questionable readings, nor where the place is assumed, nor again from what the
        // board it was cut from has shown.
        const isTeaching =
          answer?.ok &&
          basis !== null &&
          !basis.isByQuestionable &&
          !basis.isPlaceAssumed &&
          yard.readings.ownRounds(each.boardId).length > 0;
        const told = isTeaching ? answer.value.told : null;
        if (!outlooks.put(each, outlook, told, dayOf(now), RULES_VERSION)) continue;
        const { boardId } = each;
        const row = board ?? boards.get(boardId);
        if (row === undefined || !needsCoreHistory(row)) continue;
        const afterRoundId = newestRoundOf(yard, boardId)?.roundId ?? null;
        const forecast = answer?.ok ? answer.value.forecast : null;
        coreHistories.put({ boardId, afterRoundId }, coreHistoryOf(basis, forecast));
      }
      // Only once all boards have told, so that they are made again once.
      return { left: [], isLearned: outlooks.stacksDue().length === 0 && learnOfPlaces(yard, now) };
    });
    // A place came out differently: its boards are due again.
    if (isLearned) stacks.add(outlooks.stacksDue());
    return left;
  }

  function takeUp(): void {
    waiting = undefined;
    changedMs = null;
    if (!context.mayWrite()) return;
    try {
      const { outlooks } = context.yard();
      outlooks.age(dayOf(context.now()), RULES_VERSION, MOST_A_DAY);
      stacks.add(outlooks.stacksDue());
      context.delays.end(aging);
    } catch (error) {
      if (isDisturbance(error)) {
        context.delays.begin(aging, error);
        takeUpAfter(context.retryAfterMs);
      } else context.reportFault(error);
    }
  }

  function takeUpAfter(ms: number): void {
    clearTimeout(waiting);
    waiting = setTimeout(takeUp, ms);
    waiting.unref();
  }
  function takeUpSoon(): void {
    const nowMs = context.monotonicMs();
    changedMs ??= nowMs;
    takeUpAfter(Math.min(afterMs, Math.max(0, changedMs + MOST_WAITS * afterMs - nowMs)));
  }

  changes.follow((topics) => {
    if (!topics.includes('outlooks')) takeUpSoon();
  });

  return {
    takeUp: takeUpSoon,
    leave: (): void => {
      clearTimeout(waiting);
      changedMs = null;
      context.delays.end(aging);
      stacks.leave();
    },
  };
}
