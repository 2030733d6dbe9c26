import {
  closeSync,
  copyFileSync,
  mkdtempSync,
  openSync,
  readSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { migrations } from './migrations.ts';

/** "Pint": sets a yard file apart from any other SQLite file. Set since layout 10. */
export const APPLICATION_ID = 0x50696e74;

/** What earlier layouts had from the first on. */
export const FIRST_TABLES = ['species', 'place', 'stack', 'board', 'move', 'meter', 'round', 'reading'];

/** SQLite's largest page: the first one says whose file it is, and of which layout. */
const FIRST_PAGE_BYTES = 65_536;

/**
 * What a file is to this Pintally: `none` where there is nothing in it yet. `without-file` where only its newest
 * changes are left beside, which SQLite would delete. `cut` where a few bytes are left, which SQLite would overwrite: of
 * whatever file they are.
 *
 * SQLite creates files when it opens one, and writes to it when it closes it. So a copy is checked.
 * @throws SqliteError where it is no database
 */
export function identify(file: string): 'none' | 'without-file' | 'cut' | 'ours' | 'newer' | 'foreign' {
  const bytes = sizeOf(file);
  if (bytes === 0) return sizeOf(`${file}-wal`) > 0 ? 'without-file' : 'none';
  const { mark, layout } = askCopy(file, copyStart, (db) => ({
    mark: Number(db.pragma('application_id', { simple: true })),
    layout: Number(db.pragma('user_version', { simple: true })),
  }));
  if (mark === 0) {
    const tables = askCopy(file, copyFileSync, tablesOf);
    // Pintally ended while it made the file, where SQLite has a journal to undo that.
    const isUndone = sizeOf(`${file}-journal`) > 0 && sizeOf(`${file}-wal`) === 0;
    if (tables === null) return isUndone ? 'none' : 'cut';
    if (layout === 0 || !FIRST_TABLES.every((table) => tables.includes(table))) return 'foreign';
  } else if (mark !== APPLICATION_ID) return 'foreign';
  return layout > migrations.length ? 'newer' : 'ours';
}

/** The names of a file's tables; null where it has not even a first page. */
function tablesOf(db: Database.Database): unknown[] | null {
  if (db.pragma('page_count', { simple: true }) === 0) return null;
  return db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all();
}

/** Asks a copy of a file together with what SQLite has not yet written into it. */
function askCopy<T>(
  file: string,
  copy: (from: string, to: string) => void,
  ask: (db: Database.Database) => T,
): T {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-'));
  try {
    const copied = join(folder, 'yard.sqlite');
    copy(file, copied);
    for (const suffix of ['-wal', '-journal']) {
      if (sizeOf(file + suffix) > 0) copyFileSync(file + suffix, copied + suffix);
    }
    const db = new Database(copied);
    try {
      return ask(db);
    } finally {
      db.close();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Copies the first page; the rest is a hole, so that SQLite finds the file as long as it was. */
function copyStart(from: string, to: string): void {
  const start = Buffer.alloc(FIRST_PAGE_BYTES);
  const opened = openSync(from, 'r');
  const length = readSync(opened, start, 0, FIRST_PAGE_BYTES, 0);
  closeSync(opened);
  writeFileSync(to, start.subarray(0, length));
  truncateSync(to, sizeOf(from));
}

const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;
