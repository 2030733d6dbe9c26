import type { JudgedReading } from '../readings/reading.ts';
import { isQuestionable } from './suspicion.ts';

/**
 * Whether a questionable reading still asks a person to probe its spot again: until another reading was taken there,
 * whatever that one shows, or it was excluded.
 */
export function asksToProbeAgain(
  readings: readonly Pick<JudgedReading, 'spotIndex' | 'excluded' | 'suspicions'>[],
): boolean {
  const used = readings.filter(({ excluded }) => excluded === null);
  return used.some(
    ({ spotIndex, suspicions }) =>
      isQuestionable(suspicions) && used.filter((each) => each.spotIndex === spotIndex).length === 1,
  );
}
