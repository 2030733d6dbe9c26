import { Refusal } from '../../../shared-core/contract/answer.ts';
import { message, thicknessOf } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Commands } from '../handlers.ts';
import type { MovingReadings } from './moving-readings.ts';

/** How deep readings truly were, as a person says, also long after they were taken. */
export function depthCommands(context: AppContext, moving: MovingReadings) {
  const boardOf = (boardId: number) => orRefuse(context.yard().boards.get(boardId), 'board');

  return {
    'readings.setDepth': ({ readingId, depthMm, wholeRound }) => {
      const { readings, amendments } = context.yard();
      const reading = orRefuse(readings.get(readingId), 'reading');
      const board = boardOf(reading.boardId);
      if (depthMm > board.thicknessMm) {
        throw new Refusal(message('refusal.deeper-than-board', { boardThickness: thicknessOf(board) }));
      }
      const { depth, face } = reading.spot;
      const all = wholeRound
        ? moving.inRound(
            reading.roundId,
            ({ spot, boardId, isDamaged }) =>
              !isDamaged &&
              spot.depth === depth &&
              spot.face === face &&
              boardOf(boardId).thicknessMm >= depthMm,
          )
        : [reading];
      for (const { id } of all) amendments.amendReading(id, 'depthMm', depthMm, context.now());
      return moving.amended(all);
    },

    'readings.undoDepth': ({ act }) => moving.undo(act),
  } satisfies Partial<Commands>;
}
