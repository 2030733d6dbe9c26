import type { Move } from '../../shared-core/contract/yard.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import { keptRecord } from './lineage.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

type NewMove = Omit<Move, 'id' | 'version' | 'placeName'>;

const newColumns: Columns<NewMove> = {
  boardId: 'board_id',
  placeId: 'place_id',
  since: 'since',
  datedBy: 'dated_by',
};
const columns: Columns<Omit<Move, 'placeName'>> = { id: 'id', version: 'version', ...newColumns };

/** Where boards stood, from when. */
export function moveReads(db: Db) {
  const select = `SELECT ${selected(columns, 'm')}, p.name AS placeName
    FROM move m JOIN place p ON p.id = m.place_id`;
  const one = db.prepare<[number], Move>(`${select} WHERE m.id = ?`);
  const ofBoard = db.prepare<[number], Move>(`${select} WHERE m.board_id = ? ORDER BY m.since, m.id`);
  const boardsEverAt = db.prepare<[number], { boardId: number }>(
    'SELECT DISTINCT board_id AS boardId FROM move WHERE place_id = ?',
  );
  // The act that added it first: one that undid its deletion added it again.
  const addedWith = db.prepare<[number], Move>(
    `${select} WHERE m.uuid IN (SELECT row_uuid FROM act_change WHERE in_table = 'move' AND old_values IS NULL
       AND act_id = (SELECT c.act_id FROM act_change c JOIN move one ON one.uuid = c.row_uuid
         WHERE one.id = ? AND c.in_table = 'move' AND c.old_values IS NULL ORDER BY c.id LIMIT 1))
     ORDER BY m.board_id, m.id`,
  );
  const placeOfRound = db
    .prepare<{ roundId: number }, string>(
      `SELECT p.name FROM round r
       JOIN (SELECT DISTINCT ${keptRecord('g.board_id')} AS id FROM reading g
         WHERE g.round_id = @roundId AND ${holds('g')}) b
       JOIN move m ON m.id = coalesce(
         (SELECT id FROM (SELECT id, julianday(since) AS day FROM move WHERE board_id = b.id)
           WHERE day <= julianday(r.started_at) ORDER BY day DESC, id DESC LIMIT 1),
         (SELECT id FROM move WHERE board_id = b.id ORDER BY since, id LIMIT 1))
       JOIN place p ON p.id = m.place_id
       WHERE r.id = @roundId GROUP BY p.id ORDER BY count(*) DESC, p.id LIMIT 1`,
    )
    .pluck();
  const movedBetween = db
    .prepare<[string, string, string], number>(
      `SELECT DISTINCT board_id FROM move WHERE board_id IN (SELECT value FROM json_each(?)) AND since BETWEEN ? AND ?
       ORDER BY board_id`,
    )
    .pluck();
  return {
    get: (id: number): Move | undefined => one.get(id),
    /** Oldest first. */
    ofBoard: (boardId: number): Move[] => ofBoard.all(boardId),
    /** Which of these boards came to a place between two instants. */
    movedBetween: (boardIds: readonly number[], from: string, until: string): number[] =>
      movedBetween.all(JSON.stringify(boardIds), from, until),
    boardsEverAt: (placeId: number): number[] => boardsEverAt.all(placeId).map((row) => row.boardId),
    /** Where most of the boards read in a round were when it began; undefined where none was read. */
    placeOfRound: (roundId: number): string | undefined => placeOfRound.get({ roundId }),
    /** Those that one act added, itself included; none where no act did, as in a file of an earlier layout. */
    addedWith: (id: number): Move[] => addedWith.all(id),
  };
}

export function moveWrites(db: Db, { get }: ReturnType<typeof moveReads>) {
  const remove = db.prepare('DELETE FROM move WHERE id = ?');
  const began = db.prepare<[string, number]>(
    `UPDATE move SET since = ?, dated_by = 'day', version = version + 1
     WHERE id = (SELECT id FROM move WHERE board_id = ? ORDER BY since, id LIMIT 1)`,
  );
  const give = db.prepare(
    'UPDATE move SET place_id = ?, version = version + 1 WHERE id IN (SELECT value FROM json_each(?))',
  );
  return {
    add: recordAdder(db, 'move', newColumns),
    edit: recordEditor(db, 'move', newColumns, get),
    remove: (id: number): void => {
      remove.run(id);
    },
    /** Moves to a place count as moves to another. */
    giveAll: (moveIds: readonly number[], placeId: number): void => {
      give.run(placeId, JSON.stringify(moveIds));
    },
    /** A board was at its first place since an earlier day. */
    beganOn: (boardId: number, since: string): void => {
      began.run(since, boardId);
    },
  };
}
