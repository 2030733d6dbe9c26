import Database from 'better-sqlite3';
import { type SalvageKind, type SalvageReport, salvageKinds } from '../../../shared-core/contract/salvage.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { recordChanges } from '../change-triggers.ts';
import { migrations } from '../migrations.ts';
import { missingNewestReadings } from '../newest-act.ts';
import type { Db } from '../yard-file.ts';
import { isTableLeaf, type Row, readPage, type Value } from './b-tree.ts';
import { createLostParents } from './lost-parents.ts';
import { openPages, type Pages } from './page-image.ts';
import { fits, layOut, layoutLike, type Table, tablesOf } from './tables.ts';

/** More boards, stacks, or rounds than this are not named. */
const MOST_NAMED = 50;

/** What people count; everything else is `other`. */
const KINDS: Record<string, SalvageKind> = {
  place: 'places',
  stack: 'stacks',
  board: 'boards',
  round: 'rounds',
  reading: 'readings',
};

/**
 * Saves what can be read of a damaged yard file into a new one, row by row. The damaged file and its WAL are only read.
 * The new file has our own layout of the damaged file's number, to be migrated when it is opened; caches are left empty.
 *
 * Each table's b-tree is walked around pages that cannot be read; then rows on pages that no tree leads to any more are
 * given to the table that they fit. A row whose parent is lost gets one named as recovered.
 * @param target  an empty file
 */
export function salvage(file: string, target: string): SalvageReport {
  const pages = openPages(file);
  const db = new Database(target);
  try {
    const report = db.transaction(() => fill(pages, db, file))();
    db.pragma('journal_mode = WAL');
    return report;
  } finally {
    db.close();
    pages.close();
  }
}

interface SchemaRow {
  kind: Value | undefined;
  name: string;
  table: string;
  root: number;
}

function fill(pages: Pages, db: Db, file: string): SalvageReport {
  const claimed = new Set<number>();
  const free = pages.free();
  const leaves: number[] = [];
  for (let number = 1; number <= pages.count; number++) {
    if (!free.has(number) && isTableLeaf(pages, number)) leaves.push(number);
  }
  const schema = schemaOf(pages, claimed, leaves);
  const known = pages.layout;
  const isKnown = known !== null && known >= 1 && known <= migrations.length;
  const layout = isKnown ? known : layoutLike(new Set(schema.map(({ name }) => name)));
  layOut(db, layout);

  const tables = tablesOf(db);
  const byName = new Map(tables.map((table) => [table.name, table]));
  const idSets = new Map<string, Set<Value>>();
  const ids = (name: string): Set<Value> => {
    const set = idSets.get(name) ?? new Set<Value>();
    idSets.set(name, set);
    return set;
  };
  const lost = createLostParents(db, byName, ids);
  const rootOf = (name: string): number | undefined =>
    schema.find((row) => row.kind === 'table' && row.name === name)?.root;

  // What every tree leads to is claimed first, also of tables that are not saved: the rest has lost its tree.
  const treeOf = new Map<string, number[]>();
  for (const { kind, name, root } of schema) {
    if (kind === 'table') treeOf.set(name, leavesUnder(pages, root, claimed));
  }
  const strays = strayPages(
    pages,
    leaves.filter((number) => !claimed.has(number)),
    tables,
    schema,
  );

  const counts = new Map<string, { saved: number; damaged: number; indexed: number }>();
  if (byName.has('yard')) db.exec('DELETE FROM yard');
  for (const table of tables) {
    const count = { saved: 0, damaged: 0, indexed: 0 };
    counts.set(table.name, count);
    const ownPages = rootOf(table.name) === undefined ? [] : (treeOf.get(table.name) ?? []);
    for (const [number, isStray] of [
      ...ownPages.map((number) => [number, false] as const),
      ...(strays.get(table.name) ?? []).map((number) => [number, true] as const),
    ]) {
      const content = readPage(pages, number);
      count.damaged += isStray ? 0 : (content?.bad ?? 0);
      for (const row of content?.rows ?? []) {
        if (fits(table, row) && insert(db, table, row, ids, lost.make)) count.saved++;
        else if (!isStray) count.damaged++;
      }
    }
    count.indexed = uuidsIn(pages, schema, table.name).size;
  }
  if (byName.has('yard') && counts.get('yard')?.saved === 0) addYard(db);
  placeBoards(db, ids('place'));
  // One of an earlier layout gets them with its migration.
  if (layout === migrations.length) recordChanges(db);

  const kinds = new Map<SalvageKind, SalvageReport['kinds'][number]>();
  for (const [name, { saved, damaged, indexed }] of counts) {
    const kind = KINDS[name] ?? 'other';
    const sum = kinds.get(kind) ?? { kind, saved: 0, lost: 0 };
    sum.saved += saved;
    sum.lost += Math.max(damaged, indexed - saved, 0);
    kinds.set(kind, sum);
  }
  const readings = kinds.get('readings');
  if (readings) readings.lost = Math.max(readings.lost, missingNewestReadings(file, db));
  return {
    kinds: salvageKinds.flatMap((kind) => kinds.get(kind) ?? []),
    recovered: recoveredIn(db),
    damagedFile: null,
    roundsMadeAgain: lost.roundsMadeAgain.slice(0, MOST_NAMED),
  };
}

/** Which tables and indexes there are and where each begins, also where only parts of that list can be read. */
function schemaOf(pages: Pages, claimed: Set<number>, leaves: readonly number[]): SchemaRow[] {
  const found = new Map<string, SchemaRow>();
  const own = leavesUnder(pages, 1, claimed);
  for (const number of [...own, ...leaves.filter((each) => !claimed.has(each))]) {
    const rows = readPage(pages, number)?.rows ?? [];
    const isSchema = rows.length > 0 && rows.every(({ values }) => isSchemaRow(values));
    if (!isSchema) continue;
    claimed.add(number);
    for (const { values } of rows) {
      const [kind, name, table, root] = values;
      if (!found.has(String(name))) {
        found.set(String(name), { kind, name: String(name), table: String(table), root: Number(root) });
      }
    }
  }
  return [...found.values()];
}

