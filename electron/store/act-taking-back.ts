import { amendmentWrites } from './amendment-table.ts';
import { statements } from './columns.ts';
import type { Db } from './yard-file.ts';

interface Change {
  id: number;
  inTable: string;
  uuid: string;
  /** JSON; null of a row that the act added. */
  before: string | null;
  /** JSON; null of a row that the act deleted. */
  after: string | null;
}
type Row = Record<string, string | number | null>;

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/**
 * Takes back what an unfinished act did, as if it had never been asked for: its changes, the newest first, are undone and
 * forgotten. What others changed since stays as they left it.
 */
export function actTakingBack(db: Db) {
  const changes = db.prepare<[string, number], Change>(
    `SELECT id, in_table AS inTable, row_uuid AS uuid, old_values AS before, new_values AS after FROM act_change
     WHERE act_id = (SELECT id FROM act WHERE uuid = ?) ORDER BY id DESC LIMIT ?`,
  );
  const forget = db.prepare(
    'DELETE FROM act_change WHERE act_id = (SELECT id FROM act WHERE uuid = ?) AND id >= ?',
  );
  // The newest amendment of a reading holds: one that somebody made since is not the act's.
  const exclusions = db.prepare<
    [string, number],
    { readingId: number; boardId: number; before: string | null }
  >(
    `SELECT a.reading_id AS readingId, r.board_id AS boardId,
       (SELECT value FROM amendment b WHERE b.reading_id = a.reading_id AND b.field = a.field
        AND b.act_id IS NOT a.act_id AND b.id < a.id ORDER BY b.id DESC LIMIT 1) AS before
     FROM amendment a JOIN reading r ON r.id = a.reading_id
     WHERE a.act_id = (SELECT id FROM act WHERE uuid = ?) AND a.field = 'excluded' AND NOT EXISTS
       (SELECT 1 FROM amendment c WHERE c.reading_id = a.reading_id AND c.field = a.field AND c.id > a.id)
     LIMIT ?`,
  );
  const { exclude } = amendmentWrites(db);
  const prepare = statements(db);
  const forgetUndo = db.prepare(
    'UPDATE act SET undone_by = NULL WHERE undone_by = (SELECT id FROM act WHERE uuid = ?) AND uuid <> ?',
  );
  // Sent again, it is known, and not done.
  const markTakenBack = db.prepare('UPDATE act SET undone_by = id WHERE uuid = ?');
  const finish = db.prepare('DELETE FROM unfinished_act WHERE act_id = (SELECT id FROM act WHERE uuid = ?)');
  const isTakenBack = db.prepare('SELECT 1 FROM act WHERE uuid = ? AND undone_by = id');
  const board = db.prepare<[string], number>('SELECT id FROM board WHERE uuid = ?').pluck();
  const boardsOfStack = db
    .prepare<[string], number>('SELECT b.id FROM board b JOIN stack s ON s.id = b.stack_id WHERE s.uuid = ?')
    .pluck();

  function restore({ inTable, uuid, before, after }: Change): void {
    const table = quoted(inTable);
    if (before === null) {
      const { version } = JSON.parse(after as string) as Row;
      prepare(`DELETE FROM ${table} WHERE uuid = ? AND version = ?`).run([uuid, version ?? 1]);
      return;
    }
    const { version: versionBefore, ...was } = JSON.parse(before) as Row;
    if (after === null) {
      const row: Row = { ...was, version: versionBefore ?? 1 };
      const names = Object.keys(row);
      const sql = `INSERT INTO ${table} (${names.map(quoted)}) VALUES (${names.map(() => '?')})`;
      prepare(sql).run(Object.values(row));
      return;
    }
    const { version, ...is } = JSON.parse(after) as Row;
    const names = Object.keys(was);
    const set = names.map((name) => `${quoted(name)} = iif(${quoted(name)} IS ?, ?, ${quoted(name)}), `);
    const sql = `UPDATE ${table} SET ${set.join('')}version = iif(version = ?, ?, version + 1) WHERE uuid = ?`;
    const values = names.flatMap((name) => [is[name] ?? null, was[name] ?? null]);
    prepare(sql).run([...values, version ?? 1, versionBefore ?? 1, uuid]);
  }

  function boardsTouched({ inTable, uuid, before, after }: Change): number[] {
    if (inTable === 'board') return board.all(uuid);
    if (inTable === 'stack') return boardsOfStack.all(uuid);
    return inTable === 'move'
      ? [(JSON.parse((after ?? before) as string) as { board_id: number }).board_id]
      : [];
  }

  return {
    /**
     * Takes back so many changes at most; no act may be under way in the transaction. To be called until `isDone`.
     * @returns the boards that changed by it
     */
    takeBack: (id: string, most: number, at: string): { boardIds: number[]; isDone: boolean } => {
      const some = changes.all(id, most);
      const oldest = some.at(-1);
      if (oldest) {
        const boardIds = some.flatMap(boardsTouched);
        some.forEach(restore);
        forget.run(id, oldest.id);
        return { boardIds, isDone: false };
      }
      const excluded = exclusions.all(id, most);
      for (const { readingId, before } of excluded) {
        exclude('reading', readingId, before === null ? null : JSON.parse(before), at);
      }
      const isDone = excluded.length < most;
      if (isDone) {
        forgetUndo.run(id, id);
        markTakenBack.run(id);
        finish.run(id);
      }
      return { boardIds: excluded.map(({ boardId }) => boardId), isDone };
    },
    /** It was begun, and then stopped: nothing of it is left. */
    isTakenBack: (id: string): boolean => isTakenBack.get(id) !== undefined,
  };
}
