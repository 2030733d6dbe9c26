import { existsSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Restored } from '../../shared-core/contract/backups.ts';
import { asBackupProblem, writeBackup } from './backup.ts';
import { withChosenYard } from './chosen-file.ts';
import { syncFile, syncFolder } from './durable-files.ts';
import { forgetNewestAct } from './newest-act.ts';
import { settingWrites } from './setting-table.ts';
import { missingPartsOf } from './yard-comparison.ts';
import { BACKUP_ID, backupIdOf, contentsIn } from './yard-contents.ts';
import { type Db, openYardFile } from './yard-file.ts';

/** The setting of a restored yard that says how to undo that. */
export const RESTORED = 'restored';

const unfinished = (yardFile: string): string => `${yardFile}.restoring`;
/** Whole and on disk: all that is left is to give it the yard file's name. */
const finished = (yardFile: string): string => `${yardFile}.restored`;

/**
 * Copies a yard beside the open one and brings it to the newest layout. The open one is not touched.
 * @param newUuid  windows that show the yard as it was notice by it that this is another; null where it is that one again
 * @param backupId  of the open yard, whose backups go on; null where that cannot be read
 * @throws Refusal for a file that is damaged, of a newer Pintally or no yard, and where there is no room
 */
export async function prepareRestore(
  source: string,
  yardFile: string,
  newUuid: string | null,
  backupId: string | null,
): Promise<void> {
  try {
    forgetRestore(yardFile);
    await withChosenYard(source, async (readable) => {
      contentsIn(readable, true);
      await writeBackup(readable, unfinished(yardFile));
    });
    edit(yardFile, (db) => {
      if (newUuid === null) return;
      settingWrites(db).put(BACKUP_ID, backupId ?? backupIdOf(db));
      db.prepare('UPDATE yard SET uuid = ?').run(newUuid);
    });
  } catch (error) {
    throw asBackupProblem(error, yardFile);
  }
}

/**
 * Completes what `prepareRestore` began.
 * @param restored  what the restored yard says of its restore; null where the yard before could not be backed up
 * @throws Refusal that says what was wrong with the disk
 */
export function completeRestore(yardFile: string, restored: Omit<Restored, 'missing'> | null): void {
  try {
    const told = restored && {
      ...restored,
      missing: missingPartsOf(restored.undoFile, unfinished(yardFile)),
    };
    edit(yardFile, (db) => settingWrites(db).put(RESTORED, told));
    syncFile(unfinished(yardFile));
    renameSync(unfinished(yardFile), finished(yardFile));
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
}

/** After a crash: a restore that had put the damaged file aside is finished, any other is forgotten. */
export function finishRestore(yardFile: string): void {
  if (!existsSync(yardFile) && existsSync(finished(yardFile))) takeRestored(yardFile);
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
    for (const suffix of ['', '-wal', '-shm', '-journal']) rmSync(file + suffix, { force: true });
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
