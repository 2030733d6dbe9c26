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
 * act was undone. One whose value was corrected is there as saved and as corrected: a table may have either.
 */
export function readingsOfDays(db: Db) {
  const corrected = (field: 'raw' | 'takenAt') => `(SELECT k.value ->> '$' FROM amendment k
       WHERE k.reading_id = g.id AND k.field = '${field}' AND ${holds('k')} ORDER BY k.id DESC LIMIT 1)`;
  const ofBoard = db.prepare<{ boardId: number }, ReadingOfDay & { correctedRaw: number | null }>(
    `SELECT g.raw, g.unit, ${corrected('raw')} AS correctedRaw, coalesce(${corrected('takenAt')}, g.taken_at) AS takenAt
     FROM reading g WHERE g.board_id IN ${sameBoard('@boardId')} AND ${holds('g')}`,
  );
  return (boardId: number): ReadingOfDay[] =>
    ofBoard
      .all({ boardId })
      .flatMap(({ correctedRaw, ...saved }) =>
        correctedRaw === null || correctedRaw === saved.raw
          ? [saved]
          : [saved, { ...saved, raw: correctedRaw }],
      );
}
