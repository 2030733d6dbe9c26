import Database from 'better-sqlite3';
import type { MissingParts } from '../../shared-core/contract/backups.ts';
import { columnsOf } from './yard-contents.ts';
import type { Db } from './yard-file.ts';

/** The tables whose missing rows are counted. */
const ADDED = {
  stacks: 'stack',
  boards: 'board',
  rounds: 'round',
  places: 'place',
  ovenChecks: 'oven_check',
  pictures: 'picture',
  corrections: 'amendment',
} as const;
const EDITED = ['stack', 'board', 'place', 'round', 'picture', 'meter', 'species', 'end_use'];
/** Of a round's date follow its end, and when each of its readings was taken. */
const IS_REDATED = 'o.started_at <> m.started_at';

/**
 * What a yard has that another one has not, so that it would be missing after a restore.
 * @param file   the yard, of this layout
 * @param other  one of this or an earlier layout, that `withChosenYard` gives
 */
export function missingPartsOf(file: string, other: string): MissingParts {
  const db = new Database(file, { readonly: true, timeout: 2000 });
  try {
    // Read-only like the connection that it is attached to.
    db.prepare('ATTACH ? AS other').run(other);
    const added = Object.entries(ADDED).map(([what, table]) => [what, addedIn(db, table)]);
    return {
      readings: count(
        db,
        `SELECT count(*) FROM main.reading m WHERE NOT EXISTS (SELECT 1 FROM other.reading o
           WHERE o.id = m.id AND o.taken_at = m.taken_at AND o.raw = m.raw)`,
      ),
      ...(Object.fromEntries(added) as Record<keyof typeof ADDED, number>),
      roundDates: editedIn(db, 'round', IS_REDATED),
      edits: EDITED.reduce((sum, table) => sum + editedIn(db, table, isOtherEdit(table)), 0),
    };
  } finally {
    db.close();
  }
}

/** Nothing of a table that an earlier layout has not: what is in it may have been made of other tables there. */
function addedIn(db: Db, table: string): number {
  const columns = columnsOf(db, 'other', table);
  if (!columns.includes('id')) return 0;
  const key = columns.includes('uuid') ? 'uuid' : 'id';
  return count(
    db,
    `SELECT count(*) FROM main.${table} m WHERE NOT EXISTS (SELECT 1 FROM other.${table} o WHERE o.${key} = m.${key})
       AND ${table === 'amendment' ? "m.field <> 'takenAt'" : 'true'}`,
  );
}

const isOtherEdit = (table: string): string => (table === 'round' ? `NOT (${IS_REDATED})` : 'true');

/** Records that both have, and that were edited so since. */
function editedIn(db: Db, table: string, how: string): number {
  const columns = columnsOf(db, 'other', table);
  if (!columns.includes('uuid') || !columns.includes('version')) return 0;
  return count(
    db,
    `SELECT count(*) FROM main.${table} m JOIN other.${table} o ON o.uuid = m.uuid AND o.version < m.version AND ${how}`,
  );
}

const count = (db: Db, select: string): number => Number(db.prepare(select).pluck().get());
