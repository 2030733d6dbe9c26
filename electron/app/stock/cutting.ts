import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Cut } from '../../../shared-core/contract/archive.ts';
import { pieceCode } from '../../../shared-core/contract/board-code.ts';
import type { CheckedInput } from '../../../shared-core/contract/requests.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, type QueryContext, refusingDuplicates } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { startOfDay } from './board-days.ts';
import { letStacksFollow } from './moving.ts';

/** So much larger together is only how it was measured, mm. */
const MEASURED_WITHIN_MM = 2;
/** A cut of the day of a round comes so long after its beginning, so that its readings are from before. */
const AFTER_MS = 1000;

export const cuttingQueries = (context: QueryContext) =>
  ({
    'boards.pieceCodes': ({ boardId, pieces }) => {
      const { boards } = context.yard();
      const { code } = orRefuse(boards.get(boardId), 'board');
      const codes: string[] = [];
      for (let number = 1; codes.length < pieces; number++) {
        const free = pieceCode(code, number);
        if (!boards.isCodeKnown(free)) codes.push(free);
      }
      return { codes };
    },
  }) satisfies Partial<Queries>;

/**
 * Refuses what cannot be cut or merged: its readings would be of two boards at once.
 * @throws Refusal where it left the yard, or is read in a round that is not finished
 */
export function checkWhole(context: AppContext, { id, code: boardCode, archived }: BoardRow): void {
  if (archived) throw new Refusal(message('refusal.board-archived', { boardCode }));
  const { readings, rounds } = context.yard();
  const isBeingRead = readings.ownRounds(id).some((roundId) => rounds.shown(roundId)?.finishedAt === null);
  if (isBeingRead) throw new Refusal(message('refusal.board-in-round', { boardCode }));
}

/** Boards that are ripped or crosscut into others. */
export function cuttingCommands(context: AppContext, judging: Judging) {
  /**
   * When it was cut, after the rounds of that day.
   * @throws Refusal for a day to come, before it was sawn, or before its last reading
   */
  function cutAt({ id, code: boardCode, sawnOn }: BoardRow, at: string): string {
    const { readings, rounds } = context.yard();
    if (Date.parse(at) > Date.parse(context.now())) throw new Refusal(message('refusal.cut-to-come'));
    if (sawnOn !== null && Date.parse(endOfDay(at)) < startOfDay(sawnOn))
      throw new Refusal(message('refusal.cut-before-sawn', { boardCode, sawnOn }));
    const last = readings.roundsOfBoard(id).at(-1);
    const readAt = last === undefined ? undefined : rounds.get(last)?.startedAt;
    if (readAt === undefined) return at;
    if (Date.parse(readAt) > Date.parse(endOfDay(at)))
      throw new Refusal(message('refusal.cut-before-read', { boardCode, readOn: readAt }));
    return isoOf(Math.max(Date.parse(at), Date.parse(readAt) + AFTER_MS));
  }

  /** @throws Refusal, a question, where they are larger together than it is */
  function checkSizes(board: BoardRow, how: Cut, pieces: CheckedInput<'boards.cut'>['pieces']): void {
    const along = how === 'ripped' ? 'widthMm' : 'lengthMm';
    const wholeMm = board[along];
    const togetherMm = pieces.reduce((sum, piece) => sum + (piece[along] ?? 0), 0);
    if (wholeMm === null || togetherMm <= wholeMm + MEASURED_WITHIN_MM) return;
    const { code: boardCode } = board;
    throw new Refusal(
      how === 'ripped'
        ? message('refusal.pieces-wider', { boardCode, boardMm: wholeMm, piecesMm: togetherMm })
        : message('refusal.pieces-longer', { boardCode, boardLengthMm: wholeMm, piecesLengthMm: togetherMm }),
    );
  }

  /** Where it lay in the stack, lies the first of them; the others only in that layer. */
  function addPieces(board: BoardRow, pieces: CheckedInput<'boards.cut'>['pieces']): number[] {
    const { boards, moves } = context.yard();
    const [first, ...later] = moves.ofBoard(board.id);
    const { placeId, since, datedBy } = orRefuse(first, 'move');
    return pieces.map((piece, index) => {
      const column = index === 0 ? board.column : null;
      const id = refusingDuplicates(message('refusal.board-code-taken', { boardCode: piece.code }), () =>
        boards.add({ ...board, ...piece, column }, placeId, since, datedBy),
      );
      for (const move of later) moves.add({ ...move, boardId: id });
      return id;
    });
  }

  return {
    'boards.cut': ({ boardId, how, at, pieces, isLarger }) => {
      const { boards, confirmedSpecies, origins, plannedMoves, projects } = context.yard();
      const board = orRefuse(boards.get(boardId), 'board');
      checkWhole(context, board);
      const cut = cutAt(board, at);
      if (!isLarger) checkSizes(board, how, pieces);

      const project = projects.ofBoard(boardId);
      const isSpeciesConfirmed = boards.judgedBy(boardId)?.isSpeciesConfirmed === true;
      // First, so that a piece can have its ID.
      boards.archive([boardId], cut, { code: how, note: '' });
      projects.release([boardId]);
      const planned = plannedMoves.ofBoard(boardId);
      const pieceIds = addPieces(board, pieces);
      for (const id of pieceIds) {
        origins.add({ childId: id, parentId: boardId, how, at: cut });
        if (project) projects.reserve(id, project.id);
        for (const move of planned) plannedMoves.add({ ...move, boardId: id });
        if (isSpeciesConfirmed) confirmedSpecies.confirm(id, context.now());
      }
      for (const move of planned) plannedMoves.remove(move.id, move.version);
      letStacksFollow(context, [board.stackId]);
      context.afterwards(() => judging.takeUp());
      return { pieceIds, projectName: project?.name ?? null };
    },
  } satisfies Partial<Commands>;
}
