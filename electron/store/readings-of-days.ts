import { type Amendments, amended } from './amendment-table.ts';
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

/**
 * All readings of a board, under whichever record of it, so that none is imported twice: excluded ones too, and none whose
 * act was undone. A piece that has the ID of the board that it was cut from has that board's, too. One whose value was
 * corrected is there as saved and as corrected: a table may have either.
 * @param now  what holds of a reading
 */
export function readingsOfDays(db: Db, now: (row: { uuid: string; amendments: string }) => Amendments) {
  const ofBoard = db.prepare<{ boardId: number }, ReadingOfDay & { uuid: string; amendments: string }>(
    `SELECT g.raw, g.unit, g.taken_at AS takenAt, g.uuid, ${amended('reading', 'g')} AS amendments
     FROM reading g WHERE ${holds('g')} AND g.board_id IN (SELECT * FROM ${sameBoard('@boardId')} UNION
       SELECT a.id FROM board b JOIN lineage l ON l.board_id = b.id JOIN board a ON a.id = l.ancestor_id AND a.code = b.code
       WHERE b.id = @boardId)`,
  );
  return (boardId: number): ReadingOfDay[] =>
    ofBoard.all({ boardId }).flatMap((row) => {
      const { raw, takenAt = row.takenAt } = now(row);
      const saved = { raw: row.raw, unit: row.unit, takenAt };
      return raw === undefined || raw === saved.raw ? [saved] : [saved, { ...saved, raw }];
    });
}
