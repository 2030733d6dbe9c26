import { isNoSlip } from './amendment-table.ts';
import { recorded } from './change-triggers.ts';
import { statements } from './columns.ts';
import { holds, isUndone } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

export type Row = Record<string, string | number | null>;
/** A row that stands in the way of undoing, and the act that it came by; null where that is not known. */
export interface Found {
  uuid: string;
  actId: number | null;
}

/** One that names a row of another table. */
interface Reference {
  table: string;
  column: string;
}

/** Of tables that are only ever added to and of which the newest row holds: what a row holds for. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  amendment: ['reading_id', 'oven_check_id', 'oven_weight_id', 'sample_cut_id', 'sample_weight_id', 'field'],
  check_correction: ['meter_check_id'],
  check_exclusion: ['meter_check_id'],
  meter_profile: ['meter_id'],
  own_fit_choice: ['species_id', 'meter_id'],
  sample_section_dry: ['section_id'],
  spot_plan: ['round_id', 'board_id'],
  wood_temperature: ['round_id', 'board_id'],
};

/** The column that hides a row of these tables from everybody, while others refer to it. */
export const HIDDEN_BY: Readonly<Partial<Record<string, string>>> = {
  board: 'archived_at',
  stack: 'closed_at',
  place: 'closed_at',
  project: 'closed_at',
  round: 'undone_at',
  meter: 'undone_at',
  test_block: 'closed_at',
  species: 'undone_at',
  end_use: 'undone_at',
  air_sensor: 'closed_at',
};

/** SQL for a board that is hidden, and not sold or used. */
const BUT_UNDONE = `AND coalesce(c.archived_why ->> 'code', '') <> 'undone'`;

/** SQL for a row `c` of a table that is there for somebody. */
function shown(table: string): string {
  if (table === 'board') return BUT_UNDONE;
  if (table === 'reading') return `AND ${isNoSlip('c')}`;
  const hiddenBy = HIDDEN_BY[table];
  return hiddenBy === undefined ? '' : `AND c.${hiddenBy} IS NULL`;
}

/** In one question: one for each table would take a third of the time in which a yard is opened. */
function appendedTables(db: Db): string[] {
  const columns = db
    .prepare<[], { inTable: string; name: string }>(
      `SELECT t.name AS inTable, c.name FROM pragma_table_list t JOIN pragma_table_info(t.name) c
       WHERE t.schema = 'main' AND t.type = 'table' AND c.name IN ('act_id', 'uuid')`,
    )
    .all();
  const isThere = new Set(columns.map(({ inTable, name }) => `${inTable}.${name}`));
  return [...new Set(columns.map(({ inTable }) => inTable))].filter(
    (table) => isThere.has(`${table}.act_id`) && isThere.has(`${table}.uuid`),
  );
}

/** Columns of a person's records that name rows of a table; those that are made again from the rest do not count. */
function referencesOf(db: Db, appended: readonly string[]): Map<string, Reference[]> {
  const keys = db
    .prepare<[], Reference & { to: string }>(
      `SELECT t.name AS "table", k."from" AS "column", k."table" AS "to"
       FROM pragma_table_list t JOIN pragma_foreign_key_list(t.name) k WHERE t.schema = 'main'`,
    )
    .all();
  const references = new Map<string, Reference[]>();
  for (const table of [...recorded.filter((name) => name !== 'undone_row'), ...appended]) {
    for (const { column, to } of keys.filter((key) => key.table === table)) {
      if (column === 'act_id' || (table === 'board' && column === 'place_id')) continue;
      references.set(to, [...(references.get(to) ?? []), { table, column }]);
    }
  }
  return references;
}

