import { type Change, changesOfAct } from './act-changes.ts';
import { actParts, quoted, type Row } from './act-parts.ts';
import { statements } from './columns.ts';
import { rowUndo } from './row-undo.ts';
import type { Db } from './yard-file.ts';

/**
 * Takes back what an unfinished act did, as if it had never been asked for: its changes, the newest first, are undone and
 * forgotten. What others changed since stays as they left it. Rows that are never deleted hold no longer.
 */
export function actTakingBack(db: Db) {
  const changes = changesOfAct(db);
  const idOf = db.prepare<[string], number>('SELECT id FROM act WHERE uuid = ?').pluck();
  const isEnded = db.prepare<[string], number>('SELECT 1 FROM undone_row WHERE uuid = ?').pluck();
  /** Of the act that is being taken back: its first change, and the row that was ended last. */
  let under: {
    act: number;
    first: number;
    ended: { table: string; id: number; uuid: string } | null;
  } | null = null;
  const appended = actParts(db).appended.map((table) => ({
    table,
    holding: db.prepare<[number, number, number], Row>(
      `SELECT * FROM ${table} WHERE act_id = ? AND id > ?
         AND uuid NOT IN (SELECT uuid FROM undone_row) ORDER BY id LIMIT ?`,
    ),
  }));
  const endRow = db.prepare('INSERT INTO undone_row (uuid, in_table) VALUES (?, ?)');
  const boardOfReading = db.prepare<[unknown], number>('SELECT board_id FROM reading WHERE id = ?').pluck();
  const isOnlyMove = db
    .prepare<[unknown], number>('SELECT count(*) = 1 FROM move WHERE board_id = ?')
    .pluck();
  const rows = rowUndo(db);
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

  function restore({ inTable, uuid, before, after }: Change, at: string): void {
    const table = quoted(inTable);
    if (before === null) {
      const { version } = JSON.parse(after as string) as Row;
      const row = rows.find(inTable, uuid);
      // A board's first move goes with the board.
      const isFirstMove = inTable === 'move' && row !== undefined && isOnlyMove.get(row.board_id) === 1;
      if (row?.version === (version ?? 1) && !isFirstMove) rows.remove(inTable, row, at);
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

  /** The boards of which a row that is never deleted says something. */
  function boardsRead({ board_id, reading_id }: Row): number[] {
    const boardId = board_id ?? (reading_id == null ? null : boardOfReading.get(reading_id));
    return typeof boardId === 'number' ? [boardId] : [];
  }

  return {
    /**
     * Takes back so many changes at most; no act may be under way in the transaction. To be called until `isDone`.
     * @returns the boards that changed by it
     */
    takeBack: (id: string, most: number, at: string): { boardIds: number[]; isDone: boolean } => {
      const act = idOf.get(id) ?? -1;
      if (under?.act !== act) under = { act, first: changes.span(act).first, ended: null };
      // Rows that were ended in a transaction that failed are there again.
      const ended = under.ended !== null && isEnded.get(under.ended.uuid) === 1 ? under.ended : null;
      // The tables before that of the last row ended have nothing left.
      const from = appended.findIndex(({ table }) => table === ended?.table);
      for (const { table, holding } of appended.slice(Math.max(from, 0))) {
        const held = holding.all(act, ended?.table === table ? ended.id : 0, most);
        for (const { uuid } of held) endRow.run(uuid, table);
        const last = held.at(-1);
        if (last) {
          under.ended = { table, id: last.id as number, uuid: last.uuid as string };
          return { boardIds: held.flatMap(boardsRead), isDone: false };
        }
      }
      const some = changes.some(act, under.first, Number.MAX_SAFE_INTEGER, most);
      const [newest, oldest] = [some[0], some.at(-1)];
      if (newest && oldest) {
        const boardIds = some.flatMap(boardsTouched);
        for (const change of some) restore(change, at);
        changes.forget(act, oldest.id, newest.id);
        return { boardIds, isDone: false };
      }
      forgetUndo.run(id, id);
      markTakenBack.run(id);
      finish.run(id);
      return { boardIds: [], isDone: true };
    },
    /** It was begun, and then stopped: nothing of it is left. */
    isTakenBack: (id: string): boolean => isTakenBack.get(id) !== undefined,
  };
}
