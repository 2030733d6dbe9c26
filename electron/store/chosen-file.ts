import {
  type BigIntStats,
  closeSync,
  constants,
  copyFileSync,
  mkdtempSync,
  openSync,
  readSync,
  rmSync,
  statSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { typedPath } from './typed-path.ts';
import { repairWal } from './wal-repair.ts';
import { isDamage } from './yard-file.ts';
import { identify } from './yard-identity.ts';

/** What SQLite has not yet written into a file lies in these beside it. */
const BESIDE = ['-wal', '-journal'];
/** How often a file is copied again that another program wrote to meanwhile. */
const TRIES = 3;

/**
 * The file that a person chose to restore.
 * @param openYard  the person's own, by whatever name it was typed
 * @throws Refusal where it is no plain file, or that yard's
 */
export function chosenFile(typed: string, openYard: string): { file: string; sizeBytes: number } {
  const file = typedPath(typed);
  const [found, open] = [file, openYard].map((each) => stat(each));
  if (!found) throw new Refusal(message('refusal.restore-file-gone'));
  // Whoever opens a pipe waits for as long as nobody writes to it.
  if (!found.isFile()) throw new Refusal(message('refusal.restore-no-plain-file'));
  // Neither is opened: see `makePrivateFile`.
  if (found.dev === open?.dev && found.ino === open.ino) {
    throw new Refusal(message('refusal.restore-open-yard'));
  }
  return { file, sizeBytes: Number(found.size) };
}

/** Undefined where there is no such file, or it cannot be read. */
function stat(file: string): BigIntStats | undefined {
  try {
    return statSync(file, { bigint: true, throwIfNoEntry: false });
  } catch {
    return undefined;
  }
}

/**
 * Has `work` read a yard file that a person chose, wherever it is. Nothing is written to it or beside it, and what lies
 * beside it is read as well.
 *
 * To read a file in WAL mode, or one whose last transaction was cut off, SQLite makes or changes files beside it. Such a
 * one is copied first.
 * @param work  is given a file that SQLite can read by itself
 * @throws Refusal for a file that is damaged, of a newer Pintally, or no yard
 */
export async function withChosenYard<T>(
  file: string,
  work: (readable: string) => T | Promise<T>,
): Promise<T> {
  let folder: string | undefined;
  try {
    refuseNoYard(file);
    if (isAlone(file)) return await work(file);
    folder = mkdtempSync(join(tmpdir(), 'pintally-'));
    const copied = join(folder, 'yard.sqlite');
    copyStill(file, copied);
    settle(copied);
    return await work(copied);
  } catch (error) {
    throw asChosenFileProblem(error);
  } finally {
    if (folder) rmSync(folder, { recursive: true, force: true });
  }
}

function refuseNoYard(file: string): void {
  if (!stat(file)?.isFile()) throw new Refusal(message('refusal.restore-file-gone'));
  if (!isDatabase(file)) throw new Refusal(message('refusal.restore-no-yard'));
  const found = identify(file);
  if (found === 'newer') throw new Refusal(message('refusal.restore-newer'));
  if (found !== 'ours') throw new Refusal(message('refusal.restore-no-yard'));
}

/** The start of SQLite's header, https://www.sqlite.org/fileformat.html, section 1.3. */
function headerOf(file: string): Buffer {
  const header = Buffer.alloc(20);
  const opened = openSync(file, 'r');
  readSync(opened, header, 0, header.length, 0);
  closeSync(opened);
  return header;
}

/** By how it begins: any other file is not a damaged yard. */
const isDatabase = (file: string): boolean => headerOf(file).toString('latin1').startsWith('SQLite');

/** Whether all of a file is in it, and SQLite would write nothing to read it. */
function isAlone(file: string): boolean {
  const header = headerOf(file);
  // 1 in both where there is no WAL.
  const isWal = header[18] !== 1 || header[19] !== 1;
  return !isWal && BESIDE.every((suffix) => sizeOf(file + suffix) === 0);
}

/** Copies a file with what lies beside it, while nobody writes to it. */
function copyStill(from: string, to: string): void {
  for (let tries = 0; tries < TRIES; tries++) {
    const before = stampOf(from);
    copyFileSync(from, to, constants.COPYFILE_FICLONE);
    for (const suffix of BESIDE) {
      rmSync(to + suffix, { force: true });
      if (sizeOf(from + suffix) > 0) copyFileSync(from + suffix, to + suffix);
    }
    if (stampOf(from) === before) return;
  }
  throw new Refusal(message('refusal.restore-file-in-use'));
}

function stampOf(file: string): string {
  const stamps = ['', ...BESIDE].map((suffix) => {
    const found = statSync(file + suffix, { bigint: true, throwIfNoEntry: false });
    return found ? `${found.size} ${found.mtimeNs}` : 'none';
  });
  return stamps.join(', ');
}

/** Brings into a copy what lies beside it. */
function settle(copied: string): void {
  if (repairWal(copied).kind === 'cut') throw new Refusal(message('refusal.restore-damaged'));
  const db = new Database(copied);
  try {
    db.pragma('journal_mode = DELETE');
  } finally {
    db.close();
  }
}

function asChosenFileProblem(error: unknown): unknown {
  if (error instanceof Refusal) return error;
  const code = String((error as { code?: unknown }).code ?? '');
  // What every yard of its layout has is missing in it.
  if (isDamage(error) || code === 'SQLITE_ERROR') return new Refusal(message('refusal.restore-damaged'));
  if (/^(ENOSPC|EDQUOT|SQLITE_FULL)/.test(code)) {
    return new Refusal(message('refusal.restore-no-room', { folder: tmpdir() }));
  }
  if (/^(ENOENT|ENOTDIR|EISDIR|EACCES|EPERM|EIO|SQLITE_CANTOPEN|SQLITE_IOERR)/.test(code)) {
    return new Refusal(message('refusal.restore-file-gone'));
  }
  return error;
}

const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;
