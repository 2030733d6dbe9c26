import { existsSync, mkdirSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { migrations } from './migrations.ts';

export type Db = Database.Database;

/** A file that cannot be used as a yard as it is; `damaged` when putting it beside would help. */
export class YardFileProblem extends Refusal {
  override name = 'YardFileProblem';
  readonly damaged: boolean;
  constructor(sentence: string, damaged: boolean) {
    super(sentence);
    this.damaged = damaged;
  }
}

/**
 * Opens a yard file, creating it when there is none, and brings it to the newest layout.
 *
 * WAL with synchronous=FULL: a reading that was committed survives a power cut.
 * @throws YardFileProblem with a sentence for a person; the file is then left as it was
 */
export function openYardFile(file: string): Db {
  let db: Db | undefined;
  try {
    mkdirSync(dirname(file), { recursive: true });
    db = new Database(file, { timeout: 2000 });
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    checkSound(db, file);
    migrate(db, file);
    return db;
  } catch (error) {
    db?.close();
    throw asProblem(error, file);
  }
}

function checkSound(db: Db, file: string): void {
  const found = db.pragma('quick_check(1)', { simple: true });
  if (found !== 'ok') throw damagedFile(file, String(found));
}

function migrate(db: Db, file: string): void {
  const applied = Number(db.pragma('user_version', { simple: true }));
  if (applied > migrations.length) {
    throw new YardFileProblem(
      `The yard file ${file} was written by a newer Pintally. It was left as it is. Install the newer version to open it.`,
      false,
    );
  }
  // One transaction for all: a file is at one version or another, never between. IMMEDIATE, so that a second
  // process that opens the same file waits and then finds nothing left to do.
  db.transaction(() => {
    for (
      let version = Number(db.pragma('user_version', { simple: true }));
      version < migrations.length;
      version++
    ) {
      db.exec(migrations[version] as string);
      db.pragma(`user_version = ${version + 1}`);
    }
  }).immediate();
}

function damagedFile(file: string, detail: string): YardFileProblem {
  return new YardFileProblem(
    `The yard file ${file} is damaged (${detail}). It was left as it is, nothing in it was changed. ` +
      'Put a backup in its place, or put it beside under another name and begin a new yard.',
    true,
  );
}

function asProblem(error: unknown, file: string): YardFileProblem {
  if (error instanceof YardFileProblem) return error;
  const code = String((error as { code?: unknown }).code ?? '');
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return new YardFileProblem(
      `The yard file ${file} is in use by another program. Nothing was changed. Close the other program and try again.`,
      false,
    );
  }
  if (code.startsWith('SQLITE_NOTADB') || code.startsWith('SQLITE_CORRUPT')) {
    return damagedFile(file, (error as Error).message);
  }
  return new YardFileProblem(
    `The yard file ${file} could not be opened (${(error as Error).message}). Nothing was changed. ` +
      'Check that the folder exists, that the disk is not full and that you may write there, then try again.',
    false,
  );
}

/**
 * Puts a damaged yard file beside, under a name that no file has yet, with the files that SQLite keeps next to it.
 * @returns where it was put
 */
export function putBeside(file: string, day: string): string {
  let target = `${file}.damaged-${day}`;
  for (let n = 2; existsSync(target); n++) target = `${file}.damaged-${day}-${n}`;
  for (const suffix of ['', '-wal', '-shm']) {
    if (existsSync(file + suffix)) renameSync(file + suffix, target + suffix);
  }
  return target;
}
