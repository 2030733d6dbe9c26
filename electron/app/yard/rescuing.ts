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
  const facts = { file, ...lost.happened() };
  let rescued: Rescued;
  try {
    rescued = lost.rescue(dayOf(held));
    if (rescued.partial) saveReport(file, rescued.partial);
  } catch (error) {
    held.reportFault(error);
    const code = lost.isSpoiled() ? 'refusal.yard-cut-not-rescued' : 'refusal.yard-not-rescued';
    throw new YardFileProblem(message(code, facts), false);
  }
  const { copy: rescuedFile, partial } = rescued;
  const saved = { ...facts, rescuedFile, unsaved: 'no' };
  if (partial) {
    const [boards, readings] = [savedOf(partial, 'boards'), savedOf(partial, 'readings')];
    const partly = { ...saved, kind: held.kind, boards, readings };
    return new YardFileProblem(message('refusal.yard-partly-rescued', partly), false);
  }
  const isGone = lost.isSpoiled() || rescuedCopyOf(file) !== null;
  held.rescuedFromReplaced = isGone ? null : rescuedFile;
  const state = lost.isSpoiled() ? 'spoiled' : isGone ? 'gone' : 'replaced';
  return new YardFileProblem(message('refusal.yard-moved', { ...saved, state }), false);
}

/** The problem as the answer to a change that was not saved because of it. */
export const withUnsaved = ({ problem: { code, facts }, damaged }: YardFileProblem): YardFileProblem =>
  new YardFileProblem(
    facts?.unsaved ? { code, facts: { ...facts, unsaved: 'yes' } } : { code, facts },
    damaged,
  );