const isSchemaRow = (values: readonly Value[]): boolean =>
  values.length === 5 &&
  ['table', 'index', 'trigger', 'view'].includes(String(values[0])) &&
  typeof values[1] === 'string' &&
  Number.isSafeInteger(values[3]);

/** The pages with rows of a tree, in its order. A page belongs to one tree. */
function leavesUnder(pages: Pages, root: number, claimed: Set<number>): number[] {
  const leaves: number[] = [];
  const waiting = [root];
  for (let number = waiting.pop(); number !== undefined; number = waiting.pop()) {
    if (number < 1 || number > pages.count || claimed.has(number)) continue;
    const content = readPage(pages, number);
    if (content === null) continue;
    claimed.add(number);
    if (content.children.length === 0) leaves.push(number);
    waiting.push(...content.children.reverse());
  }
  return leaves;
}

/** Pages that no tree leads to, by the one table that all of their rows fit, or whose index names them. */
function strayPages(
  pages: Pages,
  numbers: readonly number[],
  tables: readonly Table[],
  schema: readonly SchemaRow[],
): Map<string, number[]> {
  const strays = new Map<string, number[]>();
  for (const number of numbers) {
    const rows = readPage(pages, number)?.rows ?? [];
    if (rows.length === 0) continue;
    const fitting = tables.filter((table) => rows.every((row) => fits(table, row)));
    const table = fitting.length === 1 ? fitting[0] : fitting.find(({ name }) => isIndexed(name, rows));
    if (table) strays.set(table.name, [...(strays.get(table.name) ?? []), number]);
  }
  return strays;

  function isIndexed(name: string, rows: readonly Row[]): boolean {
    const uuids = uuidsIn(pages, schema, name);
    return rows.some(({ values }) => values.some((value) => uuids.has(value)));
  }
}

/** Every UUID that the table's own index of them has. */
function uuidsIn(pages: Pages, schema: readonly SchemaRow[], table: string): Set<Value> {
  const uuids = new Set<Value>();
  const visited = new Set<number>();
  for (const { name, root } of schema.filter((row) => row.kind === 'index' && row.table === table)) {
    if (!name.startsWith('sqlite_autoindex_')) continue;
    const waiting = [root];
    for (let number = waiting.pop(); number !== undefined; number = waiting.pop()) {
      if (number < 1 || number > pages.count || visited.has(number)) continue;
      visited.add(number);
      const content = readPage(pages, number);
      for (const { values } of content?.rows ?? []) {
        if (values.length === 2 && /^[0-9a-f-]{36}$/.test(String(values[0]))) uuids.add(values[0] as Value);
      }
      waiting.push(...(content?.children ?? []));
    }
  }
  return uuids;
}

/** @returns whether the row is in the new file now */
function insert(
  db: Db,
  table: Table,
  { rowid, values }: Row,
  ids: (table: string) => Set<Value>,
  makeParent: (table: string, id: Value, child: Record<string, Value | undefined>) => boolean,
): boolean {
  const given: Record<string, Value | undefined> = {};
  table.columns.forEach((column, at) => {
    const value = values[at];
    if (value !== undefined) given[column.name] = column.isRowid ? rowid : column.isCache ? null : value;
  });
  for (const { name, parent, isRequired } of table.columns) {
    const id = given[name];
    if (parent === null || id === undefined || id === null || parent === table.name) continue;
    if (ids(parent).has(id) || makeParent(parent, id, given)) continue;
    // Who did it is lost, what was done is not.
    if (parent !== 'act' || isRequired) return false;
    given[name] = null;
  }
  const columns = Object.keys(given);
  try {
    const { changes } = db
      .prepare(
        `INSERT OR IGNORE INTO ${table.name} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
      )
      .run(Object.values(given));
    if (changes === 0) return false;
  } catch {
    return false;
  }
  ids(table.name).add(given.id ?? rowid);
  return true;
}

function addYard(db: Db): void {
  db.exec(
    "INSERT INTO yard SELECT 1, uuid_random(), coalesce(min(started_at), strftime('%Y-%m-%dT%H:%M:%fZ', 'now')) FROM round",
  );
}

/** A board whose moves are lost is where its stack is. */
function placeBoards(db: Db, places: ReadonlySet<Value>): void {
  if (places.size === 0) return;
  const hasUuid = (db.pragma('table_info(move)') as { name: string }[]).some(({ name }) => name === 'uuid');
  db.exec(
    `INSERT INTO move (${hasUuid ? 'uuid, ' : ''}board_id, place_id, since)
     SELECT ${hasUuid ? 'uuid_random(), ' : ''}b.id, s.place_id, coalesce((SELECT min(r.started_at) FROM round r
       WHERE r.stack_id = s.id), strftime('%Y-%m-%dT%H:%M:%fZ', 'now'))
     FROM board b JOIN stack s ON s.id = b.stack_id WHERE b.id NOT IN (SELECT board_id FROM move)`,
  );
}

/** Names of boards and stacks that had to be made again. */
function recoveredIn(db: Db): string[] {
  return db
    .prepare(
      `SELECT code FROM board WHERE code LIKE 'RECOVERED-%' UNION ALL
       SELECT name FROM stack WHERE name LIKE ? || ' %' LIMIT ${MOST_NAMED}`,
    )
    .pluck()
    .all(english['recovered.stack']) as string[];
}
