import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import type { Language } from '../../../shared-core/words/languages.ts';
import { message } from '../../../shared-core/words/message.ts';
import { sizeOf } from '../../store/backup.ts';
import { newestActAt } from '../../store/newest-act.ts';
import { makePrivateFolder } from '../../store/private-files.ts';
import { isPart, rescuedCopyOf } from '../../store/rescued-copy.ts';
import { finishRestore } from '../../store/restore.ts';
import { openYard, type Yard } from '../../store/yard.ts';
import { asProblem, damagedFile, damageIn, YardFileProblem } from '../../store/yard-file.ts';
import { lockYard } from '../../store/yard-lock.ts';
import type { Backups } from './backups.ts';
import { bringBuiltInUpToDate } from './built-in.ts';
import type { CheckThread } from './check-thread.ts';
import { close, stopFor } from './closing.ts';
import { forgetUnfinishedDemo, makeDemoYard } from './demo-yard.ts';
import { dayOf, fileOf, type HeldYard, setProblem } from './held-yard.ts';
import { finishSalvage, salvageReport } from './salvaging.ts';
import { takeBackUnfinished } from './taking-back.ts';

/** What opening the person's own yard has to do with its backups. */
export type YardBackups = Pick<Backups, 'beforeMigrating' | 'areThere'>;

/** Closes what is open, and opens a yard; where that fails, the held yard has a problem. */
export type Open = (
  which: YardInfo['kind'],
  /** A person wants a new yard in the place of the one that was there. */
  isNew?: boolean,
  /** In which the demo yard is written, where there is none yet. */
  language?: Language,
) => void;

/** @param guarded  the yard whose transactions notice that its file was lost or is damaged */
export function createOpening(
  held: HeldYard,
  dataDir: string,
  checkThread: CheckThread,
  guarded: (opened: Yard) => Yard,
  backups?: YardBackups,
): Open {
  async function checkIntegrity(opened: Yard): Promise<void> {
    const { file } = opened;
    try {
      const checked = await checkThread.ask({ file, isThorough: false }).catch((fault) => {
        if (held.yard !== opened) return null;
        // A file that nobody checked is not written to: better the window waits.
        held.reportFault(fault);
        return { damage: damageIn(file) };
      });
      if (held.yard !== opened || checked === null) return;
      held.checking = null;
      if (checked.damage !== null) throw damagedFile(file);
      opened.allowWriting();
      beginWriting(held, opened);
    } catch (error) {
      stopFor(held, asProblem(error, file));
    }
    held.integrityChecked.give();
  }

  return (which, isNew = false, language = 'en') => {
    const { files, notes, now } = held;
    try {
      close(held);
    } catch (error) {
      setProblem(held, asProblem(error, fileOf(held)));
      return;
    }
    held.kind = which;
    held.problem = null;
    held.rescuedFromReplaced = null;
    notes.forget();
    const file = files[which];
    try {
      makePrivateFolder(dataDir);
      held.lock = lockYard(file, now());
      if (which === 'own') {
        finishRestore(file);
        forgetUnfinishedDemo(files.demo, now());
      }
      const isSalvageFinished = finishSalvage(file, dayOf(held));
      refuseGone(file);
      if (which === 'own' && !isNew) refuseVanished(file, backups?.areThere() ?? false);
      if (which === 'demo') makeDemoYard(file, now(), language);
      const opened = guarded(openYard(file, which === 'own' ? backups?.beforeMigrating : undefined));
      held.yard = opened;
      notes.begin(opened);
      if (isSalvageFinished) tellSalvaged(held);
      if (opened.integrityChecked) beginWriting(held, opened);
      else held.checking = checkIntegrity(opened);
    } catch (error) {
      stopFor(held, asProblem(error, file));
    }
  };
}

/** What could be read of a damaged file was put in its place. */
export function tellSalvaged(held: HeldYard): void {
  const report = salvageReport(fileOf(held));
  held.log('yard-salvaged', JSON.stringify(report?.kinds));
  if (report) held.notes.addSalvaged(report);
}

/** A yard file that is gone, and was rescued, is not replaced by an empty one. */
function refuseGone(file: string): void {
  const rescuedFile = rescuedCopyOf(file);
  if (rescuedFile === null) return;
  const code = isPart(rescuedFile) ? 'refusal.yard-partly-gone' : 'refusal.yard-gone';
  throw new YardFileProblem(message(code, { file, rescuedFile }), false);
}

/** Nor is one that was deleted, renamed or emptied while it was closed, before a person says so. */
function refuseVanished(file: string, areBackupsThere: boolean): void {
  if (sizeOf(file) > 0 || (newestActAt(file) === null && !areBackupsThere)) return;
  throw new YardFileProblem(message('refusal.yard-vanished', { file }), true);
}

function beginWriting(held: HeldYard, opened: Yard): void {
  const changed = opened.transaction(() => bringBuiltInUpToDate(opened));
  if (changed > 0) held.notes.add(message('yard-note.built-in-repaired', { entries: changed }));
  if (takeBackUnfinished(opened, held.now)) held.notes.add(message('yard-note.taken-back'));
  held.mayWrite = true;
}
