export const sql = `
  -- The version of the rules by which the round's boards were last held against each other; 0 while they are, null
  -- since a reading, a mark or a temperature came.
  ALTER TABLE round ADD COLUMN compared_by_rules INTEGER;
  CREATE INDEX round_by_rules ON round (compared_by_rules);

  -- What that found, as JSON; a cache, like finding.
  CREATE TABLE round_doubt (
    round_id INTEGER NOT NULL REFERENCES round (id),
    board_id INTEGER NOT NULL REFERENCES board (id),
    doubts TEXT NOT NULL CHECK (json_valid(doubts)),
    PRIMARY KEY (round_id, board_id)
  ) STRICT, WITHOUT ROWID;

  CREATE TRIGGER round_to_compare_after_reading AFTER INSERT ON reading
    BEGIN UPDATE round SET compared_by_rules = NULL WHERE id = new.round_id; END;
  CREATE TRIGGER round_to_compare_after_mark AFTER INSERT ON reading_mark
    BEGIN UPDATE round SET compared_by_rules = NULL
      WHERE id = (SELECT round_id FROM reading WHERE id = new.reading_id); END;
  CREATE TRIGGER round_to_compare_after_temperature AFTER INSERT ON wood_temperature
    BEGIN UPDATE round SET compared_by_rules = NULL WHERE id = new.round_id; END;
`;
