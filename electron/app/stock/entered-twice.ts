import { Refusal } from '../../../shared-core/contract/answer.ts';
import {
  movesOf,
  noteOf,
  partsTaken,
  type TwiceRecord,
  type WhichRecords,
} from '../../../shared-core/contract/entered-twice.ts';
import { type BoardRow, joinedNote, noteSchema } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { checkBoardDays } from './board-days.ts';
import { checkWhole } from './cutting.ts';
import { letStacksFollow } from './moving.ts';

export function enteredTwiceQueries(context: QueryContext) {
  function recordOf(id: number): TwiceRecord {
    const { boards, endUses, moves, projects, readings, stacks } = context.yard();
    const board = orRefuse(boards.get(id), 'board');
    return {
      board,
      moves: moves.ofBoard(id),
      endUseName: orRefuse(endUses.get(orRefuse(stacks.endUseId(board.stackId), 'stack')), 'use').name,
      projectName: projects.ofBoard(id)?.name ?? null,
      readings: readings.ownRounds(id).flatMap((roundId) => readings.takenOn(id, roundId)).length,
    };
  }

  return {
    'boards.alike': ({ boardId, search, limit }) => {
      const { boards, likeBoards } = context.yard();
      orRefuse(boards.get(boardId), 'board');
      return likeBoards.of(boardId, search, limit).flatMap((id) => boards.get(id) ?? []);
    },
    'boards.twice': ({ id, otherId }) => ({ own: recordOf(id), other: recordOf(otherId) }),
  } satisfies Partial<Queries>;
}

/** Boards that were entered twice become one. Readings stay where they were saved: `lineage` makes them those of both. */
export function enteredTwiceCommands(context: AppContext, judging: Judging) {
  /** @throws Refusal where one was cut from the other, or was merged into it already */
  function checkTwoRecords(one: BoardRow, two: BoardRow): void {
    const { origins } = context.yard();
    for (const [board, piece] of [[one, two] as const, [two, one] as const]) {
      if (!origins.below(board.id).includes(piece.id)) continue;
      if (origins.kept(board.id) === origins.kept(piece.id)) {
        const codes = { boardCode: board.code, intoCode: piece.code };
        throw new Refusal(message('refusal.merged-already', codes));
      }
      throw new Refusal(
        message('refusal.merged-with-piece', { boardCode: board.code, pieceCode: piece.code }),
      );
    }
  }

  /** @throws Refusal where both are too long together */
  function mergedNote(which: WhichRecords, own: string, other: string): string {
    const note = noteOf(which, own, other);
    if (noteSchema.safeParse(note).success) return note;
    throw new Refusal(message('refusal.merged-note-too-long'));
  }

  /** Leaves the board with the moves that count. */
  function mergeMoves(which: WhichRecords, boardId: number, otherId: number): void {
    const { moves } = context.yard();
    const own = moves.ofBoard(boardId);
    const counting = movesOf(which, own, moves.ofBoard(otherId));
    // First those that come, so that it is never without one.
    for (const move of counting) if (move.boardId !== boardId) moves.add({ ...move, boardId });
    for (const move of own) if (!counting.includes(move)) moves.remove(move.id);
  }

  /** Planned once is enough, with the notes of both; where these are too long for one, both stay. */
  function mergePlannedMoves(boardId: number, otherId: number): void {
    const { plannedMoves } = context.yard();
    for (const { id, version, placeId, plannedOn, note: otherNote } of plannedMoves.ofBoard(otherId)) {
      const same = plannedMoves
        .ofBoard(boardId)
        .find((each) => each.placeId === placeId && each.plannedOn === plannedOn);
      const note = same?.note === otherNote ? otherNote : joinedNote(same?.note ?? '', otherNote);
      if (same === undefined || note === null) {
        orConflict(plannedMoves.edit({ id, basedOn: version, changed: { boardId } }));
        continue;
      }
      if (note !== same.note)
        orConflict(plannedMoves.edit({ id: same.id, basedOn: same.version, changed: { note } }));
      plannedMoves.remove(id, version);
    }
  }

  return {
    'boards.merge': ({ id, basedOn, otherId, otherBasedOn, taken, ...which }) => {
      const { boards, confirmedSpecies, origins, projects } = context.yard();
      const own = orRefuse(boards.get(id), 'board');
      const other = orRefuse(boards.get(otherId), 'board');
      checkTwoRecords(own, other);
      checkWhole(context, own);
      checkWhole(context, other);
      if (other.version !== otherBasedOn) orConflict(other);

      const changed = { ...partsTaken(other, taken), note: mergedNote(which.note, own.note, other.note) };
      orConflict(boards.edit({ id, basedOn, changed }));
      origins.add({ childId: id, parentId: otherId, how: 'merged', at: context.now() });
      boards.archive([otherId], context.now(), { code: 'merged', note: '' });
      const merged = orRefuse(boards.get(id), 'board');
      checkBoardDays(context, [id], merged);
      if (isConfirmed(otherId) && !isConfirmed(id) && merged.speciesId === other.speciesId)
        confirmedSpecies.confirm(id, context.now());

      mergeMoves(which.moves, id, otherId);
      mergePlannedMoves(id, otherId);
      const [forOwn, forOther] = [projects.ofBoard(id), projects.ofBoard(otherId)];
      projects.release([otherId]);
      if (forOther && (!forOwn || which.reservation === 'other')) projects.reserve(id, forOther.id);

      letStacksFollow(context, new Set([own.stackId, other.stackId]));
      judging.judgeAgain([id, otherId]);
      context.afterwards(() => judging.takeUp());
      return { id };
    },
  } satisfies Partial<Commands>;

  function isConfirmed(id: number): boolean {
    return context.yard().boards.judgedBy(id)?.isSpeciesConfirmed === true;
  }
}
