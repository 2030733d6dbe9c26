import type { ProbedBoard } from '../../../shared-core/contract/round.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import type { AppContext } from '../context.ts';
import type { Aims } from './aims.ts';
import type { OpenRounds } from './open-rounds.ts';
import { summaryOf } from './round-view.ts';

/** Tells the windows that have a round open what happened in it, each with its own aim. */
export function createRoundTelling(context: AppContext, aims: Aims, openRounds: OpenRounds) {
  function tellWindow(window: string, board: ProbedBoard, savedReadingId: number | null): void {
    const aim = aims.of(window);
    if (aim === null) return;
    const { roundId, boardId, spotIndex } = aim;
    context.emitTo(window, 'round.changed', {
      roundId,
      aim: { boardId, spotIndex },
      board,
      summary: summaryOf(openRounds.get(roundId).boards),
      savedReadingId,
    });
  }
  return {
    tellWindow,
    /** @param saved the reading that was just saved, which only the window that saved it beeps at */
    tell: (
      roundId: number,
      board: ProbedBoard,
      saved: { window: string; readingId: number } | null = null,
    ): void => {
      for (const [window] of aims.inRound(roundId)) {
        tellWindow(window, board, saved?.window === window ? saved.readingId : null);
      }
    },
    /** More changed than one board: the window asks for the round again. */
    tellOutdated: (window: string, roundId: number, why: Message | null): void =>
      context.emitTo(window, 'round.outdated', { roundId, why }),
  };
}
export type RoundTelling = ReturnType<typeof createRoundTelling>;
