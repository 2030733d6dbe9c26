import type { RoundBoard, RoundState, RoundSummary } from '../../shared-core/contract/round.ts';
import type { Assessment } from '../../shared-core/probing/assessment.ts';
import { summariseRound } from '../../shared-core/probing/round-summary.ts';
import { planSpots } from '../../shared-core/probing/spots.ts';
import type { BoardToProbe } from '../store/board-table.ts';
import { type AppContext, wanted } from './context.ts';
import type { Judging } from './judging.ts';

/** What the window shows of a round, from what is on disk. */
export function createRoundView(context: AppContext, judging: Judging) {
  /** @param judged what the board's readings were just found to amount to, if they were */
  function board(roundId: number, boardId: number, judged?: Assessment): RoundBoard {
    const { boards, rounds } = context.yard();
    return shown(
      wanted(boards.get(boardId), 'board'),
      rounds.temperatureOfBoard(roundId, boardId),
      rounds.temperature(roundId),
      rounds.readings(boardId, roundId).length === 0 ? null : (judged ?? judging.assess(boardId, roundId)),
    );
  }

  function summary(boards: readonly { assessment: Assessment | null }[]): RoundSummary {
    return summariseRound(boards.map((each) => each.assessment));
  }

  function state(roundId: number): Omit<RoundState, 'aim'> {
    const yard = context.yard();
    const round = wanted(yard.rounds.get(roundId), 'round');
    const stack = wanted(yard.stacks.get(round.stackId), 'stack');
    // A thousand boards in four questions, not in thousands: a person waits for this.
    const woodTempC = yard.rounds.temperature(roundId);
    const ownTemps = yard.rounds.temperaturesOfBoards(roundId);
    const read = new Set(yard.rounds.boardsWalked(roundId));
    const boards = yard.boards
      .toProbe(stack.id)
      .map((each) =>
        shown(
          each,
          ownTemps.get(each.id),
          woodTempC,
          read.has(each.id) ? judging.assess(each.id, roundId) : null,
        ),
      );
    return {
      id: round.id,
      stackId: stack.id,
      stackName: stack.name,
      placeName: stack.placeName,
      useName: stack.useName,
      startedAt: round.startedAt,
      finishedAt: round.finishedAt,
      woodTempC,
      boards,
      summary: summary(boards),
    };
  }

  return { board, state, summary };
}
export type RoundView = ReturnType<typeof createRoundView>;

/** @param own the board's own wood temperature in this round; undefined where nothing was said of it alone */
function shown(
  { id, code, woodName, thicknessMm, lengthMm }: BoardToProbe,
  own: number | null | undefined,
  ofRound: number | null,
  assessment: Assessment | null,
): RoundBoard {
  const { plan, remark } = planSpots({ lengthMm, thicknessMm });
  return {
    boardId: id,
    code,
    woodName,
    thicknessMm,
    lengthMm,
    planRemark: remark,
    plan,
    woodTempC: own === undefined ? ofRound : own,
    ownTemp: own !== undefined,
    assessment,
  };
}

/** The first spot at or after `from`, going round, that has no reading which counts; null when all have one. */
export function nextSpot(board: RoundBoard, from: number): number | null {
  const filled = new Set(
    board.assessment?.readings.filter((reading) => reading.counts).map((reading) => reading.spotIndex),
  );
  const order = board.plan.map((_, index) => (from + index) % board.plan.length);
  return order.find((index) => !filled.has(index)) ?? null;
}
