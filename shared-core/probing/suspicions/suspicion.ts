import type { Corrected } from '../../wood/moisture/corrected.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import type { JudgedReading, Reading, Suspicion } from '../readings/reading.ts';
import { boardSuspicions } from './board-suspicions.ts';
import { firstRoundSuspicion } from './first-round.ts';
import { readingSuspicions } from './reading-suspicions.ts';

/** A reading with its moisture content, before any suspicion. */
export type CorrectedReading = { reading: Reading; corrected: Corrected };

/** Whether one of these rules the reading out by itself. */
export function isRefused(suspicions: readonly Suspicion[]): boolean {
  return suspicions.some((each) => each.severity === 'refused');
}

/** Whether a reading with these is not used for the call. */
export function isQuestionable(suspicions: readonly Suspicion[]): boolean {
  return suspicions.some((each) => each.severity !== 'note');
}

/** Read where the water in the wood is ice: a reading of that spot will be no better before it thaws. */
export const isReadFrozen = ({
  excluded,
  suspicions,
}: Pick<JudgedReading, 'excluded' | 'suspicions'>): boolean =>
  excluded === null && suspicions.some(({ rule }) => rule === 'frozen');

/**
 * The suspicions of each of one board's readings in one round, in the order of the readings. First each reading by
 * itself; then those neither refused nor excluded are compared with each other and with the last round.
 */
export function suspicionsOf(readings: readonly CorrectedReading[], evidence: BoardEvidence): Suspicion[][] {
  // What no wood reads tells nothing about the others.
  const inUse = readings
    .filter(({ reading, corrected }) => corrected.mcPct !== null && !reading.isDamaged)
    .map(({ reading }) => reading);
  const alone = readings.map((each) => readingSuspicions(each, { ...evidence, readings: inUse }));
  const compared = readings.flatMap((each, index) =>
    each.reading.excluded === null && each.corrected.mcPct !== null && !isRefused(alone[index]!)
      ? [
          {
            index,
            reading: each.reading,
            mcPct: each.corrected.mcPct,
            standardUncertaintyPct: each.corrected.standardUncertaintyPct ?? 0,
          },
        ]
      : [],
  );
  const ofBoard = boardSuspicions(compared, evidence);
  const ofFirstRound = firstRoundSuspicion(compared, evidence);
  return alone.map((own, index) => [
    ...own,
    // A slip explains why it is unlike the others.
    ...(ofBoard.get(index) ?? []).filter(
      ({ rule }) => rule !== 'outlier-on-board' || !own.some((one) => one.rule === 'typing-slip'),
    ),
    ...(ofFirstRound !== null && compared.some((each) => each.index === index) ? [ofFirstRound] : []),
  ]);
}