/** Where an act's rows are, and what other acts did to them since. */
export function actParts(db: Db) {
  const appended = appendedTables(db);
  let found: ReadonlyMap<string, Reference[]> | undefined;
  const references = (): ReadonlyMap<string, Reference[]> => {
    found ??= referencesOf(db, appended);
    return found;
  };

  const actOfAdding = (uuid: string) =>
    `(SELECT h.act_id FROM act_change h WHERE h.row_uuid = ${uuid} AND h.old_values IS NULL ORDER BY h.id DESC LIMIT 1)`;

  const usersOf = (table: string) =>
    (references().get(table) ?? []).map(({ table: child, column }) => {
      const isAppended = appended.includes(child);
      // What a sensor logs by itself keeps no act of a person from being undone.
      const byPerson = child === 'air_log' ? 'AND c.act_id IS NOT NULL' : '';
      const isThere = `${isAppended ? `AND ${holds('c')}` : ''} ${shown(child)} ${byPerson}`;
      const act = isAppended ? 'c.act_id' : actOfAdding('c.uuid');
      return {
        child,
        find: db.prepare<{ id: unknown; acts: string }, Found>(
          // By its act first: most that names a round came with it.
          `SELECT c.uuid, ${act} AS actId FROM ${quoted(child)} c WHERE c.${quoted(column)} = @id
             AND coalesce(${act}, -1) NOT IN (SELECT value FROM json_each(@acts)) ${isThere}
           ORDER BY 2 DESC LIMIT 1`,
        ),
      };
    });
  const users = new Map<string, ReturnType<typeof usersOf>>();
  const readWith = db.prepare<{ id: unknown; acts: string }, Found>(
    `SELECT k.uuid, k.act_id AS actId FROM amendment k WHERE k.field = 'meterProfileId' AND k.value = CAST(@id AS TEXT)
       AND ${holds('k')}
       AND coalesce(k.act_id, -1) NOT IN (SELECT value FROM json_each(@acts)) ORDER BY 2 DESC LIMIT 1`,
  );

  const undoneAmong = (table: string) =>
    appended.flatMap((to) =>
      (references().get(to) ?? [])
        .filter((each) => each.table === table)
        .map(({ column }) => ({
          column,
          find: db.prepare<{ id: unknown; acts: string }, Found>(
            `SELECT c.uuid, c.act_id AS actId FROM ${to} c WHERE c.id = @id AND ${isUndone('c')}
               AND coalesce(c.act_id, -1) NOT IN (SELECT value FROM json_each(@acts))`,
          ),
        })),
    );
  const undoneNamed = new Map<string, ReturnType<typeof undoneAmong>>();

  const prepare = statements(db);
  const deletion = db.prepare<[string, unknown], { before: string; actId: number }>(
    `SELECT old_values AS before, act_id AS actId FROM act_change
     WHERE in_table = ? AND old_values ->> 'id' = ? AND new_values IS NULL ORDER BY id DESC LIMIT 1`,
  );

  return {
    /** Tables that are only ever added to, whose rows bear their act. */
    appended,
    /**
     * A row that is there, came by another act, and names this one, the newest of them; undefined where there is none.
     * @param acts  those that count as the same act, as JSON
     */
    userOf: (table: string, id: unknown, acts: string) => {
      if (!users.has(table)) users.set(table, usersOf(table));
      const amended = table === 'meter_profile' ? readWith.get({ id, acts }) : undefined;
      let newest = amended && { table: 'amendment', ...amended };
      for (const { child, find } of users.get(table) ?? []) {
        const found = find.get({ id, acts });
        if (found && (newest === undefined || (found.actId ?? -1) > (newest.actId ?? -1))) {
          newest = { table: child, ...found };
        }
      }
      return newest;
    },
    /** A row of a table that is only ever added to, which this one names and which was undone; undefined where all hold. */
    undoneOf: (table: string, row: Row, acts: string): Found | undefined => {
      if (!undoneNamed.has(table)) undoneNamed.set(table, undoneAmong(table));
      for (const { column, find } of undoneNamed.get(table) ?? []) {
        const found = row[column] === null ? undefined : find.get({ id: row[column], acts });
        if (found) return found;
      }
      return undefined;
    },
    /** A deleted row that this one names, and the act that deleted it; undefined if none was deleted. */
    lostOf: (table: string, row: Row): { table: string; before: string; actId: number } | undefined => {
      for (const [to, by] of references()) {
        for (const { column } of by.filter((each) => each.table === table)) {
          if (row[column] == null || prepare(`SELECT 1 FROM ${quoted(to)} WHERE id = ?`).get([row[column]])) {
            continue;
          }
          const found = deletion.get(to, row[column]);
          if (found) return { table: to, ...found };
        }
      }
      return undefined;
    },
    /** The newest row of another act that holds in place of this one. */
    laterThan: (table: string, row: Row, acts: string): Found | undefined => {
      const key = KEYS[table];
      if (key === undefined) return undefined;
      // By `= ?` and `IS NULL`, each of which finds its index.
      const same = key.map((name) => (row[name] === null ? `AND c.${name} IS NULL` : `AND c.${name} = ?`));
      const given = key.flatMap((name) => row[name] ?? []);
      return prepare(
        `SELECT c.uuid, c.act_id AS actId FROM ${table} c WHERE ${holds('c')} ${same.join(' ')} AND c.id > ?
           AND coalesce(c.act_id, -1) NOT IN (SELECT value FROM json_each(?)) ORDER BY c.id DESC LIMIT 1`,
      ).get([...given, row.id as number, acts]) as Found | undefined;
    },
  };
}
export type ActParts = ReturnType<typeof actParts>;
