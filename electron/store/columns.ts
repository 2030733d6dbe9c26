import { randomUUID } from 'node:crypto';
import type { Statement } from 'better-sqlite3';
import type { z } from 'zod';
import { parsedOnce } from './parsed-once.ts';
import { readJson } from './read-json.ts';
import type { Db } from './yard-file.ts';

type SqlValue = string | number | null;

/** A field that the file holds in another form than the program does. */
interface Coded<T> {
  column: string;
  encode(value: T): SqlValue;
  decode(value: SqlValue): T;
}

/** The column of every field of a record: its name, or its name and how the value is written there. */
export type Columns<R> = { readonly [F in keyof R & string]: string | Coded<R[F]> };

/**
 * Anything that JSON can hold; null is null in the file too. What is read is shared, and never to be changed.
 * @param standIn  instead of what the disk damaged
 */
export function json<T>(column: string, schema: z.ZodType<T>, standIn: T): Coded<T> {
  return {
    column,
    encode: (value) => (value === null ? null : JSON.stringify(value)),
    decode: parsedOnce((text) => (text === null ? (null as T) : (readJson(schema, String(text)) ?? standIn))),
  };
}

type Column = string | Coded<unknown>;

const entriesOf = <R>(columns: Columns<R>): [field: string, column: Column][] =>
  Object.entries(columns as Record<string, Column>);

const nameOf = (column: Column): string => (typeof column === 'string' ? column : column.column);

/** For a SELECT: every field under its own name. */
export function selected<R>(columns: Columns<R>, alias: string): string {
  return entriesOf(columns)
    .map(([field, column]) => `${alias}.${nameOf(column)} AS "${field}"`)
    .join(', ');
}

/** A row that `selected` asked for. Whatever else the row has is left out. */
export function decoded<R>(columns: Columns<R>, row: object): R {
  const values = row as Record<string, SqlValue>;
  return Object.fromEntries(
    entriesOf(columns).map(([field, column]) => {
      const value = values[field] as SqlValue;
      return [field, typeof column === 'string' ? value : column.decode(value)];
    }),
  ) as R;
}

function encoded<R>(columns: Columns<R>, fields: Partial<R>): [column: string, value: SqlValue][] {
  return Object.entries(fields).flatMap(([field, value]): [string, SqlValue][] => {
    const column = columns[field as keyof R & string] as Column | undefined;
    // Input that carries more than the table holds, as `id`, is no reason to fail.
    if (column === undefined || value === undefined) return [];
    return typeof column === 'string'
      ? [[column, value as SqlValue]]
      : [[column.column, column.encode(value)]];
  });
}

/** What a person changed of a record, and the version that they saw. */
export interface Edit<R> {
  id: number;
  basedOn: number;
  changed: Partial<R>;
}

/** Statements made once for each set of fields. */
export function statements(db: Db): (sql: string) => Statement<[SqlValue[]]> {
  const prepared = new Map<string, Statement<[SqlValue[]]>>();
  return (sql) => {
    const statement = prepared.get(sql) ?? db.prepare<[SqlValue[]]>(sql);
    prepared.set(sql, statement);
    return statement;
  };
}

/** SQL for the next id of a table: never one that a deleted row had, which may come back. */
export const nextId = (table: string): string =>
  `(SELECT max(coalesce((SELECT max(id) FROM ${table}), 0),
     coalesce((SELECT id FROM used_id WHERE in_table = '${table}'), 0)) + 1)`;

/** Adds rows to a table whose rows are edited: each with a UUID, by default a random one, at version 1. */
export function recordAdder<R extends object>(db: Db, table: string, columns: Columns<R>) {
  const prepare = statements(db);
  return (record: R, uuid: string = randomUUID()): number => {
    const pairs = encoded(columns, record);
    const sql = `INSERT INTO ${table} (id, uuid, ${pairs.map(([name]) => name)})
      VALUES (${nextId(table)}, ?, ${pairs.map(() => '?')})`;
    return Number(prepare(sql).run([uuid, ...pairs.map(([, value]) => value)]).lastInsertRowid);
  };
}

/**
 * Edits rows of such a table. An edit changes only the fields given. It answers null; or, where the record is at another
 * version than the edit was based on, the record as it is, and nothing was changed.
 *
 * @throws RangeError where there is no such record
 */
export function recordEditor<R extends object, Current>(
  db: Db,
  table: string,
  columns: Columns<R>,
  get: (id: number) => Current | undefined,
) {
  const prepare = statements(db);
  return ({ id, basedOn, changed }: Edit<R>): Current | null => {
    const pairs = encoded(columns, changed);
    const sql = `UPDATE ${table} SET ${pairs.map(([name]) => `${name} = ?, `).join('')}version = version + 1
      WHERE id = ? AND version = ?`;
    if (prepare(sql).run([...pairs.map(([, value]) => value), id, basedOn]).changes > 0) return null;
    const current = get(id);
    if (current === undefined) throw new RangeError(`There is no row ${id} in ${table}.`);
    return current;
  };
}

/** Adds rows to a table that is only ever added to; each bears the act that it belongs to. */
export function rowAppender<R extends object>(db: Db, table: string, columns: Columns<R>) {
  const fields = entriesOf(columns);
  const names = fields.map(([, column]) => nameOf(column));
  const statement = db.prepare(
    `INSERT INTO ${table} (uuid, ${names}, act_id)
     VALUES (?, ${names.map(() => '?')}, (SELECT act_id FROM act_now))`,
  );
  return (row: R, uuid: string = randomUUID()): number => {
    const values = fields.map(([field, column]): SqlValue => {
      const value = row[field as keyof R];
      return typeof column === 'string' ? (value as SqlValue) : column.encode(value);
    });
    return Number(statement.run(uuid, ...values).lastInsertRowid);
  };
}
