import { setImmediate } from 'node:timers/promises';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ShownDepth } from '../../../shared-core/contract/requests/rounds.ts';
import { reachesOtherFace } from '../../../shared-core/probing/readings/depth-read.ts';
import { isMovedAway } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { message, thicknessOf } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Slices } from '../slices.ts';
import { checkIsHere } from './moved-away.ts';
import { inRound, type MovingReadings } from './moving-readings.ts';

/** Others of the round, of its depth and reached in the same way; apart from them those that a person gave another depth. */
function* likeIt(context: QueryContext, reading: Reading): Slices<{ like: Reading[]; given: Reading[] }> {
  const { spot, roundId, id } = reading;
  const { readings } = context.yard();
  const known = readings.withGivenDepth(roundId);
  const all = yield* inRound(
    context.yard(),
    roundId,
    (each) =>
      each.id !== id &&
      !each.isDamaged &&
      !isMovedAway(each.excluded) &&
      each.spot.depth === spot.depth &&
      each.spot.face === spot.face,
  );
  const isGiven = (each: Reading) => known.has(each.id) && each.spot.depthMm !== spot.depthMm;
  return { like: all.filter((each) => !isGiven(each)), given: all.filter(isGiven) };
}

export const depthQueries = (context: QueryContext) =>
  ({
    'readings.givenDepths': async ({ readingId }) => {
      const walking = likeIt(context, orRefuse(context.yard().readings.get(readingId), 'reading'));
      let came = walking.next();
      for (; !came.done; came = walking.next()) await setImmediate();
      return { readings: came.value.given.length };
    },
  }) satisfies Partial<Queries>;

const shownOf = ({ spot: { depthMm }, depthFrom }: Reading): ShownDepth => ({ depthMm, depthFrom });

/** How deep readings truly were, as a person says, also long after they were taken. */
export function depthCommands(context: AppContext, moving: MovingReadings) {
  const boardOf = (boardId: number) => orRefuse(context.yard().boards.get(boardId), 'board');

  return {
    *'readings.setDepth'({ readingId, depthMm, shown, wholeRound, givenToo }) {
      const { readings, amendments } = context.yard();
      const reading = orRefuse(readings.get(readingId), 'reading');
      checkIsHere(context, reading);
      const now = shownOf(reading);
      const isAsShown = now.depthMm === shown.depthMm && now.depthFrom === shown.depthFrom;
      orConflict(isAsShown ? null : now);
      const board = boardOf(reading.boardId);
      if (reachesOtherFace(depthMm, board.thicknessMm)) {
        throw new Refusal(message('refusal.deeper-than-board', { boardThickness: thicknessOf(board) }));
      }
      const { like, given } = wholeRound ? yield* likeIt(context, reading) : { like: [], given: [] };
      const others = [...like, ...(givenToo ? given : [])];
      const all = [
        reading,
        ...others.filter(({ boardId }) => !reachesOtherFace(depthMm, boardOf(boardId).thicknessMm)),
      ];
      return yield* moving.amended(all, (id) =>
        amendments.amendReading(id, 'depthMm', depthMm, context.now()),
      );
    },
  } satisfies Partial<Commands>;
}
