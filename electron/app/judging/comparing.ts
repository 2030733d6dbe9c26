import { boardTopics, type Topic } from '../../../shared-core/contract/topics.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { RULES_VERSION } from '../../../shared-core/probing/calls/rules-version.ts';
import type { BoardOfRound } from '../../../shared-core/probing/calls/suspicions-of-round.ts';
import type { RoundSuspicion } from '../../../shared-core/probing/suspicions/round-suspicions.ts';
import type { AppContext } from '../context.ts';
import type { OwnThread } from '../own-thread.ts';
import { createSignal } from '../signal.ts';
import type { Assessing } from './assessing.ts';
import { createBacklog, type YieldIfDue } from './backlog.ts';
import type { Judging } from './judging.ts';

/** The thread that compares a round's boards (`round-worker.ts`): each board's suspicions, in their order. */
export type RoundThread = OwnThread<BoardOfRound[], RoundSuspicion[][]>;

/** Rounds that are probed are compared for at most a quarter of the time. */
const REST_FOR_TIMES = 3;

/** Compares the boards of a round with each other in the background, and judges again those on which that has news. */
export function createComparing(
  context: AppContext,
  assessing: Assessing,
  judging: Judging,
  roundThread: RoundThread,
) {
  const judged = createSignal<{ roundId: number; boardId: number; assessment: Assessment }>();

  /** Rounds to be compared once the pause is over. */
  const resting = new Set<number>();
  /** A comparison is under way, or the pause after it. */
  let isBusy = false;
  let rest: NodeJS.Timeout | undefined;

  const rounds = createBacklog(context, async (roundId, yieldIfDue) => {
    const beganMs = performance.now();
    isBusy = true;
    clearTimeout(rest);
    try {
      return await compareNow(roundId, yieldIfDue);
    } finally {
      rest = setTimeout(endRest, REST_FOR_TIMES * (performance.now() - beganMs)).unref();
    }
  });

  async function compareNow(roundId: number, yieldIfDue: YieldIfDue): Promise<Topic[]> {
    const { comparisons, readings, transaction } = context.yard();
    // In transactions, which notice a file or WAL that is not as it was left.
    transaction(() => comparisons.begin(roundId));
    const walked = readings.boardsCompared(roundId);
    const given: BoardOfRound[] = [];
    for (const boardId of walked) {
      given.push(assessing.boardOfRound(boardId, roundId));
      if (!(await yieldIfDue())) return [];
    }
    const found = await roundThread.ask(given);
    if (!(await yieldIfDue())) return [];
    const suspicions = new Map(
      walked
        .map((boardId, index) => [boardId, found[index] ?? []] as const)
        .filter(([, of]) => of.length > 0),
    );
    const topics: Topic[] = [`round:${roundId}`, 'stacks'];
    for (const boardId of new Set([...comparisons.questionableBoards(roundId), ...suspicions.keys()])) {
      // Both or neither: a board that has the suspicions already is taken as judged with them.
      const assessment = transaction(() =>
        comparisons.put(roundId, boardId, suspicions.get(boardId) ?? [])
          ? judging.judge(boardId, roundId)
          : null,
      );
      if (assessment) {
        judged.give({ roundId, boardId, assessment });
        topics.push(...boardTopics([boardId]));
      }
      if (!(await yieldIfDue())) return [];
    }
    if (!transaction(() => comparisons.settle(roundId, RULES_VERSION))) compareSoon(roundId);
    return topics;
  }

  /**
   * Compares a round that may soon change again. All of its boards are compared each time, so that a large round whose
   * boards are done one after the other would leave the computer no time for anything else.
   */
  function compareSoon(roundId: number): void {
    resting.add(roundId);
    if (!isBusy) endRest();
  }

  function endRest(): void {
    isBusy = false;
    rounds.add([...resting]);
    resting.clear();
  }

  // Not before all are judged: each of them would have its round compared again.
  judging.caughtUp.follow(() => rounds.add(context.yard().comparisons.unsettled(RULES_VERSION)));

  return {
    compare: rounds.add,
    compareSoon,
    /** A board was judged again, because its round has news of it. */
    judged,
    leave: (): void => {
      clearTimeout(rest);
      isBusy = false;
      resting.clear();
      rounds.leave();
    },
  };
}
export type Comparing = ReturnType<typeof createComparing>;
