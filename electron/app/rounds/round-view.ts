import type {
  LastRound,
  ProbedBoard,
  RoundBoard,
  RoundState,
  RoundSummary,
} from '../../../shared-core/contract/round.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { summarizeRound } from '../../../shared-core/probing/calls/round-summary.ts';
import type { BoardToProbe } from '../../store/board-table.ts';
import type { RoundRow } from '../../store/round-table.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Assessing } from '../judging/assessing.ts';
import { findingOf } from '../judging/finding.ts';

/** What the window shows of a round, from what is on disk. */
export function createRoundView(context: QueryContext, assessing: Assessing) {
  /**
   * One board with every reading of it.
   * @param judged what the board's readings were just found to amount to, if they were
   */
  function board(roundId: number, boardId: number, judged?: Assessment): ProbedBoard {
    const { boards, woodTemperatures } = context.yard();
    const assessment = judged ?? assessing.assess(boardId, roundId);
    const row = orRefuse(boards.get(boardId), 'board');
    const finding = findingOf(roundId, row, assessment);
    const own = woodTemperatures.ofBoard(roundId, boardId);
    return {
      ...shown(row, own, woodTemperatures.ofRound(roundId)),
      isRead: finding !== null,
      finding,
      assessment: assessment.readings.length > 0 ? assessment : null,
      lastRound: lastRound(roundId, boardId),
    };
  }

  function lastRound(roundId: number, boardId: number): LastRound | null {
    const before = context.yard().readings.roundBefore(boardId, roundId);
    if (before === undefined) return null;
    const found = assessing.finding(boardId, before);
    return found && { at: found.at, spotPcts: found.spotPcts };
  }

  /**
   * Every board of the stack, as it is walked; once the round is finished, also those that left after they were read,
   * and none that were added later.
   */
  function boards({ id: roundId, stackId, finishedAt, lastBoardId }: RoundRow): RoundBoard[] {
    const yard = context.yard();
    // A thousand boards in four questions, not in thousands: a person waits for this.
    const ofRound = yard.woodTemperatures.ofRound(roundId);
    const ownTemps = yard.woodTemperatures.ofBoards(roundId);
    const findings = assessing.findings(roundId);
    const here = yard.boards.toProbe(stackId, finishedAt === null ? null : (lastBoardId ?? 0));
    const read = finishedAt === null ? [] : yard.boards.readInRound(roundId);
    const all = new Map([...here, ...read].map((each) => [each.id, each]));
    return [...all.values()].map((each) => ({
      ...shown(each, ownTemps.get(each.id), ofRound),
      isRead: findings.has(each.id),
      finding: findings.get(each.id) ?? null,
    }));
  }

  function state(roundId: number): Omit<RoundState, 'aim' | 'probed'> {
    const yard = context.yard();
    const round = orRefuse(yard.rounds.get(roundId), 'round');
    const stack = orRefuse(yard.stacks.get(round.stackId), 'stack');
    const all = boards(round);
    return {
      id: round.id,
      version: round.version,
      stackId: stack.id,
      stackName: stack.name,
      placeName: stack.placeName,
      endUseName: stack.endUseName,
      startedAt: round.startedAt,
      isDated: round.datedBy === 'day',
      finishedAt: round.finishedAt,
      woodTempC: yard.woodTemperatures.ofRound(roundId),
      boards: all,
      summary: summaryOf(all),
    };
  }

  return { board, state };
}
export type RoundView = ReturnType<typeof createRoundView>;

export const summaryOf = (boards: readonly RoundBoard[]): RoundSummary =>
  summarizeRound(boards.map(({ isRead, finding }) => (isRead ? (finding?.call ?? 'being-judged') : null)));

/** @param own the board's own wood temperature in this round; undefined where nothing was said of it alone */
function shown(
  { id, code, speciesName, thicknessMm, thicknessQuarters, lengthMm }: BoardToProbe,
  own: number | null | undefined,
  ofRound: number | null,
): Omit<RoundBoard, 'isRead' | 'finding'> {
  return {
    boardId: id,
    code,
    speciesName,
    thicknessMm,
    thicknessQuarters,
    lengthMm,
    woodTempC: own === undefined ? ofRound : own,
    ownTemp: own !== undefined,
  };
}
