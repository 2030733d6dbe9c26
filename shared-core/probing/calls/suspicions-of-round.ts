import type { BoardEvidence } from '../readings/evidence.ts';
import type { Suspicion } from '../readings/reading.ts';
import { expectationNow } from '../suspicions/expectation.ts';
import { type RoundSuspicion, roundSuspicions, type WalkedBoard } from '../suspicions/round-suspicions.ts';
import { speciesSuspicionsOf } from '../suspicions/species-suspicions.ts';
import { judgeBoard } from './call.ts';

/** One board of a round, `code` as a person calls it. */
export type BoardOfRound = { code: string; evidence: BoardEvidence };

/**
 * The suspicions that show only when a round's boards are compared with each other; what `judgeBoard` is to be given with
 * each board's evidence.
 *
 * @param boards in the order they were walked
 * @returns for each board, in the same order; empty where nothing speaks against it
 */
export function suspicionsOfRound(boards: readonly BoardOfRound[]): RoundSuspicion[][] {
  const walked = boards.map((board): WalkedBoard => {
    const { readings } = judgeBoard(board.evidence);
    const last = readings.at(-1);
    return {
      ...board,
      readings,
      expectation: last === undefined ? null : expectationNow(board.evidence, last.takenAt),
    };
  });
  const suspicions = roundSuspicions(walked);
  const ofSpecies = speciesSuspicionsOf(walked);
  return boards.map((_, index) => withSpecies(suspicions.get(index) ?? [], ofSpecies.get(index)));
}

/** A board mixed up with another keeps that suspicion; of one with a depth apart, only its species is questioned. */
function withSpecies(suspicions: RoundSuspicion[], ofSpecies: Suspicion | undefined): RoundSuspicion[] {
  const apart = suspicions.filter(({ suspicion }) => suspicion.rule === 'apart-from-stack');
  if (ofSpecies === undefined || apart.some(({ depth }) => depth === null)) return suspicions;
  return [...suspicions.filter((each) => !apart.includes(each)), { depth: null, suspicion: ofSpecies }];
}
