import { type EndUse, endUseSchema } from '../../shared-core/wood/species/end-use.ts';
import { type Species, speciesSchema } from '../../shared-core/wood/species/species.ts';
import { parsedOnce } from './parsed-once.ts';
import { EVERY_YARD, uuidV5 } from './uuid.ts';
import type { Db } from './yard-file.ts';

interface CatalogRow {
  record: string;
  version: number;
  built_in: number;
}

/** An entry with how often it was edited, and whether it is as it came with the program. */
type Row<T> = T & { version: number; builtIn: boolean };

function catalogReads<T>(db: Db, table: string, parseRecord: (record: unknown) => T) {
  const parse = parsedOnce((text: string) => parseRecord(JSON.parse(text)));
  const select = `SELECT record, version, built_in FROM ${table}`;
  const list = db.prepare<[], CatalogRow>(`${select} ORDER BY record ->> 'name'`);
  const one = db.prepare<[string], CatalogRow>(`${select} WHERE id = ?`);
  const toRow = ({ record, version, built_in }: CatalogRow): Row<T> => ({
    ...parse(record),
    version,
    builtIn: built_in === 1,
  });
  return {
    list: (): Row<T>[] => list.all().map(toRow),
    row: (id: string): Row<T> | undefined => {
      const row = one.get(id);
      return row && toRow(row);
    },
    get: (id: string): T | undefined => {
      const row = one.get(id);
      return row && parse(row.record);
    },
  };
}

/**
 * One catalog (species or end uses): what is built in, brought up to date each time a yard is opened, and what the
 * user saved, which is never touched by that and wins over a built-in entry of the same id. An entry of one id is the
 * same record in every yard.
 */
function catalogWrites<T extends { id: string }>(
  db: Db,
  table: string,
  kind: 'species' | 'end-use',
  { get, row }: ReturnType<typeof catalogReads<T>>,
) {
  const putBuiltIn = db.prepare(
    `INSERT INTO ${table} (id, uuid, record, built_in) VALUES (?, ?, ?, 1)
     ON CONFLICT (id) DO UPDATE SET record = excluded.record, version = version + 1
       WHERE built_in = 1 AND record <> excluded.record`,
  );
  const addOwn = db.prepare(`INSERT INTO ${table} (id, uuid, record, built_in) VALUES (?, ?, ?, 0)`);
  const editOwn = db.prepare(
    `UPDATE ${table} SET record = ?, built_in = 0, version = version + 1 WHERE id = ? AND version = ?`,
  );
  const values = (entry: T) => [entry.id, uuidV5(EVERY_YARD, `${kind}:${entry.id}`), JSON.stringify(entry)];
  return {
    /** An entry of the user's own; its id must be a new one. */
    add: (entry: T): void => {
      addOwn.run(values(entry));
    },
    /**
     * Changes only the fields given, and makes the entry the user's own. It answers null; or, where the entry is at
     * another version than the edit was based on, the entry as it is, and nothing was changed.
     *
     * @throws RangeError where there is no such entry
     */
    edit: ({ id, basedOn, changed }: { id: string; basedOn: number; changed: Partial<T> }): Row<T> | null => {
      const before = get(id);
      if (before === undefined) throw new RangeError(`There is no entry ${id} in ${table}.`);
      const record = JSON.stringify({ ...before, ...changed });
      return editOwn.run(record, id, basedOn).changes > 0 ? null : (row(id) ?? null);
    },
    /** @returns how many of these entries were there otherwise, or were not there */
    bringUpToDate: db.transaction((entries: readonly T[]): number =>
      entries.reduce((changed, entry) => changed + putBuiltIn.run(values(entry)).changes, 0),
    ),
  };
}

/** An entry saved before sources were apart from notes has none. */
const withSource = (record: unknown) => ({ source: '', ...(record as object) });

export const speciesReads = (db: Db) =>
  catalogReads<Species>(db, 'species', (record) => speciesSchema.parse(withSource(record)));
export const speciesWrites = (db: Db, reads: ReturnType<typeof speciesReads>) =>
  catalogWrites<Species>(db, 'species', 'species', reads);

export const endUseReads = (db: Db) =>
  catalogReads<EndUse>(db, 'end_use', (record) => endUseSchema.parse(withSource(record)));
export const endUseWrites = (db: Db, reads: ReturnType<typeof endUseReads>) =>
  catalogWrites<EndUse>(db, 'end_use', 'end-use', reads);
