import type { Statement } from 'better-sqlite3';
import { z } from 'zod';
import {
  type Field,
  settingsOfPerson,
  tableOf,
  type YardRecord,
  type YardTableName,
} from '../../shared-core/exchange/yard-tables.ts';
import { nextId } from './columns.ts';
import { readJson } from './read-json.ts';
import { readingChecksum } from './reading-checksum.ts';
import { cacheDropper } from './row-caches.ts';
import type { Db } from './yard-file.ts';

type SqlValue = string | number | null;
type Row = Record<string, SqlValue>;

/** A record names one that is not there. */
export class RecordMissing extends Error {
  override name = 'RecordMissing';
}

const snakes = new Map<string, string>();
function snake(field: string): string {
  const made = snakes.get(field) ?? field.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  snakes.set(field, made);
  return made;
}

/** So many rows are read at a time, so that others can be written in between. */
const PAGE_ROWS = 1000;

/** The column of a field. */
export const columnOfField = (field: string, { kind }: Field): string =>
  typeof kind === 'object' ? `${snake(field)}_id` : snake(field);

/** Which rows of a table are a person's; all where there is nothing here. */
const OF_PERSON: Partial<Record<YardTableName, string>> = {
  species: 't.built_in = 0',
  endUses: 't.built_in = 0',
  settings: `instr(',${settingsOfPerson},', ',' || t.key || ',') > 0`,
};

/** In the order in which they were entered; where a later program may add some before others, by what names them. */
const ORDER: Partial<Record<YardTableName, string>> = { species: 't.id', endUses: 't.id', settings: 't.key' };

const fieldsOf = (named: YardTableName): [string, Field][] => Object.entries(tableOf(named).fields);

/** What of a table's values names rows by their ids: the one kind, made into the other. */
function translated(
  named: YardTableName,
  record: Record<string, unknown>,
  other: (table: 'meter' | 'meter_profile', id: unknown) => unknown,
  [from, to]: readonly ['meterId', 'meter'] | readonly ['meter', 'meterId'],
): Record<string, unknown> {
  const { value } = record;
  if (value === null || value === undefined) return record;
  if (named === 'amendments' && record.field === 'meterProfileId') {
    return { ...record, value: other('meter_profile', value) };
  }
  if (named !== 'settings') return record;
  if (record.key === 'typing-meter') {
    return { ...record, value: { [to]: other('meter', (value as Record<string, unknown>)[from]) } };
  }
  if (record.key === 'deleted-meters') {
    return { ...record, value: (value as unknown[]).map((each) => other('meter', each)) };
  }
  return record;
}

/** The records of a yard over a connection. @param schema  under which the yard is attached to it */
export function recordReads(db: Db, schema: 'main' | 'theirs' = 'main') {
  const uuidOf = (table: string, column: string) =>
    `(SELECT r.uuid FROM ${schema}.${table} r WHERE r.id = t.${column})`;

  function selectOf(named: YardTableName): string {
    const columns = fieldsOf(named).map(([field, { kind, ...rest }]) => {
      const column = columnOfField(field, { kind, ...rest });
      return `${typeof kind === 'object' ? uuidOf(kind.of, column) : `t.${column}`} AS "${field}"`;
    });
    return `SELECT t.rowid AS rowNumber, t.uuid, ${columns.join(', ')} FROM ${schema}.${tableOf(named).table} t`;
  }

  const uuids = new Map<string, Statement<[unknown], string>>();
  function uuidById(table: string, id: unknown): string | null {
    const statement =
      uuids.get(table) ??
      db.prepare<[unknown], string>(`SELECT uuid FROM ${schema}.${table} WHERE id = ?`).pluck();
    uuids.set(table, statement);
    return statement.get(id) ?? null;
  }

  function decoded(named: YardTableName, row: Row): YardRecord {
    const values = fieldsOf(named).map(([field, { kind }]) => {
      const value = row[field] as SqlValue;
      if (value === null) return [field, null];
      if (kind === 'flag') return [field, value === 1];
      return [field, kind === 'json' ? (readJson(z.unknown(), String(value)) ?? null) : value];
    });
    const record = Object.fromEntries(values) as Record<string, unknown>;
    return { uuid: String(row.uuid), ...translated(named, record, uuidById, ['meterId', 'meter']) };
  }

  const ofPerson = (named: YardTableName): string => OF_PERSON[named] ?? 'true';
  const ones = new Map<YardTableName, Statement<[string], Row>>();
  return {
    count: (named: YardTableName): number =>
      Number(
        db
          .prepare(`SELECT count(*) FROM ${schema}.${tableOf(named).table} t WHERE ${ofPerson(named)}`)
          .pluck()
          .get(),
      ),
    /** All that are a person's, in the order in which they were entered. @param unlessIn  leaves out those that this one has, too */
    all: function* (named: YardTableName, unlessIn?: 'main' | 'theirs'): Generator<YardRecord> {
      const unless = unlessIn
        ? `AND t.uuid NOT IN (SELECT uuid FROM ${unlessIn}.${tableOf(named).table})`
        : '';
      const which = `${selectOf(named)} WHERE ${ofPerson(named)} ${unless}`;
      const order = ORDER[named];
      if (order !== undefined) {
        for (const row of db.prepare<[], Row>(`${which} ORDER BY ${order}`).all()) yield decoded(named, row);
        return;
      }
      const page = db.prepare<[number], Row>(`${which} AND t.rowid > ? ORDER BY t.rowid LIMIT ${PAGE_ROWS}`);
      let rows = page.all(0);
      while (rows.length > 0) {
        for (const row of rows) yield decoded(named, row);
        rows = page.all(rows.at(-1)?.rowNumber as number);
      }
    },
    /** One, also of those that came with the program. */
    one: (named: YardTableName, uuid: string): YardRecord | undefined => {
      const statement = ones.get(named) ?? db.prepare<[string], Row>(`${selectOf(named)} WHERE t.uuid = ?`);
      ones.set(named, statement);
      const row = statement.get(uuid);
      return row && decoded(named, row);
    },
  };
}

