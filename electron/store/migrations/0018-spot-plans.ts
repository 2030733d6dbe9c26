/**
 * What a board's spots of a round were planned by, from its first reading on: the pins of then, and how a person chose to
 * reach the core; with no board, that choice for the boards of the round that are not read yet. The newest row holds.
 * Boards read without one were probed in pairs, shell and core.
 */
export const sql = `
  CREATE TABLE spot_plan (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    round_id INTEGER NOT NULL REFERENCES round (id),
    board_id INTEGER REFERENCES board (id),
    basis TEXT NOT NULL CHECK (json_valid(basis)),
    given_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  CREATE INDEX spot_plan_by_round ON spot_plan (round_id, board_id, id);
  CREATE TRIGGER spot_plan_is_never_edited BEFORE UPDATE ON spot_plan
    BEGIN SELECT RAISE (ABORT, 'a row of spot_plan is never edited'); END;
  CREATE TRIGGER spot_plan_is_never_deleted BEFORE DELETE ON spot_plan
    BEGIN SELECT RAISE (ABORT, 'a row of spot_plan is never deleted'); END;
  CREATE TRIGGER finding_due_after_spot_plan AFTER INSERT ON spot_plan WHEN new.board_id IS NOT NULL
    BEGIN INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading
      WHERE round_id = new.round_id AND board_id = new.board_id; END;
`;
