import { lstatSync, renameSync, rmSync, statfsSync, statSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import Database from 'better-sqlite3';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { readBackupName } from './backup-name.ts';
import { clearLeft } from './backup-place.ts';
import { syncFile, syncFolder } from './durable-files.ts';
import { packPictures } from './packed-pictures.ts';
import { picturesBeside, sizeOfPictures } from './picture-files.ts';
import { makePrivateFile, makePrivateFolder } from './private-files.ts';
import { isWhole } from './whole-yard.ts';
import { type Db, isDamage } from './yard-file.ts';

/** Left free beside a backup, so that it is never what keeps a reading from being saved. */
export const LEAST_LEFT_BYTES = 16 * 1024 * 1024;
const PART = '.part';

/** How many records of each kind a yard has. */
type Counts = Record<'stack' | 'board' | 'reading', number>;

/**
 * Copies a yard file while it is open and written to, by SQLite's online backup in one step: what is committed when it
 * begins. Nobody waits for it. The copy is one file, checked and on disk before it has its name.
 * @throws Refusal that says what was wrong with the disk, the folder or the file
 */
export const writeBackup = (from: string, target: string): Promise<void> =>
  writeAs(target + PART, from, target);

/** The same to a folder of a person's own, whose files may have any name; its pictures are in it. */
export const writeCopy = (from: string, target: string): Promise<void> =>
  writeAs(`${target}.pintally${PART}`, from, target, (part) => packPictures(from, part));

async function writeAs(
  part: string,
  from: string,
  target: string,
  complete: (part: string) => void = () => undefined,
): Promise<void> {
  beginPart(from, part, target);
  try {
    const db = new Database(from, { readonly: true, timeout: 2000 });
    let counts: Counts;
    try {
      // What is counted is what is copied, whoever writes meanwhile.
      db.exec('BEGIN');
      counts = countsOf(db);
      await db.backup(part, { progress: () => Number.MAX_SAFE_INTEGER });
    } finally {
      db.close();
    }
    complete(part);
    finishPart(part, target, counts);
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
  const part = target + PART;
  beginPart(db.name, part, target);
  try {
    const counts = countsOf(db);
    db.prepare('VACUUM INTO ?').run(part);
    finishPart(part, target, counts);
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
    if (yardId !== undefined) clearLeft(folder, [yardId]);
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

/** The same with its pictures. */
export const sizeWithPictures = (file: string): number => sizeOf(file) + sizeOfPictures(picturesBeside(file));

/** How much is missing in a folder for a backup of a yard file, bytes; 0 or less where there is room. */
export function lackingRoom(from: string, folder: string): number {
  const { bavail, bsize } = statfsSync(folder);
  return sizeOf(from) + LEAST_LEFT_BYTES - bavail * bsize;
}

/** Makes what is written to until it is whole: an empty file that only this user can read. */
function beginPart(from: string, part: string, target: string): void {
  try {
    removePart(part);
    if (lackingRoom(from, dirname(target)) > 0) throw noRoom(target);
    makePrivateFile(part);
  } catch (error) {
    throw asBackupProblem(error, target);
  }
}

/** Checks it, and only then gives it its name, on disk. */
function finishPart(part: string, target: string, counts: Counts): void {
  const db = new Database(part, { fileMustExist: true });
  try {
    // One file, without others beside it, wherever it is copied to.
    db.pragma('journal_mode = DELETE');
    if (!isWhole(db) || !isDeepStrictEqual(countsOf(db), counts)) {
      throw new Refusal(message('refusal.backup-damaged'));
    }
  } finally {
    db.close();
  }
  syncFile(part);
  const inTheWay = lstatSync(target, { throwIfNoEntry: false });
  if (inTheWay && !inTheWay.isFile()) throw new Refusal(message('refusal.copy-no-plain-file'));
  renameSync(part, target);
  syncFolder(dirname(target));
}

function countsOf(db: Db): Counts {
  const count = (table: string): number => Number(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get());
  return { stack: count('stack'), board: count('board'), reading: count('reading') };
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
  if (
    /^(EACCES|EPERM|EROFS|ENOENT|ENOTDIR|EEXIST|EISDIR|ERR_FS_EISDIR|ENAMETOOLONG|SQLITE_CANTOPEN|SQLITE_READONLY)/.test(
      code,
    )
  ) {
    return new Refusal(message('refusal.backup-folder-refused', { folder }));
  }
  if (/^(EIO|SQLITE_IOERR)/.test(code)) return new Refusal(message('refusal.backup-disk-failed', { folder }));
  if (isDamage(error)) return new Refusal(message('refusal.backup-damaged'));
  return error;
}
