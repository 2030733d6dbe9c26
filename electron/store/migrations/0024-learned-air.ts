/**
 * Saves with each place how far readings put its EMC from that of its months: a cache. `told_…` of a board is what its newest
 * forecast has its readings tell of that, and `air_…` what all forecasts and places go by, which changes seldom.
 */
export const sql = `
  ALTER TABLE place ADD COLUMN air_offset_pct REAL;
  ALTER TABLE board ADD COLUMN air_precision REAL;
  ALTER TABLE board ADD COLUMN told_offset_pct REAL;
  ALTER TABLE board ADD COLUMN told_precision REAL;
  DROP INDEX board_by_place;
  CREATE INDEX board_by_place ON board
    (place_id, stack_id, air_offset_pct, air_precision, told_offset_pct, told_precision) WHERE archived_at IS NULL;

  CREATE TRIGGER learned_air_after_place AFTER UPDATE OF air ON place WHEN old.air IS NOT new.air
    BEGIN UPDATE place SET air_offset_pct = NULL WHERE id = new.id; END;
`;
