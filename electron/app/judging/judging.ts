import type { RoundFinding } from '../../../shared-core/contract/round.ts';
import { boardTopics } from '../../../shared-core/contract/topics.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { RULES_VERSION } from '../../../shared-core/probing/calls/rules-version.ts';

import type { AppContext } from '../context.ts';
import { createSignal } from '../signal.ts';
import { type Assessing, MOST_JUDGED_AT_ONCE } from './assessing.ts';
import { createBacklog } from './backlog.ts';

/**
 * Saves what boards are found to be, and keeps that true when something it rests on changes.
 * @param noLongAct  until no act on many boards is under way, which may change them once more
 */
export function createJudging(context: AppContext, assessing: Assessing, noLongAct: () => Promise<void>) {
  const caughtUp = createSignal();

  /** Judges a board's readings of one round and saves what was found, for lists and labels. */
  function judge(boardId: number, roundId: number): Assessment {
    const { assessment, finding } = assessing.assessWithFinding(boardId, roundId);
    save(boardId, roundId, finding);
    judgeBelow(boardId);
    return assessment;
  }

  /**
   * The same for whom the disk must not keep from going on: what cannot be saved now is made again in the background.
   * @param show  is given what was found before that is saved: the readings are on disk, and nobody waits for it twice
   */
  function judgeNow(boardId: number, roundId: number, show: (assessment: Assessment) => void): void {
    const { assessment, finding } = assessing.assessWithFinding(boardId, roundId);
    try {
      show(assessment);
    } finally {
      context.onceAnswered(() => {
        try {
          save(boardId, roundId, finding);
          judgeBelow(boardId);
        } catch {
          boardsToJudge.add([boardId]);
        }
      });
    }
  }

  /** Its readings are also those of what was cut from it: the file marked these. */
  function judgeBelow(boardId: number): void {
    boardsToJudge.add(context.yard().findings.dueBelow(boardId));
  }

  function save(boardId: number, roundId: number, finding: RoundFinding | null): void {
    const { transaction, findings } = context.yard();
    // Whatever is written by itself waits for the disk.
    transaction(() => {
      if (finding === null) findings.drop(boardId, roundId);
      else findings.put(boardId, finding, RULES_VERSION);
    });
  }

  /** Boards to be judged again in all their rounds, after something that their findings rest on changed. */
  const boardsToJudge = createBacklog(
    context,
    async (boardId, yieldIfDue) => {
      await noLongAct();
      if (!(await yieldIfDue())) return [];
      const { readings, findings, transaction } = context.yard();
      transaction(() => {
        // One may be no round of it any more: where a cut was undone, say.
        const rounds = new Set([...readings.roundsOfBoard(boardId), ...findings.roundsDue(boardId)]);
        for (const roundId of rounds) judge(boardId, roundId);
      });
      return ['stacks', ...boardTopics([boardId])];
    },
    () => caughtUp.give(),
  );

  /**
   * Judges boards again in all their rounds, now or, where the app ends before that, when the yard is opened again. A
   * sample board's readings teach of the meter, so with one of these all boards are.
   */
  function judgeAgain(changedIds: readonly number[]): void {
    const { findings, samples } = context.yard();
    const sampleIds = new Set(samples.boardIds());
    const boardIds = changedIds.some((id) => sampleIds.has(id))
      ? [...new Set([...changedIds, ...findings.boardIds()])]
      : changedIds;
    judgeThese(boardIds);
  }

  /** The same where that teaches nothing of the meters. */
  function judgeThese(boardIds: readonly number[]): void {
    if (boardIds.length === 0) return;
    context.yard().findings.outdate(boardIds);
    context.afterwards(() => boardsToJudge.add(boardIds));
  }

  /** A round ended, or goes on after all: only one that is over teaches of the meter by its sample boards. */
  function judgeAfterRound(roundId: number): void {
    const { samples, readings } = context.yard();
    judgeAgain(samples.boardIds().filter((id) => readings.roundsOfBoard(id).includes(roundId)));
  }

  /** Rounds of which the boards still to be judged are, before others: somebody looks at them. */
  const roundsToJudge = createBacklog(context, async (roundId, yieldIfDue) => {
    for (const boardId of assessing.dueInRound(roundId)) {
      judge(boardId, roundId);
      if (!(await yieldIfDue())) return [];
    }
    hurried.delete(roundId);
    return ['stacks', 'boards', `round:${roundId}`];
  });
  /** Those that were asked for and not done: where judging fails, looking again must not begin it again. */
  const hurried = new Set<number>();

  /** Somebody looks at the round: what is still to be judged in it is judged first, where that takes long. */
  function hurry(roundId: number): void {
    const isLong = assessing.dueInRound(roundId).length > MOST_JUDGED_AT_ONCE;
    if (!isLong || !context.mayWrite() || hurried.has(roundId)) return;
    hurried.add(roundId);
    roundsToJudge.add([roundId]);
  }

  /** Judges what is still to be judged in a round, at once where that is little. */
  function judgeDue(roundId: number): void {
    const due = assessing.dueInRound(roundId);
    if (due.length > MOST_JUDGED_AT_ONCE) {
      roundsToJudge.add([roundId]);
      return;
    }
    try {
      context.yard().transaction(() => {
        for (const boardId of due) judge(boardId, roundId);
      });
    } catch {
      roundsToJudge.add([roundId]);
    }
  }

  return {
    judge,
    judgeNow,
    judgeAgain,
    judgeThese,
    judgeAfterRound,
    judgeDue,
    hurry,
    /** No board waits to be judged again. */
    caughtUp,
    /** Takes up what was left undone when the yard was last open, or was done by older rules. */
    takeUp: (): void => {
      const boardIds = context.yard().findings.boardsDue(RULES_VERSION);
      if (boardIds.length > 0) boardsToJudge.add(boardIds);
      else caughtUp.give();
    },
    leave: (): void => {
      boardsToJudge.leave();
      roundsToJudge.leave();
      hurried.clear();
    },
  };
}
export type Judging = ReturnType<typeof createJudging>;
