import { readdirSync, renameSync, rmSync, statfsSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { readBackupName } from './backup-name.ts';
import { syncFile, syncFolder } from './durable-files.ts';
import { makePrivateFile, makePrivateFolder } from './private-files.ts';
import { type Db, isDamage } from './yard-file.ts';

/** Left free beside a backup, so that it is never what keeps a reading from being saved. */
const LEAST_LEFT_BYTES = 16 * 1024 * 1024;
const PART = '.part';

/**
 * Copies a yard file while it is open and written to, by SQLite's online backup in one step: what is committed when it
 * begins. Nobody waits for it. The copy is one file, checked and on disk before it has its name.
 * @throws Refusal that says what was wrong with the disk, the folder or the file
 */
export async function writeBackup(from: string, target: string): Promise<void> {
  const part = beginPart(from, target);
  try {
    const db = new Database(from, { readonly: true, timeout: 2000 });
    try {
      await db.backup(part, { progress: () => Number.MAX_SAFE_INTEGER });
    } finally {
      db.close();
    }
    finishPart(part, target);
  } catch (error) {
    giveUp(part, target, error);
  }
}

/**
 * The same of an open file that is about to be migrated. Its opening cannot wait for the online backup, which takes
 * turns with other work.
 * @throws Refusal as above
 */
export function writeBackupAtOnce(db: Db, target: string): void {
  const part = beginPart(db.name, target);
  try {
    db.prepare('VACUUM INTO ?').run(part);
    finishPart(part, target);
  } catch (error) {
    giveUp(part, target, error);
  }
}

/**
 * Makes the folder of a backup where there is none, and removes what an interrupted backup of the same yard left there.
 * @throws Refusal as above
 */
export function clearForBackup(target: string): void {
  const folder = dirname(target);
  const yardId = readBackupName(basename(target))?.yardId;
  try {
    makePrivateFolder(folder);
    for (const name of readdirSync(folder)) {
      const [, whole = ''] = /^(.*)\.part(-\w+)?$/.exec(name) ?? [];
      const left = readBackupName(whole);
      if (left !== null && left.yardId === yardId) rmSync(join(folder, name), { force: true });
    }
  } catch (error) {
    throw asBackupProblem(error, target);
  }
}

/** How much a yard file takes on disk, with what is still in its WAL. */
export const sizeOf = (file: string): number =>
  ['', '-wal'].reduce(
    (sum, suffix) => sum + (statSync(file + suffix, { throwIfNoEntry: false })?.size ?? 0),
    0,
  );

/** @returns where to write until it is whole: an empty file that only this user can read */
function beginPart(from: string, target: string): string {
  const part = target + PART;
  try {
    removePart(part);
    const { bavail, bsize } = statfsSync(dirname(target));
    if (bavail * bsize < sizeOf(from) + LEAST_LEFT_BYTES) throw noRoom(target);
    makePrivateFile(part);
    return part;
  } catch (error) {
    throw asBackupProblem(error, target);
  }
}

/** Checks it, and only then gives it its name, on disk. */
function finishPart(part: string, target: string): void {
  const db = new Database(part);
  try {
    // One file, without others beside it, wherever it is copied to.
    db.pragma('journal_mode = DELETE');
    const found = String(db.pragma('integrity_check(1)', { simple: true }));
    if (found !== 'ok') throw new Refusal(message('refusal.backup-damaged'));
  } finally {
    db.close();
  }
  syncFile(part);
  renameSync(part, target);
  syncFolder(dirname(target));
}

function giveUp(part: string, target: string, error: unknown): never {
  try {
    removePart(part);
  } catch {
    // The next backup removes it; why this one failed is what a person must read.
  }
  throw asBackupProblem(error, target);
}

function removePart(part: string): void {
  for (const suffix of ['', '-journal', '-wal', '-shm']) rmSync(part + suffix, { force: true });
}

const noRoom = (target: string): Refusal =>
  new Refusal(message('refusal.backup-no-room', { folder: dirname(target) }));

/** What an error at copying means to a person; what is none of these is a fault of ours. */
export function asBackupProblem(error: unknown, target: string): unknown {
  if (error instanceof Refusal) return error;
  const code = String((error as { code?: unknown }).code ?? '');
  const folder = dirname(target);
  if (/^(ENOSPC|EDQUOT|SQLITE_FULL)/.test(code)) return noRoom(target);
  if (/^(EACCES|EPERM|EROFS|ENOENT|ENOTDIR|EEXIST|SQLITE_CANTOPEN|SQLITE_READONLY)/.test(code)) {
    return new Refusal(message('refusal.backup-folder-refused', { folder }));
  }
  if (/^(EIO|SQLITE_IOERR)/.test(code)) return new Refusal(message('refusal.backup-disk-failed', { folder }));
  if (isDamage(error)) return new Refusal(message('refusal.backup-damaged'));
  return error;
}
