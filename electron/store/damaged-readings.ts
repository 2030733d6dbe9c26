import Database from 'better-sqlite3';
import { AS_SAVED, isAsSaved, type SavedReading } from './reading-table.ts';
import type { Db } from './yard-file.ts';

/** So many are read at a time: whoever writes meanwhile is not held up. */
const SLICE = 10_000;

/** The ids of all readings that the disk changed. Takes seconds for 800,000. */
export function damagedReadings(file: string): number[] {
  return reading(file, (db) => {
    const slice = db.prepare<[number], SavedReading>(
      `SELECT ${AS_SAVED} FROM reading g WHERE g.id > ? ORDER BY g.id LIMIT ${SLICE}`,
    );
    const found: number[] = [];
    for (let rows = slice.all(0); rows.length > 0; rows = slice.all(rows.at(-1)!.id)) {
      found.push(...rows.filter((row) => !isAsSaved(row)).map(({ id }) => id));
    }
    return found;
  });
}

/** Whether a backup has all these readings of a yard as they were saved. */
export function hasAsSaved(backup: string, file: string, ids: readonly number[]): boolean {
  const select = `SELECT ${AS_SAVED} FROM reading g WHERE g.id IN (SELECT value FROM json_each(?)) ORDER BY g.id`;
  const rowsIn = (from: string): SavedReading[] =>
    reading(from, (db) => db.prepare<[string], SavedReading>(select).all(JSON.stringify(ids)));
  const damaged = rowsIn(file);
  const saved = rowsIn(backup);
  return (
    saved.length === ids.length &&
    saved.every((row, index) => isAsSaved(row) && isSameReading(row, damaged[index]!))
  );
}

/** The disk changed one thing of it, if at all: another reading of the same number differs in more. */
const isSameReading = (one: SavedReading, other: SavedReading): boolean =>
  one.uuid === other.uuid || (one.raw === other.raw && one.takenAt === other.takenAt);

function reading<T>(file: string, read: (db: Db) => T): T {
  const db = new Database(file, { readonly: true, timeout: 2000 });
  try {
    return read(db);
  } finally {
    db.close();
  }
}
