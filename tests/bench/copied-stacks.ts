import { randomUUID } from 'node:crypto';
import Database from 'better-sqlite3';
import { type ReadingAsTaken, readingChecksum } from '../../electron/store/reading-checksum.ts';

/** What a stack brings, each table after those that it refers to. */
const TABLES = ['stack', 'round', 'board', 'move', 'reading', 'finding', 'outlook_due'] as const;

/** What a column refers to; of the tables without ids, that is also what tells the rows of a stack. */
const REFERS_TO: Readonly<Record<string, (typeof TABLES)[number]>> = {
  stack_id: 'stack',
  round_id: 'round',
  latest_round_id: 'round',
  board_id: 'board',
};

/**
 * Adds stacks to a yard whose first ones the app wrote, all alike: each is a copy of that at the same place, with ids, UUIDs
 * and names of its own. Triggers stay out of it, for a copy has what they wrote of the first; indexes are made at the end.
 *
 * @param given   how many stacks there are
 * @param stacks  how many there are to be
 */
export function copyStacks(file: string, given: number, stacks: number): void {
  const db = new Database(file);
  // Nothing of it is to survive a power cut.
  for (const setting of [
    'journal_mode = OFF',
    'synchronous = OFF',
    'foreign_keys = OFF',
    'cache_size = -2000000',
  ])
    db.pragma(setting);
  db.function('checksum_of', { varargs: true }, (...fields: unknown[]) => readingChecksum(readingOf(fields)));
  db.transaction(() => {
    const made = db
      .prepare<[], { type: string; name: string; sql: string }>(
        `SELECT type, name, sql FROM sqlite_schema WHERE type IN ('index', 'trigger') AND sql IS NOT NULL
         AND tbl_name IN (${TABLES.map((table) => `'${table}'`).join()})`,
      )
      .all();
    for (const { type, name } of made) db.exec(`DROP ${type} ${name}`);
    // Two yards have no record in common, and within one UUIDs rise with ids.
    const prefix = randomUUID().slice(0, 8);
    const copies = TABLES.map((table) => db.prepare(copyOf(db, table, given, prefix)));
    for (let stack = given; stack < stacks; stack++) {
      const like = stack % given;
      for (const copy of copies) copy.run({ stack, like, on: stack - like });
    }
    for (const { sql } of made) db.exec(sql);
  })();
  db.pragma('journal_mode = WAL');
  db.close();
}

/** Copies the rows that the stack @like has in a table, for the stack @stack, which is @on stacks further on. */
function copyOf(
  db: Database.Database,
  table: (typeof TABLES)[number],
  given: number,
  prefix: string,
): string {
  const aStack = (of: (typeof TABLES)[number]): number =>
    db.prepare<[], number>(`SELECT count(*) / ${given} FROM "${of}"`).pluck().get()!;
  const columns = db.prepare<[string], string>('SELECT name FROM pragma_table_info(?)').pluck().all(table);
  const movedOn = (column: string, of: (typeof TABLES)[number]): string => `${column} + @on * ${aStack(of)}`;
  const uuid = `printf('${prefix}-${TABLES.indexOf(table)}000-4000-8000-%012x', ${movedOn('id', table)})`;
  const sqlOf = (column: string): string => {
    const of = REFERS_TO[column];
    if (of !== undefined) return movedOn(column, of);
    if (column === 'id') return movedOn(column, table);
    if (column === 'uuid') return uuid;
    if (column === 'code') return `printf('B%02d%s', @stack, substr(code, instr(code, '-')))`;
    if (column === 'name') return `printf('Stack %d', @stack)`;
    if (table === 'finding' && column === 'record')
      return `json_set(record, '$.roundId', ${movedOn('round_id', 'round')})`;
    if (column === 'checksum') return `checksum_of(${Object.values(CHECKED).map(sqlOf).join()})`;
    return column;
  };
  const [key, of] = columns.includes('id') ? ['id', table] : ['board_id', 'board' as const];
  return `INSERT INTO "${table}" (${columns.join()}) SELECT ${columns.map(sqlOf).join()} FROM "${table}"
    WHERE ${key} > @like * ${aStack(of)} AND ${key} <= (@like + 1) * ${aStack(of)}`;
}

/** What a reading's checksum is of, and its columns. */
const CHECKED = {
  uuid: 'uuid',
  roundId: 'round_id',
  boardId: 'board_id',
  spotIndex: 'spot_index',
  spot: 'spot',
  raw: 'raw',
  unit: 'unit',
  how: 'how',
  settled: 'settled',
  woodTempC: 'wood_temp_c',
  meterProfileId: 'meter_profile_id',
  takenAt: 'taken_at',
} as const satisfies Record<keyof ReadingAsTaken, string>;

const readingOf = (values: readonly unknown[]): ReadingAsTaken =>
  Object.fromEntries(
    Object.keys(CHECKED).map((field, at) => [field, values[at]]),
  ) as unknown as ReadingAsTaken;
