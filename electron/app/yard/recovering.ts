import { existsSync } from 'node:fs';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { kindOfProblem } from '../../../shared-core/contract/yard-problem.ts';
import { message } from '../../../shared-core/words/message.ts';
import { forgetNewestAct, newestActAt } from '../../store/newest-act.ts';
import { isPart, putBack } from '../../store/rescued-copy.ts';
import { renameDamaged, type YardFileProblem } from '../../store/yard-file.ts';
import { lockYard } from '../../store/yard-lock.ts';
import { releaseLock } from './closing.ts';
import { dayOf, fileOf, type HeldYard, rescuedCopy } from './held-yard.ts';
import { type Open, tellSalvaged } from './opening.ts';
import { forgetSalvage, type SalvageThread, salvageReport, salvageYard } from './salvaging.ts';

/** What a person does about a yard file that is damaged or gone, but for restoring a backup. */
export function createRecovering(held: HeldYard, open: Open) {
  /** @throws Refusal where the file is not damaged */
  function damage(): YardFileProblem {
    if (held.problem === null || !held.problem.damaged) throw new Refusal(message('refusal.yard-sound'));
    return held.problem;
  }

  return {
    /** When the newest change was made that the file was seen with, also where it cannot be read. */
    newestActAt: (): string | null => newestActAt(fileOf(held)),
    /** What was saved when the open file was salvaged. */
    salvageReport: () => salvageReport(fileOf(held)),
    /** Opens a file with what can be read of the damaged one. */
    salvage: async (salvageThread: SalvageThread): Promise<void> => {
      const found = damage();
      if (kindOfProblem(found.problem) === 'missing') throw found;
      if (held.lock !== null) throw new Refusal(message('refusal.try-again'));
      const { kind } = held;
      held.lock = lockYard(fileOf(held), held.now());
      try {
        await salvageYard(fileOf(held), dayOf(held), salvageThread);
      } finally {
        releaseLock(held);
      }
      open(kind);
      tellSalvaged(held);
    },
    /** Opens an empty yard; what is left of the file is renamed and stays in the folder. */
    startAfresh: (): void => {
      damage();
      forgetSalvage(fileOf(held));
      const renamed = renameDamaged(fileOf(held), dayOf(held));
      forgetNewestAct(fileOf(held));
      held.log('new-yard-begun', renamed);
      open(held.kind, true);
      // Of a file that was missing, there is none by that name.
      if (held.yard && held.mayWrite && existsSync(renamed)) held.notes.addStartedNew(held.yard, renamed);
    },
    /** Puts the rescued copy of a file that is gone where that was, and opens it. */
    openRescued: (): void => {
      const rescuedFile = rescuedCopy(held);
      if (rescuedFile === null) throw new Refusal(message('refusal.yard-sound'));
      const file = fileOf(held);
      if (held.rescuedFromReplaced !== null) {
        held.lock = lockYard(file, held.now());
        try {
          renameDamaged(file, dayOf(held), 'replaced');
        } finally {
          releaseLock(held);
        }
      }
      putBack(rescuedFile, file);
      held.log('rescued-copy-opened', rescuedFile);
      open(held.kind);
      const report = isPart(rescuedFile) ? salvageReport(file) : null;
      if (report) held.notes.addSalvaged(report);
      else if (held.problem === null) held.notes.add(message('yard-note.rescued'));
    },
  };
}
