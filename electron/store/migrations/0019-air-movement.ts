/** What a forecast says also goes by how the air moves at the boards, and by how the days there stray from their month. */
export const sql = `
  DROP TRIGGER outlook_due_after_place;
  -- Any board could be moved to any place.
  CREATE TRIGGER outlook_due_after_place AFTER UPDATE OF kind, air, air_source, air_movement, closed_at ON place BEGIN
    INSERT INTO outlook_due (board_id, touched) SELECT id, 1 FROM board WHERE archived_at IS NULL
      ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1; END;
`;
