import { message } from '../../../shared-core/words/message.ts';
import { type Rescued, rescuedCopyOf } from '../../store/rescued-copy.ts';
import type { Yard } from '../../store/yard.ts';
import { YardFileProblem } from '../../store/yard-file.ts';
import { dayOf, type HeldYard } from './held-yard.ts';
import { savedOf, saveReport } from './salvaging.ts';

/** False where the lock was lost, and another Pintally has the yard or changed it: its files are as that one left them. */
export function isOurs({ lock }: HeldYard, opened: Yard): boolean {
  if (lock === null || lock.taken() !== null) return false;
  return !lock.wasLost() || !opened.wasWrittenByOthers();
}

/** Whether it has to be rescued: not where its files are as another Pintally left them, or a WAL could be brought in. */
export function isLost(held: HeldYard, opened: Yard): boolean {
  const loss = opened.loss();
  if (loss === null || loss === 'moved') return loss !== null;
  return isOurs(held, opened) && !(loss === 'wal-moved' && opened.bringInMovedWal());
}

/**
 * Saves what a lost file holds to a new one.
 * @returns what a person reads of it
 * @throws YardFileProblem where it cannot be saved
 */
export function rescue(held: HeldYard, lost: Yard): YardFileProblem {
  const { file } = lost;
  let rescued: Rescued;
  try {
    rescued = lost.rescue(dayOf(held));
    if (rescued.partial) saveReport(file, rescued.partial);
  } catch (error) {
    held.reportFault(error);
    const code = lost.isSpoiled() ? 'refusal.yard-cut-not-rescued' : 'refusal.yard-not-rescued';
    throw new YardFileProblem(message(code, { file }), false);
  }
  const { copy: rescuedFile, partial } = rescued;
  if (partial) {
    const [boards, readings] = [savedOf(partial, 'boards'), savedOf(partial, 'readings')];
    return new YardFileProblem(
      message('refusal.yard-partly-rescued', { file, rescuedFile, boards, readings }),
      false,
    );
  }
  const state = lost.isSpoiled() || rescuedCopyOf(file) !== null ? 'gone' : 'replaced';
  held.rescuedFromReplaced = state === 'replaced' ? rescuedFile : null;
  return new YardFileProblem(message('refusal.yard-moved', { file, rescuedFile, state }), false);
}
