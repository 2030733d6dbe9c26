import type { Assessment } from './assessment.ts';
import { judgeBoard } from './call.ts';
import type { BoardEvidence } from './evidence.ts';
import { expectationNow } from './expectation.ts';
import type { Suspicion } from './reading.ts';
import { type RoundSuspicion, roundSuspicions, type WalkedBoard } from './round-suspicions.ts';
import { woodSuspicions } from './wood-suspicions.ts';

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
  const walked = boards.map((board): WalkedBoard => {
    const { readings } = judgeBoard(board.evidence);
    const last = readings.at(-1);
    return {
      ...board,
      readings,
      expectation: last === undefined ? null : expectationNow(board.evidence, last.takenAt),
    };
  });
  const doubts = roundSuspicions(walked);
  const ofWood = woodSuspicions(walked);
  return boards.map((_, index) => withWood(doubts.get(index) ?? [], ofWood.get(index)));
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

/** A board that was changed for another keeps that doubt; one whose depths stand apart is told of its wood instead. */
function withWood(doubts: RoundSuspicion[], ofWood: Suspicion | undefined): RoundSuspicion[] {
  const apart = doubts.filter(({ suspicion }) => suspicion.rule === 'apart-from-stack');
  if (ofWood === undefined || apart.some(({ depth }) => depth === null)) return doubts;
  return [...doubts.filter((each) => !apart.includes(each)), { depth: null, suspicion: ofWood }];
}
