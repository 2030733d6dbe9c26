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
const other = (side: Side): Side => (side === 'main' ? 'theirs' : 'main');

/** What acts did to a record that the other file knows nothing of: which columns they changed; `all`, where they added it. */
type Touched = 'all' | Set<string>;

const keyOf = (table: string, uuid: string): string => `${table} ${uuid}`;

/**
 * What was edited of one file since the two were the same, from what each recorded of its acts. An act that both have done
 * is one from before.
 */
export function editsOf(db: Db, side: Side) {
  const known = `SELECT uuid FROM ${other(side)}.act UNION SELECT uuid FROM ${other(side)}.merged_act`;
  const touched = new Map<string, Touched>();
  const changes = db.prepare<[], { inTable: string; uuid: string; isAdded: 0 | 1; columns: string | null }>(
    `SELECT c.in_table AS inTable, c.row_uuid AS uuid, c.old_values IS NULL OR c.new_values IS NULL AS isAdded,
       iif(c.old_values IS NULL OR c.new_values IS NULL, NULL,
         (SELECT group_concat(key) FROM json_each(c.new_values))) AS columns
     FROM ${side}.act_change c JOIN ${side}.act a ON a.id = c.act_id WHERE a.uuid NOT IN (${known})`,
  );
  for (const { inTable, uuid, isAdded, columns } of changes.iterate()) {
    const key = keyOf(inTable, uuid);
    const before = touched.get(key);
    if (before === 'all') continue;
    if (isAdded) touched.set(key, 'all');
    else touched.set(key, new Set([...(before ?? []), ...(columns ?? '').split(',')]));
  }
  const deleted = new Set<string>();
  const deletions = db.prepare<[], { inTable: string; uuid: string }>(
    `SELECT c.in_table AS inTable, c.row_uuid AS uuid FROM ${side}.act_change c WHERE c.new_values IS NULL`,
  );
  for (const { inTable, uuid } of deletions.iterate()) deleted.add(keyOf(inTable, uuid));
  return {
    /** Whether anything of a record was. */
    has: (table: string, uuid: string): boolean => touched.has(keyOf(table, uuid)),
    hasColumn: (table: string, uuid: string, column: string): boolean => {
      const of = touched.get(keyOf(table, uuid));
      return of === 'all' || of?.has(column) === true;
    },
    /** Whether a record that is not there was deleted, now or long ago. */
    wasDeleted: (table: string, uuid: string): boolean => deleted.has(keyOf(table, uuid)),
    /** Records of a table that were. */
    deletedIn: (table: string): string[] =>
      [...deleted].filter((key) => key.startsWith(`${table} `)).map((key) => key.slice(table.length + 1)),
  };
}
export type EditsOf = ReturnType<typeof editsOf>;

const isSame = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/** The fields in which two records of one UUID differ, by whose edit that is. */
export function difference(
  named: YardTableName,
  mine: YardRecord,
  theirs: YardRecord,
  { ofMine, ofTheirs }: { ofMine: EditsOf; ofTheirs: EditsOf },
): { theirs: string[]; clashing: string[] } {
  const { table, fields } = tableOf(named);
  const found: { theirs: string[]; clashing: string[] } = { theirs: [], clashing: [] };
  for (const [field, of] of Object.entries(fields) as [string, Field][]) {
    if (isSame(mine[field], theirs[field])) continue;
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

/** The UUIDs that a record names, by the tables that these are in. */
export function namedBy(
  named: YardTableName,
  record: Record<string, unknown>,
): [table: string, uuid: string][] {
  const { fields } = tableOf(named);
  return Object.entries(record).flatMap(([field, value]): [string, string][] => {
    const kind = fields[field]?.kind;
    return typeof kind === 'object' && typeof value === 'string' ? [[kind.of, value]] : [];
  });
}
