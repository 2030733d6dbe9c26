import { type EndUse, endUseSchema } from '../../shared-core/wood/species/end-use.ts';
import { type Species, speciesSchema } from '../../shared-core/wood/species/species.ts';
import { parsedOnce } from './parsed-once.ts';
import type { Db } from './yard-file.ts';

interface CatalogueRow {
  record: string;
  built_in: number;
}

/**
 * One catalogue (species or uses): what is built in, brought up to date each time a yard is opened, and what the user
 * saved, which is never touched by that and wins over a built-in entry of the same id.
 */
function catalogueTable<T extends { id: string }>(
  db: Db,
  table: 'species' | 'use',
  parseRecord: (record: unknown) => T,
) {
  const parse = parsedOnce((text) => parseRecord(JSON.parse(text)));
  const list = db.prepare<[], CatalogueRow>(
    `SELECT record, built_in FROM ${table} ORDER BY record ->> 'name'`,
  );
  const one = db.prepare<[string], CatalogueRow>(`SELECT record, built_in FROM ${table} WHERE id = ?`);
  const putBuiltIn = db.prepare(
    `INSERT INTO ${table} (id, record, built_in) VALUES (?, ?, 1)
     ON CONFLICT (id) DO UPDATE SET record = excluded.record WHERE built_in = 1 AND record <> excluded.record`,
  );
  const putOwn = db.prepare(
    `INSERT INTO ${table} (id, record, built_in) VALUES (?, ?, 0)
     ON CONFLICT (id) DO UPDATE SET record = excluded.record, built_in = 0`,
  );
  return {
    list: (): (T & { builtIn: boolean })[] =>
      list.all().map((row) => ({ ...parse(row.record), builtIn: row.built_in === 1 })),
    get: (id: string): T | undefined => {
      const row = one.get(id);
      return row && parse(row.record);
    },
    save: (entry: T): void => {
      putOwn.run(entry.id, JSON.stringify(entry));
    },
    bringUpToDate: db.transaction((entries: readonly T[]): void => {
      for (const entry of entries) putBuiltIn.run(entry.id, JSON.stringify(entry));
    }),
  };
}

/** An entry saved before sources were apart from notes has none. */
const withSource = (record: unknown) => ({ source: '', ...(record as object) });
export const speciesTable = (db: Db) =>
  catalogueTable<Species>(db, 'species', (record) => speciesSchema.parse(withSource(record)));
export const endUsesTable = (db: Db) =>
  catalogueTable<EndUse>(db, 'use', (record) => endUseSchema.parse(withSource(record)));
