import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';

/** Whether a person should check it before going on: it was refused, or the call does not rest on it. */
export const isQuestionable = (reading: JudgedReading): boolean =>
  reading.suspicions.some((suspicion) => suspicion.severity !== 'note');

/** The value that was meant where this one was a typing slip, in the meter's %; null where it was none. */
export function meantBy({ excluded, suspicions }: JudgedReading): number | null {
  const meant = suspicions.find(({ rule }) => rule === 'typing-slip')?.why.facts?.rawMeantPct;
  return excluded === null && typeof meant === 'number' ? meant : null;
}
