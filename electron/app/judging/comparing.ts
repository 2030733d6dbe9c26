import { boardTopics, type Topic } from '../../../shared-core/contract/topics.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { RULES_VERSION } from '../../../shared-core/probing/calls/rules-version.ts';
import type { BoardOfRound } from '../../../shared-core/probing/calls/suspicions-of-round.ts';
import type { RoundSuspicion } from '../../../shared-core/probing/suspicions/round-suspicions.ts';
import type { AppContext } from '../context.ts';
import type { OwnThread } from '../own-thread.ts';
import { createSignal } from '../signal.ts';
import type { Assessing } from './assessing.ts';
import { createBacklog } from './backlog.ts';
import type { Judging } from './judging.ts';

/** The thread that compares a round's boards (`round-worker.ts`): each board's suspicions, in their order. */
export type RoundThread = OwnThread<BoardOfRound[], RoundSuspicion[][]>;

/** Compares the boards of a round with each other in the background, and judges again those on which that has news. */
export function createComparing(
  context: AppContext,
  assessing: Assessing,
  judging: Judging,
  roundThread: RoundThread,
) {
  const judged = createSignal<{ roundId: number; boardId: number; assessment: Assessment }>();

  const rounds = createBacklog(context, async (roundId, yieldIfDue) => {
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
    if (!transaction(() => comparisons.settle(roundId, RULES_VERSION))) rounds.add([roundId]);
    return topics;
  });

  // Not before all are judged: each of them would have its round compared again.
  judging.caughtUp.follow(() => rounds.add(context.yard().comparisons.unsettled(RULES_VERSION)));

  return {
    compare: rounds.add,
    /** A board was judged again, because its round has news of it. */
    judged,
    leave: rounds.leave,
  };
}
export type Comparing = ReturnType<typeof createComparing>;
