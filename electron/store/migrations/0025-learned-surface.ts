/**
 * Saves with each board what its readings tell of how freely boards dry in the moving air of its place, as 0024 does of the EMC
 * there: `told_…` by its newest forecast, and `surface_…` as all forecasts go by.
 */
export const sql = `
  ALTER TABLE board ADD COLUMN surface_log REAL;
  ALTER TABLE board ADD COLUMN surface_precision REAL;
  ALTER TABLE board ADD COLUMN told_surface_log REAL;
  ALTER TABLE board ADD COLUMN told_surface_precision REAL;
  DROP INDEX board_by_place;
  CREATE INDEX board_by_place ON board
    (place_id, stack_id, air_offset_pct, air_precision, told_offset_pct, told_precision,
     surface_log, surface_precision, told_surface_log, told_surface_precision) WHERE archived_at IS NULL;

  CREATE TRIGGER surface_after_move AFTER UPDATE OF place_id ON board WHEN old.place_id IS NOT new.place_id
    BEGIN UPDATE board SET surface_log = NULL WHERE id = new.id; END;
  CREATE TRIGGER surface_after_place AFTER UPDATE OF air, air_movement ON place
    WHEN old.air IS NOT new.air OR old.air_movement IS NOT new.air_movement
    BEGIN UPDATE board SET surface_log = NULL WHERE place_id = new.id; END;
`;
