import type { Move } from '../../shared-core/contract/yard.ts';
import { type Columns, recordAdder, selected } from './columns.ts';
import type { Db } from './yard-file.ts';

type NewMove = Omit<Move, 'id' | 'placeName'>;

const columns: Columns<NewMove> = { boardId: 'board_id', placeId: 'place_id', since: 'since' };

/** Where boards stood, from when. */
export function moveReads(db: Db) {
  const select = `SELECT m.id, ${selected(columns, 'm')}, p.name AS placeName
    FROM move m JOIN place p ON p.id = m.place_id`;
  const ofBoard = db.prepare<[number], Move>(`${select} WHERE m.board_id = ? ORDER BY m.since, m.id`);
  const boardsEverAt = db.prepare<[number], { boardId: number }>(
    'SELECT DISTINCT board_id AS boardId FROM move WHERE place_id = ?',
  );
  return {
    /** Oldest first. */
    ofBoard: (boardId: number): Move[] => ofBoard.all(boardId),
    boardsEverAt: (placeId: number): number[] => boardsEverAt.all(placeId).map((row) => row.boardId),
  };
}

export function moveWrites(db: Db) {
  const began = db.prepare<[string, number]>(
    `UPDATE move SET since = ?, dated_by = 'day', version = version + 1
     WHERE id = (SELECT id FROM move WHERE board_id = ? ORDER BY since, id LIMIT 1)`,
  );
  return {
    add: recordAdder(db, 'move', columns),
    /** A board was at its first place since an earlier day. */
    beganOn: (boardId: number, since: string): void => {
      began.run(since, boardId);
    },
  };
}
