import type { Assessment } from './assessment.ts';
import { judgeBoard } from './call.ts';
import type { BoardEvidence } from './evidence.ts';
import { roundSuspicions } from './round-suspicions.ts';

/**
 * Judges all boards of a round together: each as `judgeBoard` does, and with the doubts that show only when the boards
 * are held against each other.
 *
 * @param boards in the order they were walked, `code` as a person calls the board
 */
export function judgeRound(boards: readonly { code: string; evidence: BoardEvidence }[]): Assessment[] {
  const alone = boards.map(({ evidence }) => judgeBoard(evidence));
  const doubts = roundSuspicions(
    boards.map((board, index) => ({ ...board, readings: alone[index]!.readings })),
  );
  return boards.map(({ evidence }, index) => {
    const ofRound = doubts.get(index);
    return ofRound === undefined ? alone[index]! : judgeBoard(evidence, ofRound);
  });
}
