import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';

/** Whether a person should check it before going on: it was refused, or the call does not rest on it. */
export const isQuestionable = (reading: JudgedReading): boolean =>
  reading.suspicions.some((suspicion) => suspicion.severity !== 'note');
