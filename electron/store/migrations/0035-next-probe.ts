/**
 * Saves with each board when readings of it are next of use by its forecast (UTC, ms), so that lists of stacks, and what is
 * due when, are read from the index that counts boards.
 */
export const sql = `
  ALTER TABLE board ADD COLUMN probe_ms INTEGER;
  UPDATE board SET probe_ms = (SELECT record ->> '$.judgement.next.probeMs' FROM outlook WHERE board_id = board.id)
    WHERE archived_at IS NULL;
  CREATE TRIGGER probe_until_forecast_again AFTER DELETE ON outlook
    BEGIN UPDATE board SET probe_ms = NULL WHERE id = old.board_id; END;

  DROP INDEX board_by_standing;
  CREATE INDEX board_by_standing ON board
    (stack_id, place_id, latest_call, probe_why, latest_average_pct, ready_on, latest_at, probe_ms) WHERE archived_at IS NULL;
`;
