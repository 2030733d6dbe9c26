import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import { basisNow, type PlanBasis } from '../../../shared-core/probing/readings/plan-basis.ts';
import type { YardReader } from '../../store/yard.ts';
import { typedFrom } from '../meter/meters.ts';

/**
 * The pins in use: those of the meter that is connected, else of the one that values are typed from.
 * @param meterId  of the one that is connected; null for none
 */
export function pinsInUse(
  yard: Pick<YardReader, 'meters' | 'settings'>,
  meterId: number | null,
): Pins | null {
  const id = meterId ?? typedFrom(yard);
  return id === null ? null : (yard.meters.get(id)?.profile?.pins ?? null);
}

interface Board {
  roundId: number;
  boardId: number;
  thicknessMm: number;
  isRead: boolean;
}

/**
 * What the spots of a round's boards are planned by. A board that is read keeps its plan, and so does one that a window
 * has in hand: the meter may be another by then, but the pins are on their way into the board.
 * @param pins  those in use; null where unknown
 */
export function createPlanBases(pins: () => Pins | null) {
  const inHand = new Map<string, { roundId: number; boardId: number; pins: Pins | null }>();

  const pinsFor = ({ roundId, boardId }: Board): Pins | null => {
    const held = [...inHand.values()].find((each) => each.roundId === roundId && each.boardId === boardId);
    return held === undefined ? pins() : held.pins;
  };

  return {
    pins,
    /** A window aims at a board now; at none where it is null. */
    take: (window: string, at: Pick<Board, 'roundId' | 'boardId'> | null): void => {
      const held = inHand.get(window);
      if (at === null) inHand.delete(window);
      else if (held?.roundId !== at.roundId || held.boardId !== at.boardId)
        inHand.set(window, { roundId: at.roundId, boardId: at.boardId, pins: pins() });
    },
    of: ({ spotPlans }: Pick<YardReader, 'spotPlans'>, board: Board): PlanBasis =>
      basisNow(
        board,
        spotPlans.ofBoard(board.roundId, board.boardId),
        spotPlans.ofRound(board.roundId),
        pinsFor(board),
      ),
    /** For many boards of a round. */
    inRound: ({ spotPlans }: Pick<YardReader, 'spotPlans'>, roundId: number) => {
      const saved = spotPlans.ofBoards(roundId);
      const ofRound = spotPlans.ofRound(roundId);
      return (board: Board): PlanBasis =>
        basisNow(board, saved.get(board.boardId) ?? null, ofRound, pinsFor(board));
    },
  };
}
export type PlanBases = ReturnType<typeof createPlanBases>;
