import type { JudgedReading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';

/** Whether a person should look at it before going on: it was refused, or the call must not lean on it. */
export function isQuestionableReading(reading: JudgedReading): boolean {
  return reading.suspicions.some((suspicion) => suspicion.severity !== 'note');
}

/** "Core" or "Shell". */
export const depthName = ({ spot }: Pick<JudgedReading, 'spot'>): string =>
  spot.depth === 'core' ? 'Core' : 'Shell';

/** How serious a suspicion is, in a word. */
export const severityWords: Record<Suspicion['severity'], string> = {
  refused: 'Not counted',
  questionable: 'Questionable',
  note: 'Note',
};
