import type { JudgedReading, Suspicion } from '../../../shared-core/probing/reading.ts';

/** Whether a person should look at it before going on: it was refused, or the call must not lean on it. */
export function isDoubtful(reading: JudgedReading): boolean {
  return reading.suspicions.some((suspicion) => suspicion.weight !== 'note');
}

/** "Core" or "Shell". */
export const depthName = ({ spot }: Pick<JudgedReading, 'spot'>): string =>
  spot.depth === 'core' ? 'Core' : 'Shell';

/** How much a suspicion weighs, in a word. */
export const weightWords: Record<Suspicion['weight'], string> = {
  refused: 'Not counted',
  doubt: 'Doubtful',
  note: 'Note',
};
