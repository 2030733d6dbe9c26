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
/** A sentence names no more than these. */
const MOST_NAMES = 6;
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
    const counts = Object.entries(ADDED).map(([what, table]) => [what, count(db, added(db, table))]);
    return {
      readings: count(
        db,
        `FROM main.reading m WHERE NOT EXISTS (SELECT 1 FROM other.reading o
           WHERE o.id = m.id AND o.taken_at = m.taken_at AND o.raw = m.raw)`,
      ),
      ...(Object.fromEntries(counts) as Record<keyof typeof ADDED, number>),
      roundDates: count(db, edited(db, 'round', IS_REDATED)),
      names: [
        ...['stack', 'board', 'place'].flatMap((table) => namesOf(db, table, added(db, table))),
        ...EDITED.flatMap((table) => namesOf(db, table, edited(db, table))),
      ].slice(0, MOST_NAMES),
      edits: EDITED.reduce((sum, table) => sum + count(db, edited(db, table)), 0),
    };
  } finally {
    db.close();
  }
}

/**
 * SQL for the rows of a table that the other yard lacks. Null for a table that an earlier layout lacks: what is in it may
 * have been made of other tables there.
 */
function added(db: Db, table: string): string | null {
  const columns = columnsOf(db, 'other', table);
  if (!columns.includes('id')) return null;
  const key = columns.includes('uuid') ? 'uuid' : 'id';
  return `FROM main.${table} m WHERE NOT EXISTS (SELECT 1 FROM other.${table} o WHERE o.${key} = m.${key})
    AND ${table === 'amendment' ? "m.field <> 'takenAt'" : 'true'}`;
}

const isOtherEdit = (table: string): string => (table === 'round' ? `NOT (${IS_REDATED})` : 'true');

/** SQL for the records that both have, and that were edited so since. */
function edited(db: Db, table: string, how = isOtherEdit(table)): string | null {
  const columns = columnsOf(db, 'other', table);
  if (!columns.includes('uuid') || !columns.includes('version')) return null;
  return `FROM main.${table} m JOIN other.${table} o ON o.uuid = m.uuid AND o.version < m.version AND ${how}`;
}

const count = (db: Db, rows: string | null): number =>
  rows === null ? 0 : Number(db.prepare(`SELECT count(*) ${rows}`).pluck().get());

/** What a person calls these rows. None where the rows of a table have no name. */
function namesOf(db: Db, table: string, rows: string | null): string[] {
  const name = table === 'board' ? 'code' : 'name';
  if (rows === null || !columnsOf(db, 'main', table).includes(name)) return [];
  return db
    .prepare(`SELECT m.${name} ${rows} ORDER BY m.${name} LIMIT ${MOST_NAMES}`)
    .pluck()
    .all() as string[];
}
