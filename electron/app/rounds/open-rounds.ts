import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ProbedBoard, RoundBoard, RoundFinding } from '../../../shared-core/contract/round.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { RoundView } from './round-view.ts';

interface OpenRound {
  id: number;
  stackId: number;
  /** Where its boards are; null: with the stack. */
  placeId: number | null;
  /** A person gave its day, so no live value is a reading of it. */
  isDated: boolean;
  /** Every board of the stack that is there, as it is walked. */
  boards: RoundBoard[];
  /** How many of them are still to be forecast; null where readings came since it was asked. */
  updating: number | null;
  /** What the stack's boards, its use, and the pins in use were when this was made, as JSON. */
  madeOf: string;
}

/** The rounds that windows have open, with their boards, so that a reading need not ask for a thousand of them. */
export function createOpenRounds(context: AppContext, view: RoundView, pins: () => Pins | null) {
  const rounds = new Map<number, OpenRound>();

  const stackAsIs = ({ stackId, placeId }: Pick<OpenRound, 'stackId' | 'placeId'>): string => {
    const { boards, stacks } = context.yard();
    return JSON.stringify([boards.toProbe(stackId, placeId), stacks.endUseId(stackId), pins()]);
  };

  function load(roundId: number): OpenRound {
    const { stackId, isDated, finishedAt, boards, updating } = view.state(roundId);
    // A finished one takes no more readings.
    if (finishedAt !== null) throw new Refusal(message('refusal.round-finished'));
    const { placeId } = orRefuse(context.yard().rounds.shown(roundId), 'round');
    const of = { stackId, placeId };
    const round = { id: roundId, ...of, isDated, boards, updating, madeOf: stackAsIs(of) };
    rounds.set(roundId, round);
    return round;
  }

  /** Whether they have any news of the round. */
  function takeInForecasts(round: OpenRound): boolean {
    // Nothing is said of a board that was not read.
    if (!round.boards.some(({ isRead }) => isRead)) return false;
    const { findings, updating } = view.found(round.id);
    const findingOf = ({ boardId }: RoundBoard): RoundFinding | null => findings.get(boardId) ?? null;
    const isNews =
      updating !== round.updating ||
      round.boards.some((board) => !isSameCall(findingOf(board), board.finding));
    round.boards = round.boards.map((board) => ({ ...board, finding: findingOf(board) }));
    round.updating = updating;
    return isNews;
  }

  /** @throws Refusal where the round is finished */
  const get = (roundId: number): OpenRound => rounds.get(roundId) ?? load(roundId);

  return {
    get,
    load,
    /** Undefined where no window has it open. */
    find: (roundId: number): OpenRound | undefined => rounds.get(roundId),
    /** @throws Refusal where the board is not in the round's stack, or not any more */
    board: (roundId: number, boardId: number): RoundBoard => {
      const board = get(roundId).boards.find((each) => each.boardId === boardId);
      if (board) return board;
      const { code } = orRefuse(context.yard().boards.get(boardId), 'board');
      throw new Refusal(message('refusal.board-left-stack', { boardCode: code }));
    },
    /** The board as it is now, with its readings; the list has it from then on. */
    show: (roundId: number, boardId: number, assessment?: Assessment): ProbedBoard => {
      const board = view.board(roundId, boardId, assessment);
      const { assessment: _, ...row } = board;
      const round = rounds.get(roundId);
      if (round) {
        const at = round.boards.findIndex((each) => each.boardId === boardId);
        if (at >= 0) round.boards[at] = row;
        round.updating = null;
      }
      return board;
    },
    /** Rounds whose stack has other boards now, or boards of other sizes, or another use, or which are read with other pins. */
    outdated: (): OpenRound[] => [...rounds.values()].filter((round) => round.madeOf !== stackAsIs(round)),
    /**
     * Forecasts were made, so boards that are read may have other calls; the stacks are as they were.
     * @returns rounds in which they have, or fewer wait for a forecast
     */
    renew: (): OpenRound[] => [...rounds.values()].filter(takeInForecasts),
    forget: (roundId: number): void => {
      rounds.delete(roundId);
    },
    leave: (): void => rounds.clear(),
  };
}

/** A forecast changes nothing else of a finding (`asJudged`). */
const isSameCall = (a: RoundFinding | null, b: RoundFinding | null): boolean =>
  a?.call === b?.call && JSON.stringify(a?.reason) === JSON.stringify(b?.reason);
export type OpenRounds = ReturnType<typeof createOpenRounds>;
