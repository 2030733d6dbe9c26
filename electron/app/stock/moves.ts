import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Move } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { inSlices } from '../slices.ts';
import { checkMove, checkSawnBefore, instantOfMove, letStacksFollow } from './moving.ts';

/** The moves that one act made and that are still alike: to the same place, on the same day. This one comes first. */
function alike({ moves }: Pick<YardReader, 'moves'>, move: Move): Move[] {
  const day = new Date(move.since).toDateString();
  const others = moves
    .addedWith(move.id)
    .filter(
      ({ id, placeId, since }) =>
        id !== move.id && placeId === move.placeId && new Date(since).toDateString() === day,
    );
  return [move, ...others];
}

export const moveQueries = (context: QueryContext) =>
  ({
    'moves.together': ({ id }) => {
      const move = orRefuse(context.yard().moves.get(id), 'move');
      return { boards: alike(context.yard(), move).length };
    },
  }) satisfies Partial<Queries>;

/** Corrects where boards have been. What was found of them is judged again, and their stacks follow. */
export function moveCommands(context: AppContext, judging: Judging) {
  const get = (id: number): Move => orRefuse(context.yard().moves.get(id), 'move');

  /** @throws Conflict where it is another now than the window showed */
  function asShown(id: number, basedOn: number): Move {
    const move = get(id);
    if (move.version !== basedOn) orConflict(move);
    return move;
  }

  function done(moved: readonly Move[]): void {
    const { boards } = context.yard();
    const boardIds = moved.map(({ boardId }) => boardId);
    judging.judgeAgain(boardIds);
    letStacksFollow(context, new Set(boards.versionsOf(boardIds).map(({ stackId }) => stackId)));
  }

  return {
    'moves.edit': function* ({ id, basedOn, changed: { placeId, when }, together, work: _, ...answers }) {
      const { moves } = context.yard();
      const move = asShown(id, basedOn);
      yield* inSlices(together ? alike(context.yard(), move) : [move], (slice) => {
        checkMove(context, { placeId: placeId ?? move.placeId, since: (when ?? move).since });
        for (const each of slice) {
          const dated = when && { ...when, ...answers };
          if (dated) checkSawnBefore(context, [each.boardId], dated);
          const changed = {
            ...(placeId !== undefined && { placeId }),
            ...(dated && instantOfMove(context, each.boardId, dated, each)),
          };
          orConflict(moves.edit({ id: each.id, basedOn: each.version, changed }));
        }
        done(slice);
      });
      return get(id);
    },

    'moves.delete': function* ({ id, basedOn, together }) {
      const { acts, boards, moves } = context.yard();
      const move = asShown(id, basedOn);
      const all = together ? alike(context.yard(), move) : [move];
      yield* inSlices(all, (slice) => {
        for (const { id, boardId } of slice) {
          if (moves.ofBoard(boardId)[0]?.id === id) {
            const { code: boardCode } = orRefuse(boards.get(boardId), 'board');
            throw new Refusal(message('refusal.first-move', { boardCode }));
          }
          moves.remove(id);
        }
        done(slice);
      });
      return { act: acts.now(), boardIds: all.map(({ boardId }) => boardId) };
    },
  } satisfies Partial<Commands>;
}
