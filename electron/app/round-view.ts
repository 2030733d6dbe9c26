import type { RoundBoard, RoundState, RoundSummary } from '../../shared-core/contract/round.ts';
import type { Assessment } from '../../shared-core/probing/assessment.ts';
import { summariseRound } from '../../shared-core/probing/round-summary.ts';
import { planSpots } from '../../shared-core/probing/spots.ts';
import { type AppContext, wanted } from './context.ts';
import type { Judging } from './judging.ts';

/** What the window shows of a round, from what is on disk. */
export function createRoundView(context: AppContext, judging: Judging) {
  /** @param judged what the board's readings were just found to amount to, if they were */
  function board(roundId: number, boardId: number, judged?: Assessment): RoundBoard {
    const yard = context.yard();
    const row = wanted(yard.boards.get(boardId), 'board');
    const { plan, remark } = planSpots({ lengthMm: row.lengthMm, thicknessMm: row.thicknessMm });
    const own = yard.rounds.temperatureOfBoard(roundId, boardId);
    return {
      boardId,
      code: row.code,
      woodName: row.woodName,
      thicknessMm: row.thicknessMm,
      lengthMm: row.lengthMm,
      planRemark: remark,
      plan,
      woodTempC: own === undefined ? yard.rounds.temperature(roundId) : own,
      ownTemp: own !== undefined,
      assessment:
        yard.rounds.readings(boardId, roundId).length === 0
          ? null
          : (judged ?? judging.assess(boardId, roundId)),
    };
  }

  function summary(boards: readonly { assessment: Assessment | null }[]): RoundSummary {
    return summariseRound(boards.map((each) => each.assessment));
  }

  function state(roundId: number): Omit<RoundState, 'aim'> {
    const yard = context.yard();
    const round = wanted(yard.rounds.get(roundId), 'round');
    const stack = wanted(yard.stacks.get(round.stackId), 'stack');
    const boards = yard.boards.idsOfStack(stack.id).map((boardId) => board(roundId, boardId));
    return {
      id: round.id,
      stackId: stack.id,
      stackName: stack.name,
      placeName: stack.placeName,
      useName: stack.useName,
      startedAt: round.startedAt,
      finishedAt: round.finishedAt,
      woodTempC: yard.rounds.temperature(roundId),
      boards,
      summary: summary(boards),
    };
  }

  return { board, state, summary };
}
export type RoundView = ReturnType<typeof createRoundView>;

/** The first spot at or after `from`, going round, that has no reading which counts; null when all have one. */
export function nextSpot(board: RoundBoard, from: number): number | null {
  const filled = new Set(
    board.assessment?.readings.filter((reading) => reading.counts).map((reading) => reading.spotIndex),
  );
  const order = board.plan.map((_, index) => (from + index) % board.plan.length);
  return order.find((index) => !filled.has(index)) ?? null;
}
