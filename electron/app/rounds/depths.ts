import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ShownDepth } from '../../../shared-core/contract/requests/rounds.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { message, thicknessOf } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import { inRound, type MovingReadings } from './moving-readings.ts';

/** Others of the round, of its depth and reached in the same way; apart from them those that a person gave another depth. */
function likeIt(context: QueryContext, reading: Reading): { like: Reading[]; given: Reading[] } {
  const { spot, roundId, id } = reading;
  const { readings } = context.yard();
  const known = readings.withGivenDepth(roundId);
  const all = inRound(
    context.yard(),
    roundId,
    (each) =>
      each.id !== id && !each.isDamaged && each.spot.depth === spot.depth && each.spot.face === spot.face,
  );
  const isGiven = (each: Reading) => known.has(each.id) && each.spot.depthMm !== spot.depthMm;
  return { like: all.filter((each) => !isGiven(each)), given: all.filter(isGiven) };
}

export const depthQueries = (context: QueryContext) =>
  ({
    'readings.givenDepths': ({ readingId }) => {
      const reading = orRefuse(context.yard().readings.get(readingId), 'reading');
      return { readings: likeIt(context, reading).given.length };
    },
  }) satisfies Partial<Queries>;

const shownOf = ({ spot: { depthMm }, depthFrom }: Reading): ShownDepth => ({ depthMm, depthFrom });

/** How deep readings truly were, as a person says, also long after they were taken. */
export function depthCommands(context: AppContext, moving: MovingReadings) {
  const boardOf = (boardId: number) => orRefuse(context.yard().boards.get(boardId), 'board');

  return {
    'readings.setDepth': ({ readingId, depthMm, shown, wholeRound, givenToo }) => {
      const { readings, amendments } = context.yard();
      const reading = orRefuse(readings.get(readingId), 'reading');
      const now = shownOf(reading);
      const isAsShown = now.depthMm === shown.depthMm && now.depthFrom === shown.depthFrom;
      orConflict(isAsShown ? null : now);
      const board = boardOf(reading.boardId);
      if (depthMm > board.thicknessMm) {
        throw new Refusal(message('refusal.deeper-than-board', { boardThickness: thicknessOf(board) }));
      }
      const { like, given } = likeIt(context, reading);
      const others = [...(wholeRound ? like : []), ...(wholeRound && givenToo ? given : [])];
      const all = [reading, ...others.filter(({ boardId }) => boardOf(boardId).thicknessMm >= depthMm)];
      for (const { id } of all) amendments.amendReading(id, 'depthMm', depthMm, context.now());
      return moving.amended(all);
    },

    'readings.undoDepth': ({ act }) => moving.undo(act),
  } satisfies Partial<Commands>;
}
