import { sameBoard } from './lineage.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

/** A reading as a table can have it, too. */
export interface ReadingOfDay {
  raw: number;
  unit: string;
  /** UTC instant. */
  takenAt: string;
}

/** All readings of a board, under whichever record of it, so that none is imported twice: excluded ones too, and none whose act was undone. */
export function readingsOfDays(db: Db) {
  const ofBoard = db.prepare<{ boardId: number }, ReadingOfDay>(
    `SELECT g.raw, g.unit, coalesce((SELECT k.value ->> '$' FROM amendment k WHERE k.reading_id = g.id
       AND k.field = 'takenAt' AND ${holds('k')} ORDER BY k.id DESC LIMIT 1), g.taken_at) AS takenAt
     FROM reading g WHERE g.board_id IN ${sameBoard('@boardId')} AND ${holds('g')}`,
  );
  return (boardId: number): ReadingOfDay[] => ofBoard.all({ boardId });
}
