import { copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { Restored } from '../../shared-core/contract/backups.ts';
import { message } from '../../shared-core/words/message.ts';
import { asBackupProblem, writeBackup } from './backup.ts';
import { readBackupName } from './backup-name.ts';
import { withChosenYard } from './chosen-file.ts';
import { syncFile, syncFolder } from './durable-files.ts';
import { forgetNewestAct } from './newest-act.ts';
import { unpackPictures } from './packed-pictures.ts';
import { copyPictures, picturesBeside, picturesOfBackups } from './picture-files.ts';
import { pictureHashesIn } from './picture-table.ts';
import { settingWrites } from './setting-table.ts';
import { isWhole } from './whole-yard.ts';
import { openYard } from './yard.ts';
import { missingPartsOf } from './yard-comparison.ts';
import { BACKUP_ID, contentsIn } from './yard-contents.ts';
import { type Db, openYardFile, YardFileProblem } from './yard-file.ts';

/** The setting of a restored yard that says how to undo that. */
export const RESTORED = 'restored';

const unfinished = (yardFile: string): string => `${yardFile}.restoring`;
/** Whole and on disk: all that is left is to give it the yard file's name. */
const finished = (yardFile: string): string => `${yardFile}.restored`;

/**
 * Copies a yard beside the open one, brings it to the newest layout, and reads it as the app will. The open one is not
 * touched.
 * @param asNew  windows that show the yard as it was notice by its UUID that this is another; the backups of the own yard
 *   go on under their id; null where it is that yard again
 * @throws Refusal for a file that is damaged, of a newer Pintally or no yard, and where there is no room
 */
export async function prepareRestore(
  source: string,
  yardFile: string,
  asNew: { uuid: string; backupId: string } | null,
): Promise<void> {
  try {
    forgetRestore(yardFile);
    await withChosenYard(source, async (readable) => {
      contentsIn(readable, true);
      await writeBackup(readable, unfinished(yardFile));
    });
    edit(yardFile, (db) => {
      if (!isWhole(db)) throw new Refusal(message('refusal.restore-damaged'));
      if (asNew === null) return;
      settingWrites(db).put(BACKUP_ID, asNew.backupId);
      db.prepare('UPDATE yard SET uuid = ?').run(asNew.uuid);
    });
    openYard(unfinished(yardFile)).close();
    bringPictures(source, yardFile);
  } catch (error) {
    throw asCopyProblem(error, yardFile);
  }
}

/** Those in the copy itself, and those beside the backup. What is found nowhere is missing, and keeps nobody from the rest. */
function bringPictures(source: string, yardFile: string): void {
  const folder = picturesBeside(yardFile);
  edit(yardFile, (db) => {
    if (unpackPictures(db, folder)) db.exec('VACUUM');
    const yardId = readBackupName(basename(source))?.yardId;
    const beside = yardId === undefined ? [] : [picturesOfBackups(dirname(source), yardId)];
    copyPictures([picturesBeside(source), ...beside], folder, pictureHashesIn(db), true);
  });
}

/**
 * The same of a damaged file, which is copied as it is, with its WAL: to undo that another took its place.
 * @throws Refusal where there is no room
 */
export function prepareDamaged(source: string, yardFile: string): void {
  try {
    forgetRestore(yardFile);
    for (const suffix of ['', '-wal']) {
      if (existsSync(source + suffix)) copyFileSync(source + suffix, unfinished(yardFile) + suffix);
    }
  } catch (error) {
    throw asBackupProblem(error, yardFile);
  }
}

/** A copy that cannot be opened as a yard, or did not pass its check, is damaged, unless the disk did not take it. */
function asCopyProblem(error: unknown, yardFile: string): unknown {
  const damaged = new Refusal(message('refusal.restore-damaged'));
  if (error instanceof YardFileProblem) {
    const problem = error.cause && asBackupProblem(error.cause, yardFile);
    return problem instanceof Refusal ? problem : damaged;
  }
  const problem = asBackupProblem(error, yardFile);
  const isUnsound = problem instanceof Refusal && problem.problem.code === 'refusal.backup-damaged';
  return isUnsound ? damaged : problem;
}

/**
 * Completes what was prepared.
 * @param told  what the restored yard says of its restore; null for an undo, which has what it said before
 * @throws Refusal that says what was wrong with the disk
 */
export function completeRestore(
  yardFile: string,
  told: { restored: Omit<Restored, 'missing'> | null } | null,
): void {
  try {
    if (told) {
      const { restored } = told;
      const missing = restored && missingPartsOf(restored.undoFile, unfinished(yardFile));
      edit(yardFile, (db) => settingWrites(db).put(RESTORED, restored && { ...restored, missing }));
    }
    // Its WAL last: without its file it is never taken.
    for (const suffix of ['', '-wal'].filter((each) => existsSync(unfinished(yardFile) + each))) {
      syncFile(unfinished(yardFile) + suffix);
      renameSync(unfinished(yardFile) + suffix, finished(yardFile) + suffix);
    }
    syncFolder(dirname(yardFile));
  } catch (error) {
    throw asBackupProblem(error, yardFile);
  }
}

/** Puts the yard that was prepared in the place of the yard file, which is closed and has no WAL left. */
export function takeRestored(yardFile: string): void {
  for (const suffix of ['-wal', '-shm']) rmSync(yardFile + suffix, { force: true });
  forgetNewestAct(yardFile);
  renameSync(finished(yardFile), yardFile);
  syncFolder(dirname(yardFile));
  takeItsWal(yardFile);
}

/** A damaged file has its WAL again. */
function takeItsWal(yardFile: string): void {
  if (!existsSync(`${finished(yardFile)}-wal`)) return;
  renameSync(`${finished(yardFile)}-wal`, `${yardFile}-wal`);
  syncFolder(dirname(yardFile));
}

/** After a crash: a restore that had put the damaged file aside is finished, any other is forgotten. */
export function finishRestore(yardFile: string): void {
  if (!existsSync(finished(yardFile))) takeItsWal(yardFile);
  else if (!existsSync(yardFile)) takeRestored(yardFile);
  forgetRestore(yardFile);
}

/** A restore failed: what it left is removed, by the next opening where the disk does not let it be now. */
export function giveUpRestore(yardFile: string): void {
  try {
    // Where a damaged file was renamed already, the next opening finishes the restore.
    if (existsSync(yardFile)) forgetRestore(yardFile);
  } catch {
    // Why the restore itself failed is what a person must read.
  }
}

/** Removes what a restore that was not completed left beside the yard file. */
export function forgetRestore(yardFile: string): void {
  for (const file of [unfinished(yardFile), `${unfinished(yardFile)}.part`, finished(yardFile)]) {
    // The file last: its WAL alone would be taken for that of a file that was put in place.
    for (const suffix of ['-wal', '-shm', '-journal', '']) rmSync(file + suffix, { force: true });
  }
}

function edit(yardFile: string, work: (db: Db) => void): void {
  const { db } = openYardFile(unfinished(yardFile));
  try {
    // A large file that needs no migration was checked already.
    db.pragma('query_only = OFF');
    work(db);
  } finally {
    db.close();
  }
}
