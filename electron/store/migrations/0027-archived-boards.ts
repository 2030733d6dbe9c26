const due = (boards: string): string => `
    INSERT INTO outlook_due (board_id, touched) SELECT id, 1 FROM board WHERE archived_at IS NULL AND (${boards})
      ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1;`;

/** A board and the others of its stack, species and log. */
const withSiblings = `
    id IN (SELECT new.id UNION SELECT s.id FROM board b JOIN board s ON s.stack_id = b.stack_id
      AND s.species_id = b.species_id AND s.log = b.log COLLATE NOCASE WHERE b.id = new.id AND b.log <> '')`;
const underSun = `
    stack_id = new.stack_id AND new.layer IS NOT NULL
      AND EXISTS (SELECT 1 FROM stack WHERE id = new.stack_id AND top_cover = 'sun')`;

/** SQL for `archived_why` of boards that were real and were read as what they are: these go on teaching. */
const TEACHES = `new.archived_why ->> '$.code' IN ('sold', 'used', 'scrapped', 'ripped', 'crosscut')`;

const forget = (what: string, which: string): string => `
      UPDATE board SET told_${what} = NULL WHERE ${which};`;

/**
 * Boards leave the yard and come back. What is forecast of a board that left is forgotten; the others of its log learned
 * from it, and another layer may be the top one.
 *
 * What the readings of such a board told of its place holds on, so places have it in their index. It is not made again:
 * where the air of the place is corrected, it is forgotten.
 */
export const sql = `
  CREATE TRIGGER outlook_due_after_archiving AFTER UPDATE OF archived_at ON board
    WHEN old.archived_at IS NOT new.archived_at BEGIN
      DELETE FROM outlook WHERE board_id = new.id;
      DELETE FROM outlook_due WHERE board_id = new.id;
      UPDATE board SET ready_on = NULL, probe_why = NULL WHERE id = new.id;${due(withSiblings)}${due(underSun)} END;
  CREATE TRIGGER told_until_archived AFTER UPDATE OF archived_at ON board
    WHEN new.archived_at IS NOT NULL AND NOT (${TEACHES}) BEGIN
      UPDATE board SET air_offset_pct = NULL, surface_log = NULL WHERE id = new.id;
${forget('offset_pct', 'id = new.id')}${forget('surface_log', 'id = new.id')} END;
  CREATE TRIGGER told_of_air_until_corrected AFTER UPDATE OF air ON place WHEN old.air IS NOT new.air
    BEGIN ${forget('offset_pct', 'place_id = new.id AND archived_at IS NOT NULL')} END;
  CREATE TRIGGER told_of_surface_until_corrected AFTER UPDATE OF air, air_movement ON place
    WHEN old.air IS NOT new.air OR old.air_movement IS NOT new.air_movement
    BEGIN ${forget('surface_log', 'place_id = new.id AND archived_at IS NOT NULL')} END;

  CREATE INDEX board_archived_by_code ON board (code) WHERE archived_at IS NOT NULL;
  DROP INDEX board_by_place;
  CREATE INDEX board_by_place ON board
    (place_id, stack_id, archived_at, air_offset_pct, air_precision, told_offset_pct, told_precision,
     surface_log, surface_precision, told_surface_log, told_surface_precision);
`;
