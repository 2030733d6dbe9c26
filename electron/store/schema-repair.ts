import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';
import { migrations } from './migrations.ts';
import { layOut } from './salvage/tables.ts';
import type { Db } from './yard-file.ts';

/** One table, index or trigger, as `sqlite_schema` has it. */
interface Entry {
  type: string;
  name: string;
  tbl_name: string;
  /** Null of an index that belongs to its table's own text. */
  sql: string | null;
}
interface EntryOfFile extends Entry {
  rowid: number;
}
const FIELDS = ['type', 'name', 'tbl_name', 'sql'] as const;

/** What the newest layout has, and what a file has in its place; null where there is nothing like it. */
export interface SchemaFault {
  right: Entry;
  found: EntryOfFile | null;
}

/** What the entries of the newest layout come to (`digestOf`). Another migration, another one: a test says which. */
export const NEWEST_SCHEMA = 'c8be1855a535adb01a763f9c7e05b66f2c5f41c46ed4ae12e9ee75bee21dcce5';

let ofLayout: ReadonlyMap<string, Entry> | undefined;

/** What the newest layout has, by our own migrations, each by its key. */
function rightEntries(): ReadonlyMap<string, Entry> {
  if (ofLayout !== undefined) return ofLayout;
  const db = new Database(':memory:');
  try {
    layOut(db, migrations.length);
    const entries = db
      .prepare("SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE name <> 'sqlite_sequence'")
      .all() as Entry[];
    ofLayout = new Map(entries.map((entry) => [keyOf(entry), entry]));
    return ofLayout;
  } finally {
    db.close();
  }
}

/**
 * Compares the list of tables, indexes and triggers of a file of the newest layout with our own. SQLite takes any text there that it
 * can read: one letter changed by the disk can keep every board from being edited, or an edit from being undone.
 * What others added is no fault.
 */
export function schemaFaults(db: Db): SchemaFault[] {
  const entries = entriesIn(db);
  // To make all of that layout takes a tenth of a second, which every start would wait for.
  if (digestOf(entries) === NEWEST_SCHEMA) return [];
  const found = new Map(entries.map((entry) => [keyOf(entry), entry]));
  const right = rightEntries();
  const missing = [...right].flatMap(([key, entry]) => (found.has(key) ? [] : [entry]));
  if (missing.length === 0) return [];
  const strange = new Set([...found].flatMap(([key, entry]) => (right.has(key) ? [] : [entry])));
  return missing.map((entry) => {
    // One bit is in one field.
    const like = [...strange].find(
      (other) => FIELDS.filter((field) => other[field] === entry[field]).length >= 3,
    );
    if (like) strange.delete(like);
    return { right: entry, found: like ?? null };
  });
}

/** Only an index or a trigger can be repaired: where a table differs, its rows may be wrong, too. */
export const canRepair = (faults: readonly SchemaFault[]): boolean =>
  faults.every(({ right }) => right.type !== 'table');

/**
 * Gives indexes and triggers their right text again, within a transaction that the caller ends once the file was checked.
 */
export function repairSchema(db: Db, faults: readonly SchemaFault[]): void {
  writable(db, () => {
    const put = db.prepare(
      'UPDATE sqlite_schema SET type = @type, name = @name, tbl_name = @tbl_name, sql = @sql WHERE rowid = @rowid',
    );
    for (const { right, found } of faults) if (found) put.run({ ...right, rowid: found.rowid });
    db.pragma(`schema_version = ${Number(db.pragma('schema_version', { simple: true })) + 1}`);
  });
  for (const { right, found } of faults) {
    if (found === null) db.exec(right.sql ?? '');
    else if (right.type === 'index') db.exec(`REINDEX ${right.name}`);
  }
}

/** SQLite's own list of ids is in a file or not. */
function digestOf(entries: readonly Entry[]): string {
  const hash = createHash('sha256');
  const keys = entries.filter(({ name }) => name !== 'sqlite_sequence').map(keyOf);
  for (const key of keys.toSorted()) hash.update(key);
  return hash.digest('hex');
}

/** What the entries of the newest layout come to, by our own migrations. */
export const digestOfNewest = (): string => digestOf([...rightEntries().values()]);

const keyOf = (entry: Entry): string => JSON.stringify(FIELDS.map((field) => entry[field]));

/** Also where SQLite cannot read one of the texts: it then reads the whole list twice more. */
function entriesIn(db: Db): EntryOfFile[] {
  const read = () =>
    db.prepare('SELECT rowid, type, name, tbl_name, sql FROM sqlite_schema').all() as EntryOfFile[];
  try {
    return read();
  } catch {
    return writable(db, read);
  }
}

/** Only so does SQLite show, and let be changed, a list with a text that it cannot read. */
function writable<T>(db: Db, work: () => T): T {
  db.unsafeMode(true);
  db.pragma('writable_schema = ON');
  try {
    readOnce(db);
    return work();
  } finally {
    db.pragma('writable_schema = RESET');
    db.unsafeMode(false);
  }
}

/** The first reading fails by such a text, and the next ones go around it. */
function readOnce(db: Db): void {
  try {
    db.prepare('SELECT 1 FROM sqlite_schema').get();
  } catch {
    // Any other fault is the next one's as well.
  }
}
