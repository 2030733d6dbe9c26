export const sql = `
  -- A board's readings of a round that are still to be judged: the file itself keeps count, so that opening a yard need
  -- not look for them among all readings.
  CREATE TABLE finding_due (
    board_id INTEGER NOT NULL REFERENCES board (id),
    round_id INTEGER NOT NULL REFERENCES round (id),
    PRIMARY KEY (board_id, round_id)
  ) STRICT, WITHOUT ROWID;
  INSERT INTO finding_due
    SELECT DISTINCT g.board_id, g.round_id FROM reading g
    LEFT JOIN finding f ON f.board_id = g.board_id AND f.round_id = g.round_id WHERE f.board_id IS NULL;

  CREATE TRIGGER finding_due_after_reading AFTER INSERT ON reading
    BEGIN INSERT OR IGNORE INTO finding_due VALUES (new.board_id, new.round_id); END;
  CREATE TRIGGER finding_due_after_mark AFTER INSERT ON reading_mark
    BEGIN INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading WHERE id = new.reading_id; END;
  CREATE TRIGGER finding_due_after_temperature AFTER INSERT ON wood_temperature
    BEGIN INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading
      WHERE round_id = new.round_id AND (new.board_id IS NULL OR board_id = new.board_id); END;
  CREATE TRIGGER finding_due_after_its_loss AFTER DELETE ON finding
    BEGIN INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading
      WHERE board_id = old.board_id AND round_id = old.round_id; END;
  CREATE TRIGGER finding_made AFTER INSERT ON finding
    BEGIN DELETE FROM finding_due WHERE board_id = new.board_id AND round_id = new.round_id; END;
  CREATE TRIGGER finding_made_anew AFTER UPDATE ON finding
    BEGIN DELETE FROM finding_due WHERE board_id = new.board_id AND round_id = new.round_id; END;

  CREATE INDEX finding_by_rules ON finding (rules_version);
  CREATE INDEX reading_by_meter ON reading (meter_id, board_id) WHERE meter_id IS NOT NULL;
`;
