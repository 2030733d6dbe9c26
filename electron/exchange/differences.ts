import {
  type Field,
  tableOf,
  type YardRecord,
  type YardTableName,
} from '../../shared-core/exchange/yard-tables.ts';
import type { Db } from '../store/yard-file.ts';
import { columnOfField } from '../store/yard-records.ts';

/** One of the two files that are brought together: the own one, or the other. */
export type Side = 'main' | 'theirs';
export const other = (side: Side): Side => (side === 'main' ? 'theirs' : 'main');
/** The table of ids of the acts of a side that the other file knows nothing of; `findNewActs` makes it. */
export const newActsOf = (side: Side): string => `temp.new_acts_of_${side}`;

/** What acts did to a record that the other file knows nothing of: which columns they changed; `all`, where they added it. */
type Touched = 'all' | ReadonlySet<string>;

/**
 * What was edited of one file since the two were the same, from what each recorded of its acts. An act that both have done
 * is one from before. Each record is asked for on its own: a yard has more changes than memory should hold. To be called
 * after `findNewActs`.
 */
export function editsOf(db: Db, side: Side) {
  const changes = db.prepare<[string, string], { isAdded: 0 | 1; columns: string | null }>(
    `SELECT c.old_values IS NULL OR c.new_values IS NULL AS isAdded,
       (SELECT group_concat(key) FROM json_each(c.new_values)) AS columns
     FROM ${side}.act_change c JOIN ${newActsOf(side)} a ON a.id = c.act_id
     WHERE c.row_uuid = ? AND c.in_table = ?`,
  );
  const deletion = db.prepare<[string, string]>(
    `SELECT 1 FROM ${side}.act_change WHERE row_uuid = ? AND in_table = ? AND new_values IS NULL`,
  );
  const deletions = db.prepare<[], { inTable: string; uuid: string }>(
    `SELECT DISTINCT in_table AS inTable, row_uuid AS uuid FROM ${side}.act_change WHERE new_values IS NULL`,
  );
  /** Several of its columns are asked for one after the other. */
  let last: { table: string; uuid: string; touched: Touched } | null = null;

  function touchedOf(table: string, uuid: string): Touched {
    if (last?.uuid === uuid && last.table === table) return last.touched;
    const found = changes.all(uuid, table);
    const touched = found.some(({ isAdded }) => isAdded === 1)
      ? 'all'
      : new Set(found.flatMap(({ columns }) => columns?.split(',') ?? []));
    last = { table, uuid, touched };
    return touched;
  }

  return {
    /** Whether anything of a record was. */
    has: (table: string, uuid: string): boolean => {
      const touched = touchedOf(table, uuid);
      return touched === 'all' || touched.size > 0;
    },
    /** Whether any of its columns was but these. Of one that came whole, each is another anyway. */
    hasBut: (table: string, uuid: string, columns: readonly string[]): boolean => {
      const touched = touchedOf(table, uuid);
      return touched !== 'all' && [...touched].some((each) => !columns.includes(each));
    },
    hasColumn: (table: string, uuid: string, column: string): boolean => {
      const touched = touchedOf(table, uuid);
      return touched === 'all' || touched.has(column);
    },
    /** Whether a record that is not there was deleted, now or long ago. */
    wasDeleted: (table: string, uuid: string): boolean => deletion.get(uuid, table) !== undefined,
    /** All records that were, by their tables. */
    deleted: (): Map<string, string[]> => {
      const found = new Map<string, string[]>();
      for (const { inTable, uuid } of deletions.iterate()) {
        const uuids = found.get(inTable);
        if (uuids) uuids.push(uuid);
        else found.set(inTable, [uuid]);
      }
      return found;
    },
  };
}
type EditsOf = ReturnType<typeof editsOf>;
/** What was edited of each file. */
export interface Edits {
  ofMine: EditsOf;
  ofTheirs: EditsOf;
}

const isSame = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/** Fields in which two records differ: those that only the other file edited, and those that both did. */
export interface Difference {
  theirs: string[];
  clashing: string[];
}

/** Whether what a catalog says of an entry came with the program: of one answer with that. */
export const WITH_RECORD = 'builtIn';

/** The fields in which two records of one UUID differ, by whose edit that is. */
export function difference(
  named: YardTableName,
  mine: YardRecord,
  theirs: YardRecord,
  { ofMine, ofTheirs }: Edits,
): Difference {
  const { table, fields } = tableOf(named);
  const found: Difference = { theirs: [], clashing: [] };
  for (const [field, of] of Object.entries(fields) as [string, Field][]) {
    if (isSame(mine[field], theirs[field])) continue;
    if (field === WITH_RECORD && !isSame(mine.record, theirs.record)) continue;
    const column = columnOfField(field, of);
    const isMine = ofMine.hasColumn(table, mine.uuid, column);
    const isTheirs = ofTheirs.hasColumn(table, theirs.uuid, column);
    if (isTheirs && !isMine) found.theirs.push(field);
    else if (isTheirs || !isMine) found.clashing.push(field);
  }
  return found;
}

/** Fields that say when something was said, not what. */
const WHEN = ['uuid', 'at', 'version', 'givenAt', 'madeAt', 'chosenAt', 'weighedAt'];

/** Whether two records that were added on their own say the same. */
export const saysTheSame = (a: YardRecord, b: YardRecord): boolean =>
  Object.keys(a).every((field) => WHEN.includes(field) || isSame(a[field], b[field]));

/** The UUIDs that a record names, or some of its fields, by the tables that these are in. */
export function namedBy(
  named: YardTableName,
  record: Record<string, unknown>,
  of: readonly string[] = Object.keys(record),
): [table: string, uuid: string][] {
  const { fields } = tableOf(named);
  return of.flatMap((field): [string, string][] => {
    const kind = fields[field]?.kind;
    const value = record[field];
    return typeof kind === 'object' && typeof value === 'string' ? [[kind.of, value]] : [];
  });
}
