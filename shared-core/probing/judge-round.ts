import type { Assessment } from './assessment.ts';
import { judgeBoard } from './call.ts';
import type { BoardEvidence } from './evidence.ts';
import { type RoundSuspicion, roundSuspicions } from './round-suspicions.ts';

/** One board of a round, `code` as a person calls it. */
export type BoardOfRound = { code: string; evidence: BoardEvidence };

/**
 * The doubts that show only when a round's boards are held against each other; what `judgeBoard` is to be given with
 * each board's evidence.
 *
 * @param boards in the order they were walked
 * @returns for each board, in the same order; empty where nothing speaks against it
 */
export function doubtsOfRound(boards: readonly BoardOfRound[]): RoundSuspicion[][] {
  const doubts = roundSuspicions(
    boards.map((board) => ({ ...board, readings: judgeBoard(board.evidence).readings })),
  );
  return boards.map((_, index) => doubts.get(index) ?? []);
}

/**
 * Judges all boards of a round together: each as `judgeBoard` does, and with the doubts of the round.
 *
 * @param boards in the order they were walked
 */
export function judgeRound(boards: readonly BoardOfRound[]): Assessment[] {
  const doubts = doubtsOfRound(boards);
  return boards.map(({ evidence }, index) => judgeBoard(evidence, doubts[index]));
}
