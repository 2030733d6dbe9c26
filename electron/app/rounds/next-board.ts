import { firstOpenSpot, type RoundBoard } from '../../../shared-core/contract/round.ts';

/**
 * Where a round is taken up: at the next board, in the order they are walked, with a spot still to be read, else at
 * its beginning. Undefined where the stack has no boards.
 * @param after the id of the board that was aimed at; 0 for none
 */
export function nextBoard(boards: readonly RoundBoard[], after: number): RoundBoard | undefined {
  const open = boards.filter((board) => firstOpenSpot(board) !== null);
  return open.find(({ boardId }) => boardId > after) ?? open[0] ?? boards[0];
}
