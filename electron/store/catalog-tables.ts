import { builtInEndUses } from '../../shared-core/wood/species/built-in.ts';
import { type EndUse, endUseSchema, usualTolerance } from '../../shared-core/wood/species/end-use.ts';
import { type Species, speciesSchema } from '../../shared-core/wood/species/species.ts';
import { parsedOnce } from './parsed-once.ts';
import { readFields, readJson } from './read-json.ts';
import { standInEndUse, standInSpecies } from './stand-ins.ts';
import { EVERY_YARD, uuidV5 } from './uuid.ts';
import type { Db } from './yard-file.ts';

interface CatalogRow {
  id: string;
  /** Null where it was damaged when names were put apart. */
  name: string | null;
  record: string;
  version: number;
  built_in: number;
}

/**
 * An entry with how often it was edited, and whether it is as it came with the program. Of one that the disk damaged, what
 * can be read, with a stand-in for the rest.
 */
type Row<T> = T & { version: number; builtIn: boolean; isDamaged?: true };

/** How the text of an entry is read. */
interface Form<T> {
  /** Undefined where anything of it cannot be read. */
  whole(text: string): T | undefined;
  readable(text: string): Partial<T>;
  standIn(id: string, name: string): T;
}

function catalogReads<T extends { id: string }>(db: Db, table: string, form: Form<T>) {
  const wholeOf = parsedOnce((text: string): T | null => form.whole(text) ?? null);
  const select = `SELECT id, name, record, version, built_in FROM ${table}`;
  const list = db.prepare<[], CatalogRow>(`${select} WHERE undone_at IS NULL ORDER BY name, id`);
  const one = db.prepare<[string], CatalogRow>(`${select} WHERE id = ?`);
  const partOf = ({ id, name, record }: CatalogRow): T => ({
    ...form.standIn(id, name ?? id.replaceAll('-', ' ')),
    ...form.readable(record),
    id,
  });
  const toEntry = (row: CatalogRow): T => wholeOf(row.record) ?? partOf(row);
  const toRow = (row: CatalogRow): Row<T> => ({
    ...toEntry(row),
    version: row.version,
    builtIn: row.built_in === 1,
    ...(wholeOf(row.record) === null ? { isDamaged: true } : {}),
  });
  return {
    list: (): Row<T>[] => list.all().map(toRow),
    row: (id: string): Row<T> | undefined => {
      const row = one.get(id);
      return row && toRow(row);
    },
    get: (id: string): T | undefined => {
      const row = one.get(id);
      return row && toEntry(row);
    },
  };
}

/**
 * One catalog (species or end uses): what is built in, brought up to date each time a yard is opened, and what the
 * user saved, which is never touched by that and wins over a built-in entry of the same id. An entry of one id is the
 * same record in every yard.
 */
function catalogWrites<T extends { id: string; name: string }>(
  db: Db,
  table: string,
  kind: 'species' | 'end-use',
  { get, row }: ReturnType<typeof catalogReads<T>>,
) {
  const putBuiltIn = db.prepare(
    `INSERT INTO ${table} (id, uuid, name, record, built_in) VALUES (?, ?, ?, ?, 1)
     ON CONFLICT (id) DO UPDATE SET name = excluded.name, record = excluded.record, version = version + 1
       WHERE built_in = 1`,
  );
  const allBuiltIn = db.prepare<[], { id: string; name: string; record: string }>(
    `SELECT id, name, record FROM ${table} WHERE built_in = 1`,
  );
  const addOwn = db.prepare(`INSERT INTO ${table} (id, uuid, name, record, built_in) VALUES (?, ?, ?, ?, 0)`);
  const addAgain = db.prepare(
    `UPDATE ${table} SET name = ?, record = ?, undone_at = NULL, version = version + 1
     WHERE id = ? AND undone_at IS NOT NULL`,
  );
  const editOwn = db.prepare(
    `UPDATE ${table} SET name = ?, record = ?, built_in = 0, version = version + 1 WHERE id = ? AND version = ?`,
  );
  const values = (entry: T) => [
    entry.id,
    uuidV5(EVERY_YARD, `${kind}:${entry.id}`),
    entry.name,
    JSON.stringify(entry),
  ];
  return {
    /** An entry of the user's own; its id must be a new one. */
    add: (entry: T): void => {
      // One whose adding was undone, while others refer to it, is still in the file.
      const isBack = addAgain.run(entry.name, JSON.stringify(entry), entry.id).changes > 0;
      if (!isBack) addOwn.run(values(entry));
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
      const after = { ...before, ...changed };
      return editOwn.run(after.name, JSON.stringify(after), id, basedOn).changes > 0
        ? null
        : (row(id) ?? null);
    },
    /** @returns how many of these entries were there otherwise, or were not there */
    bringUpToDate: db.transaction((entries: readonly T[]): number => {
      const saved = new Map(allBuiltIn.all().map(({ id, ...entry }) => [id, entry]));
      // To put all of them again would take a tenth of the time in which a yard is opened.
      const others = entries.filter((entry) => {
        const before = saved.get(entry.id);
        return before?.name !== entry.name || before.record !== JSON.stringify(entry);
      });
      return others.reduce((changed, entry) => changed + putBuiltIn.run(values(entry)).changes, 0);
    }),
  };
}

/** An entry saved before sources were apart from notes has none. */
const savedSpecies = speciesSchema.extend({ source: speciesSchema.shape.source.default('') });
const savedEndUse = endUseSchema.extend({
  source: endUseSchema.shape.source.default(''),
  tolerancePoints: endUseSchema.shape.tolerancePoints.optional(),
  minIsAdvice: endUseSchema.shape.minIsAdvice.optional(),
  cautions: endUseSchema.shape.cautions.optional(),
});
/**
 * A use saved before uses had a tolerance has the usual one of its target. One saved before they had cautions has those of
 * the built-in use that it was.
 */
function endUseOf(text: string): EndUse | undefined {
  const saved = readJson(savedEndUse, text);
  const cautions = builtInEndUses.find(({ id }) => id === saved?.id)?.cautions ?? [];
  return saved && { ...usualTolerance(saved), cautions, ...saved };
}

export const speciesReads = (db: Db) =>
  catalogReads<Species>(db, 'species', {
    whole: (text) => readJson(savedSpecies, text),
    readable: (text) => readFields(savedSpecies, text),
    standIn: standInSpecies,
  });
export const speciesWrites = (db: Db, reads: ReturnType<typeof speciesReads>) =>
  catalogWrites<Species>(db, 'species', 'species', reads);

export const endUseReads = (db: Db) =>
  catalogReads<EndUse>(db, 'end_use', {
    whole: endUseOf,
    readable: (text) => readFields(endUseSchema, text),
    standIn: standInEndUse,
  });
export const endUseWrites = (db: Db, reads: ReturnType<typeof endUseReads>) =>
  catalogWrites<EndUse>(db, 'end_use', 'end-use', reads);
