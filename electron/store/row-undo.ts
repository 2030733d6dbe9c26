import { HIDDEN_BY, quoted, type Row } from './act-parts.ts';
import { cacheColumns } from './change-triggers.ts';
import { statements } from './columns.ts';
import { cacheDropper } from './row-caches.ts';
import type { Db } from './yard-file.ts';

const codeOf = (error: unknown): string => String((error as { code?: unknown } | null)?.code ?? '');
const isReferred = (error: unknown): boolean => codeOf(error) === 'SQLITE_CONSTRAINT_FOREIGNKEY';
/** An ID or a name is used by another record now, or what the row refers to is gone. */
export const isInTheWay = (error: unknown): boolean =>
  /^SQLITE_CONSTRAINT_(UNIQUE|PRIMARYKEY|FOREIGNKEY|ROWID)$/.test(codeOf(error));

/** Puts single rows back as they were before an act added, edited or deleted them. */
export function rowUndo(db: Db) {
  const prepare = statements(db);
  const dropMoves = db.prepare('DELETE FROM move WHERE board_id = ?');
  const dropCaches = cacheDropper(db);

  const remove = db.transaction((table: string, row: Row): void => {
    dropCaches(table, row.uuid);
    // A board is nowhere without its first move, so that goes with it.
    if (table === 'board') dropMoves.run(row.id);
    prepare(`DELETE FROM ${quoted(table)} WHERE uuid = ?`).run([row.uuid as string]);
  });

  function edit(table: string, uuid: string, values: Row): void {
    const set = Object.keys(values).map((name) => `${quoted(name)} = ?, `);
    prepare(`UPDATE ${quoted(table)} SET ${set.join('')}version = version + 1 WHERE uuid = ?`).run([
      ...Object.values(values),
      uuid,
    ]);
  }

  return {
    find: (table: string, uuid: string): Row | undefined =>
      prepare(`SELECT * FROM ${quoted(table)} WHERE uuid = ?`).get([uuid]) as Row | undefined,
    /** Deletes a row, or hides it where others refer to it: readings are never deleted, nor what they are of. */
    remove: (table: string, row: Row, at: string): void => {
      try {
        remove(table, row);
      } catch (error) {
        const hiddenBy = HIDDEN_BY[table];
        if (hiddenBy === undefined || !isReferred(error)) throw error;
        const why: Row = table === 'board' ? { archived_why: JSON.stringify({ code: 'undone' }) } : {};
        edit(table, row.uuid as string, { [hiddenBy]: at, ...why });
      }
    },
    edit,
    insert: (table: string, row: Row): void => {
      const fields = Object.entries(row).filter(([name]) => !cacheColumns(table).includes(name));
      const sql = `INSERT INTO ${quoted(table)} (${fields.map(([name]) => quoted(name))})
        VALUES (${fields.map(() => '?')})`;
      prepare(sql).run(fields.map(([, value]) => value));
    },
  };
}
