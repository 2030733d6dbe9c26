import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import {
  basisNow,
  type CoreWay,
  type PlanBasis,
  usualCoreWay,
} from '../../../shared-core/probing/readings/plan-basis.ts';
import type { YardReader } from '../../store/yard.ts';
import { orRefuse } from '../context.ts';
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

type Yard = Pick<YardReader, 'spotPlans' | 'rounds' | 'stacks' | 'endUses'>;

/** The way to the core that a person chose for the whole round, else the one that is usual for its stack's use. */
function coreWayOf({ spotPlans, ...yard }: Yard, roundId: number): CoreWay | null {
  const chosen = spotPlans.ofRound(roundId);
  return chosen === undefined ? usualCoreWayOf(yard, roundId) : chosen;
}

/** How the core is reached of the wood of that round's stack where nobody chose a way. */
export function usualCoreWayOf(yard: Omit<Yard, 'spotPlans'>, roundId: number): CoreWay | null {
  const { stackId } = orRefuse(yard.rounds.get(roundId), 'round');
  const endUseId = orRefuse(yard.stacks.endUseId(stackId), 'stack');
  return usualCoreWay(orRefuse(yard.endUses.get(endUseId), 'use'));
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

  const pinsFor = ({ roundId, boardId }: Board, others: () => Pins | null): Pins | null => {
    const held = [...inHand.values()].find((each) => each.roundId === roundId && each.boardId === boardId);
    return held === undefined ? others() : held.pins;
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
    /** It was said how long the pins are that boards of the round are in hand with. */
    answered: (roundId: number, answer: Pins): void => {
      for (const [window, held] of inHand) {
        if (held.roundId === roundId && held.pins?.lengthMm == null)
          inHand.set(window, { ...held, pins: answer });
      }
    },
    of: (yard: Yard, board: Board): PlanBasis =>
      basisNow(
        board,
        yard.spotPlans.ofBoard(board.roundId, board.boardId),
        coreWayOf(yard, board.roundId),
        pinsFor(board, pins),
      ),
    /** For many boards of a round. */
    inRound: (yard: Yard, roundId: number) => {
      const saved = yard.spotPlans.ofBoards(roundId);
      const ofRound = coreWayOf(yard, roundId);
      // The file is asked for them once, not for each board.
      const now = pins();
      return (board: Board): PlanBasis =>
        basisNow(
          board,
          saved.get(board.boardId) ?? null,
          ofRound,
          pinsFor(board, () => now),
        );
    },
  };
}
export type PlanBases = ReturnType<typeof createPlanBases>;
