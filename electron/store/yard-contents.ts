import Database from 'better-sqlite3';
import { z } from 'zod';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { YardContents } from '../../shared-core/contract/backups.ts';
import { message } from '../../shared-core/words/message.ts';
import { UNKNOWN_YARD } from './backup-name.ts';
import { migrations } from './migrations.ts';
import { readJson } from './read-json.ts';
import { type Db, damageOf, layoutOf } from './yard-file.ts';
import { FIRST_TABLES } from './yard-identity.ts';

/** The setting under which a yard that was restored has the id of the yard whose place it took, for its backups. */
export const BACKUP_ID = 'backup-id';

/**
 * What is in a yard file of this or an earlier layout.
 * @param file  one that `withChosenYard` gives
 * @param isThorough  whether every page is checked, which takes seconds for a large file
 * @throws Refusal for a damaged file, and one that is no yard
 */
export function contentsIn(file: string, isThorough: boolean): YardContents {
  const db = new Database(file, { readonly: true, timeout: 2000 });
  try {
    refuseWithoutTables(db);
    if (isThorough && damageOf(db, true) !== null) throw new Refusal(message('refusal.restore-damaged'));
    const contents = contentsOf(db);
    if (contents.uuid === null && hasTable(db, 'yard')) throw new Refusal(message('refusal.restore-damaged'));
    return contents;
  } finally {
    db.close();
  }
}

/** One of another program may have our mark. */
function refuseWithoutTables(db: Db): void {
  const missing = FIRST_TABLES.filter((name) => !hasTable(db, name));
  if (missing.length === FIRST_TABLES.length) throw new Refusal(message('refusal.restore-no-yard'));
  if (missing.length > 0) throw new Refusal(message('refusal.restore-damaged'));
}

function contentsOf(db: Db): YardContents {
  const count = (table: string): number => Number(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get());
  return {
    uuid: uuidOf(db),
    stacks: count('stack'),
    boards: count('board'),
    readings: count('reading'),
    pictures: hasTable(db, 'picture') ? count('picture') : 0,
    lastRoundAt: (db.prepare('SELECT max(started_at) FROM round').pluck().get() ?? null) as string | null,
    layout: layoutOf(db),
    isOlderLayout: layoutOf(db) < migrations.length,
  };
}

const hasTable = (db: Db, name: string): boolean =>
  db.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?").get(name) !== undefined;

function uuidOf(db: Db): string | null {
  if (!hasTable(db, 'yard')) return null;
  return (db.prepare('SELECT uuid FROM yard').pluck().get() ?? null) as string | null;
}

/** Whether a file of any layout has anything that a person entered. */
export function holdsAnything(db: Db): boolean {
  return ['place', 'stack', 'board', 'round', 'reading'].some(
    (table) => hasTable(db, table) && db.prepare(`SELECT 1 FROM ${table} LIMIT 1`).get() !== undefined,
  );
}

/** The same of a file of any layout. */
export function backupIdIn(file: string): string {
  const db = new Database(file, { readonly: true, timeout: 2000 });
  try {
    return backupIdOf(db);
  } finally {
    db.close();
  }
}

/** Under which a yard's backups belong together: it stays the same when one of them is restored. */
export function backupIdOf(db: Db): string {
  const restored = db.prepare('SELECT value FROM setting WHERE key = ?').pluck().get(BACKUP_ID);
  const id = typeof restored === 'string' ? readJson(z.string(), restored) : undefined;
  if (id !== undefined) return id;
  return uuidOf(db)?.slice(0, 8) ?? UNKNOWN_YARD;
}

/** The names of a table's columns; none where there is no such table. */
export const columnsOf = (db: Db, schema: 'main' | 'other', table: string): string[] =>
  db.prepare<[string, string], string>('SELECT name FROM pragma_table_info(?, ?)').pluck().all(table, schema);
