import { type EndUse, endUseSchema } from '../../shared-core/wood/species/end-use.ts';
import { type Species, speciesSchema } from '../../shared-core/wood/species/species.ts';
import { parsedOnce } from './parsed-once.ts';
import { EVERY_YARD, uuidV5 } from './uuid.ts';
import type { Db } from './yard-file.ts';

interface CatalogueRow {
  record: string;
  built_in: number;
}

function catalogueReads<T>(db: Db, table: string, parseRecord: (record: unknown) => T) {
  const parse = parsedOnce((text: string) => parseRecord(JSON.parse(text)));
  const list = db.prepare<[], CatalogueRow>(
    `SELECT record, built_in FROM ${table} ORDER BY record ->> 'name'`,
  );
  const one = db.prepare<[string], CatalogueRow>(`SELECT record, built_in FROM ${table} WHERE id = ?`);
  return {
    list: (): (T & { builtIn: boolean })[] =>
      list.all().map((row) => ({ ...parse(row.record), builtIn: row.built_in === 1 })),
    get: (id: string): T | undefined => {
      const row = one.get(id);
      return row && parse(row.record);
    },
  };
}

/**
 * One catalogue (species or end uses): what is built in, brought up to date each time a yard is opened, and what the
 * user saved, which is never touched by that and wins over a built-in entry of the same id. An entry of one id is the
 * same record in every yard.
 */
function catalogueWrites<T extends { id: string }>(db: Db, table: string, kind: 'species' | 'end-use') {
  const putBuiltIn = db.prepare(
    `INSERT INTO ${table} (id, uuid, record, built_in) VALUES (?, ?, ?, 1)
     ON CONFLICT (id) DO UPDATE SET record = excluded.record, version = version + 1
       WHERE built_in = 1 AND record <> excluded.record`,
  );
  const putOwn = db.prepare(
    `INSERT INTO ${table} (id, uuid, record, built_in) VALUES (?, ?, ?, 0)
     ON CONFLICT (id) DO UPDATE SET record = excluded.record, built_in = 0, version = version + 1`,
  );
  const values = (entry: T) => [entry.id, uuidV5(EVERY_YARD, `${kind}:${entry.id}`), JSON.stringify(entry)];
  return {
    save: (entry: T): void => {
      putOwn.run(values(entry));
    },
    bringUpToDate: db.transaction((entries: readonly T[]): void => {
      for (const entry of entries) putBuiltIn.run(values(entry));
    }),
  };
}

/** An entry saved before sources were apart from notes has none. */
const withSource = (record: unknown) => ({ source: '', ...(record as object) });

export const speciesReads = (db: Db) =>
  catalogueReads<Species>(db, 'species', (record) => speciesSchema.parse(withSource(record)));
export const speciesWrites = (db: Db) => catalogueWrites<Species>(db, 'species', 'species');

export const endUseReads = (db: Db) =>
  catalogueReads<EndUse>(db, 'end_use', (record) => endUseSchema.parse(withSource(record)));
export const endUseWrites = (db: Db) => catalogueWrites<EndUse>(db, 'end_use', 'end-use');
