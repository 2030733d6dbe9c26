/**
 * Saves with each board what its readings say of the air where it is (`Outlook`), so that places are listed without
 * reading every forecast. Until the next forecast of a board that is not known: all are due.
 */
export const sql = `
  ALTER TABLE board ADD COLUMN air_offset_pct REAL;
  CREATE INDEX board_by_place ON board (place_id, stack_id, air_offset_pct) WHERE archived_at IS NULL;
  DELETE FROM outlook;
  INSERT INTO outlook_due SELECT id, 1 FROM board WHERE archived_at IS NULL
    ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1;

  -- What was read elsewhere says nothing of this air, and other months make another difference.
  CREATE TRIGGER air_offset_after_move AFTER UPDATE OF place_id ON board WHEN old.place_id IS NOT new.place_id
    BEGIN UPDATE board SET air_offset_pct = NULL WHERE id = new.id; END;
  CREATE TRIGGER air_offset_after_place AFTER UPDATE OF air ON place WHEN old.air IS NOT new.air
    BEGIN UPDATE board SET air_offset_pct = NULL WHERE place_id = new.id; END;
`;
