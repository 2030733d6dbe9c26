import Database from 'better-sqlite3';
import type { Db } from './yard-file.ts';

/**
 * Whether all readings of a backup are in others, this one here and that one there. True of one that cannot be read: it
 * has none for anybody.
 * @param others  best those first that have most; one that cannot be read has none
 */
export function readingsAreElsewhere(backup: string, others: readonly string[]): boolean {
  const db = new Database(backup, { readonly: true, timeout: 2000 });
  try {
    if (!canRead(db)) return true;
    let missing = 'main.reading';
    for (const [index, other] of others.entries()) {
      if (!isAny(db, missing)) return true;
      missing = withoutThoseOf(db, other, missing, `temp.missing_${index}`);
    }
    return !isAny(db, missing);
  } finally {
    db.close();
  }
}

/** Saves those that another file has not as a table of that name. Both are of any layout. */
function withoutThoseOf(db: Db, other: string, missing: string, name: string): string {
  try {
    db.prepare('ATTACH ? AS other').run(other);
    db.exec(
      `CREATE TABLE ${name} AS SELECT id, taken_at, raw FROM ${missing} m WHERE NOT EXISTS
         (SELECT 1 FROM other.reading o WHERE o.id = m.id AND o.taken_at = m.taken_at AND o.raw = m.raw)`,
    );
    return name;
  } catch {
    return missing;
  } finally {
    detach(db);
  }
}

function detach(db: Db): void {
  try {
    db.exec('DETACH other');
  } catch {
    // It could not be attached.
  }
}

function canRead(db: Db): boolean {
  try {
    isAny(db, 'main.reading');
    return true;
  } catch {
    return false;
  }
}

const isAny = (db: Db, table: string): boolean =>
  db.prepare(`SELECT 1 FROM ${table} LIMIT 1`).get() !== undefined;
