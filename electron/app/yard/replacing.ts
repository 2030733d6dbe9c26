import { existsSync } from 'node:fs';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { isUnopened } from '../../../shared-core/contract/yard-problem.ts';
import { message } from '../../../shared-core/words/message.ts';
import { sizeOf } from '../../store/backup.ts';
import { rescuedCopyOf } from '../../store/rescued-copy.ts';
import { forgetRestore, takeRestored } from '../../store/restore.ts';
import { renameDamaged, type YardFileProblem } from '../../store/yard-file.ts';
import { lockYard } from '../../store/yard-lock.ts';
import { createSignal } from '../signal.ts';
import { releaseLock } from './closing.ts';
import { currentYard, dayOf, type HeldYard } from './held-yard.ts';
import type { Open } from './opening.ts';
import { forgetSalvage } from './salvaging.ts';

/** Puts a yard that was prepared (`restoring.ts`) in the place of the person's own. */
export function createReplacing(held: HeldYard, noticeMoved: () => YardFileProblem | null, open: Open) {
  const ownFile = held.files.own;

  function refuseToReplace(): void {
    const { kind, problem } = held;
    if (kind !== 'own') throw new Refusal(message('refusal.restore-own-not-open'));
    // One that is gone was rescued: there is nothing at its path that a backup could replace.
    const hasNone = problem === null || problem.damaged || isUnopened(problem.problem);
    if (!hasNone && rescuedCopyOf(ownFile) === null) throw problem;
  }

  return {
    /**
     * Until what it returns is called, the open yard can be read and not written to, and commands wait.
     * @throws Refusal while no yard is open
     */
    holdWriting: (): (() => void) => {
      const yard = currentYard(held);
      const released = createSignal();
      yard.forbidWriting();
      held.mayWrite = false;
      held.checking = new Promise((resolve) => released.follow(resolve));
      return () => {
        if (held.yard === yard) {
          yard.allowWriting();
          held.mayWrite = true;
          held.checking = null;
        }
        released.give();
      };
    },
    /**
     * Before a copy is made for `replaceOwn`. Until what it returns is called, a damaged own yard is this process's alone,
     * as one that is open.
     * @throws Refusal where the own yard is neither open, damaged nor gone
     */
    beginReplacing: (): (() => void) => {
      refuseToReplace();
      if (held.problem === null) return () => undefined;
      if (held.lock !== null) throw new Refusal(message('refusal.restore-busy'));
      held.lock = lockYard(ownFile, held.now());
      return () => {
        if (held.yard === null) releaseLock(held);
      };
    },
    /**
     * Opens the yard that was prepared in the place of the own one (`store/restore.ts`); a damaged one is
     * renamed and left in the folder.
     * @returns where that one is now; null where there was none
     * @throws Refusal where the own yard is neither open, damaged nor gone any more, or is not all in its file
     */
    replaceOwn: (): string | null => {
      const movedNow = noticeMoved();
      if (movedNow) {
        forgetRestore(ownFile);
        throw movedNow;
      }
      refuseToReplace();
      let renamed: string | null = null;
      try {
        if (held.problem) renamed = renameDamaged(ownFile, dayOf(held));
        held.yard?.close();
        held.yard = null;
        if (sizeOf(`${ownFile}-wal`) > 0) throw new Refusal(message('refusal.restore-in-use'));
        forgetSalvage(ownFile);
        takeRestored(ownFile);
        held.log('yard-restored');
      } finally {
        open('own');
      }
      held.notes.tellRestored();
      return renamed !== null && existsSync(renamed) ? renamed : null;
    },
  };
}