export type RecordReads = ReturnType<typeof recordReads>;

const ACT_NOW = '(SELECT act_id FROM act_now)';

/** Writes records as they are, each under its own UUID. To be called within an act. */
export function recordWrites(db: Db) {
  const prepared = new Map<string, Statement<SqlValue[]>>();
  function statement(sql: string): Statement<SqlValue[]> {
    const known = prepared.get(sql) ?? db.prepare<SqlValue[]>(sql);
    prepared.set(sql, known);
    return known;
  }
  const hasColumn = new Map<string, boolean>();
  function has(table: string, column: string): boolean {
    const key = `${table} ${column}`;
    const known =
      hasColumn.get(key) ??
      (db.pragma(`table_info(${table})`) as { name: string }[]).some(({ name }) => name === column);
    hasColumn.set(key, known);
    return known;
  }

  /** @throws RecordMissing */
  function idOf(table: string, uuid: unknown): number | string {
    const row = statement(`SELECT id FROM ${table} WHERE uuid = ?`).get(uuid as string) as
      | { id: number | string }
      | undefined;
    if (row === undefined) throw new RecordMissing(`${table} ${String(uuid)}`);
    return row.id;
  }

  function encoded(named: YardTableName, record: Record<string, unknown>): [string, SqlValue][] {
    const { fields } = tableOf(named);
    const given = translated(named, record, idOf, ['meter', 'meterId']);
    return Object.entries(given).flatMap(([field, value]): [string, SqlValue][] => {
      const known = fields[field];
      if (known === undefined) return [];
      const column = columnOfField(field, known);
      if (known.kind === 'json') {
        // A column that may be null has no JSON null: there, nothing is written.
        const isNone =
          value === null &&
          known.schema.safeParse(null).success &&
          named !== 'amendments' &&
          named !== 'checkExclusions' &&
          named !== 'settings';
        return [[column, isNone ? null : JSON.stringify(value)]];
      }
      if (value === null || value === undefined) return [[column, null]];
      if (known.kind === 'flag') return [[column, Number(value)]];
      return [[column, typeof known.kind === 'object' ? idOf(known.kind.of, value) : (value as SqlValue)]];
    });
  }

  const dropCaches = cacheDropper(db);
  const remove = db.transaction((table: string, uuid: string): boolean => {
    dropCaches(table, uuid);
    return statement(`DELETE FROM ${table} WHERE uuid = ?`).run(uuid).changes > 0;
  });

  return {
    /** @throws RecordMissing; SqliteError for what the file refuses */
    add: (named: YardTableName, record: YardRecord): void => {
      const { table, fields } = tableOf(named);
      const pairs: [string, SqlValue][] = [['uuid', record.uuid], ...encoded(named, record)];
      if (named === 'readings') pairs.push(['checksum', checksumOf(Object.fromEntries(pairs))]);
      const made: [string, string][] = [];
      if (has(table, 'act_id')) made.push(['act_id', ACT_NOW]);
      else if (has(table, 'id') && !('id' in fields)) made.push(['id', nextId(table)]);
      const names = pairs.map(([name]) => name);
      const sql = `INSERT INTO ${table} (${[...names, ...made.map(([name]) => name)]})
        VALUES (${[...names.map(() => '?'), ...made.map(([, value]) => value)]})`;
      statement(sql).run(...pairs.map(([, value]) => value));
    },
    /** Changes these fields. @returns whether there is such a record */
    edit: (named: YardTableName, uuid: string, fields: Record<string, unknown>): boolean => {
      const pairs = encoded(named, fields);
      const set = pairs.map(([name]) => `${name} = ?, `).join('');
      const sql = `UPDATE ${tableOf(named).table} SET ${set}version = version + 1 WHERE uuid = ?`;
      return statement(sql).run(...pairs.map(([, value]) => value), uuid).changes > 0;
    },
    /** @returns whether it was deleted: not where there is none, or another record names it */
    remove: (named: YardTableName, uuid: string): boolean => {
      try {
        return remove(tableOf(named).table, uuid);
      } catch (error) {
        if ((error as { code?: unknown }).code === 'SQLITE_CONSTRAINT_FOREIGNKEY') return false;
        throw error;
      }
    },
  };
}
export type RecordWrites = ReturnType<typeof recordWrites>;

const checksumOf = (row: Row): number =>
  readingChecksum({
    uuid: row.uuid as string,
    roundId: row.round_id as number,
    boardId: row.board_id as number,
    spotIndex: row.spot_index as number | null,
    spot: row.spot as string,
    raw: row.raw as number,
    unit: row.unit as string,
    how: row.how as string,
    settled: row.settled as number | null,
    woodTempC: row.wood_temp_c as number | null,
    meterProfileId: row.meter_profile_id as number | null,
    takenAt: row.taken_at as string,
  });
