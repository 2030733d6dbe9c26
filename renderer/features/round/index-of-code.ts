import type { RoundBoard } from '../../../shared-core/contract/round.ts';

/** Where the board of that ID is in the walk; -1 where it is not. Capitals make no difference. */
export const indexOfCode = (boards: readonly RoundBoard[], code: string): number =>
  boards.findIndex((board) => board.code.toLowerCase() === code.trim().toLowerCase());
