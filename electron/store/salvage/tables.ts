import Database from 'better-sqlite3';
import { cacheColumns, recordChanges } from '../change-triggers.ts';
import { migrations } from '../migrations.ts';
import type { Db } from '../yard-file.ts';
import type { Row, Value } from './b-tree.ts';

export interface Column {
  name: string;
  type: string;
  isRequired: boolean;
  hasDefault: boolean;
  /** Its value is the row's number. */
  isRowid: boolean;
  isCache: boolean;
  /** The table whose row it names. */
  parent: string | null;
}
export interface Table {
  name: string;
  columns: Column[];
}

/** Made again from the rest, or of the moment. */
const NOT_SAVED =
  /^(finding|finding_due|round_suspicion|round_doubt|outlook|outlook_due|core_history|lineage|thumbnail|packed_picture|act_now|sqlite_.*)$/;

/** Brings an empty file to a layout. */
export function layOut(db: Db, layout: number): void {
  db.pragma('foreign_keys = OFF');
  for (const { sql, prepare } of migrations.slice(0, layout)) {
    prepare?.(db);
    db.exec(sql);
  }
  db.pragma(`user_version = ${layout}`);
  // An earlier one gets these when it is migrated.
  if (layout === migrations.length) recordChanges(db);
}

/** The tables of a layout that hold what a person entered, parents before children. */
export function tablesOf(db: Db): Table[] {
  const listed = db.pragma('table_list') as { name: string; schema: string; type: string; wr: number }[];
  const names = listed
    .filter(
      ({ name, schema, type, wr }) =>
        schema === 'main' && type === 'table' && wr === 0 && !NOT_SAVED.test(name),
    )
    .map(({ name }) => name);
  const tables = new Map(names.map((name) => [name, { name, columns: columnsOf(db, name) }]));
  const ordered = new Set<Table>();
  function add(table: Table | undefined, above: readonly string[]): void {
    if (table === undefined || ordered.has(table) || above.includes(table.name)) return;
    for (const { parent } of table.columns) {
      if (parent !== null) add(tables.get(parent), [...above, table.name]);
    }
    ordered.add(table);
  }
  // Readings first: the board of one that lost it is found by its round.
  add(tables.get('reading'), []);
  for (const table of tables.values()) add(table, []);
  return [...ordered];
}

function columnsOf(db: Db, table: string): Column[] {
  const keys = db.pragma(`foreign_key_list(${table})`) as { from: string; table: string }[];
  const listed = db.pragma(`table_info(${table})`) as {
    name: string;
    type: string;
    notnull: number;
    dflt_value: string | null;
    pk: number;
  }[];
  return listed.map(({ name, type, notnull, dflt_value, pk }) => ({
    name,
    type,
    isRequired: notnull === 1 || pk > 0,
    hasDefault: dflt_value !== null,
    isRowid: pk === 1 && type === 'INTEGER',
    isCache: cacheColumns(table).includes(name),
    parent: keys.find(({ from }) => from === name)?.table ?? null,
  }));
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Whether a row has the table's columns, each with a value of its type. */
export function fits({ columns }: Table, { rowid, values }: Row): boolean {
  if (values.length > columns.length || rowid < 1) return false;
  return columns.every((column, at) => {
    const value = values[at];
    if (value === undefined) return column.hasDefault || !column.isRequired;
    if (column.isRowid) return value === null;
    if (value === null) return !column.isRequired;
    return hasType(column, value);
  });
}

function hasType({ name, type }: Column, value: Value): boolean {
  if (type === 'INTEGER') return Number.isSafeInteger(value);
  if (type === 'REAL') return Number.isFinite(value);
  if (type !== 'TEXT' || typeof value !== 'string') return false;
  if (name === 'uuid') return UUID.test(value);
  return !/^(at|since|.*_at)$/.test(name) || /^\d{4}-\d\d-\d\dT/.test(value);
}

/** The layout whose tables, indexes and triggers are most like these; the newest where there are none. */
export function layoutLike(names: ReadonlySet<string>): number {
  let best = { layout: migrations.length, alike: 0 };
  for (let layout = migrations.length; layout > 0; layout--) {
    const db = new Database(':memory:');
    layOut(db, layout);
    const its = db.prepare('SELECT name FROM sqlite_schema').pluck().all() as string[];
    db.close();
    const shared = its.filter((name) => names.has(name)).length;
    const alike = shared / (its.length + names.size - shared);
    if (alike > best.alike) best = { layout, alike };
  }
  return best.layout;
}
