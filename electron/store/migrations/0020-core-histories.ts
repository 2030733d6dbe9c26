/** Those of some boards are made again. @param boards a condition on `board` */
const forgotten = (boards: string): string => `
    DELETE FROM core_history WHERE board_id IN (SELECT id FROM board WHERE ${boards});`;

/** Those of a board that rest on what was found in a round. */
const restingOn = (finding: 'old' | 'new'): string => `
    DELETE FROM core_history WHERE board_id = ${finding}.board_id AND after_round_id IN (SELECT id FROM round
      WHERE (started_at, id) >= (SELECT started_at, id FROM round WHERE id = ${finding}.round_id));`;

/**
 * A cache: what the forecast made after a board's round (0: before any) says of its core on the days to come. The board's
 * next round is judged by it, which it knows nothing of. An empty one says that there was no history. A missing one is
 * made with the board's forecast.
 */
export const sql = `
  CREATE TABLE core_history (
    board_id INTEGER NOT NULL REFERENCES board (id) ON DELETE CASCADE,
    after_round_id INTEGER NOT NULL,
    record TEXT NOT NULL CHECK (json_valid(record)),
    PRIMARY KEY (board_id, after_round_id)
  ) STRICT, WITHOUT ROWID;

  CREATE TRIGGER core_history_after_finding AFTER INSERT ON finding BEGIN ${restingOn('new')} END;
  CREATE TRIGGER core_history_after_new_finding AFTER UPDATE ON finding WHEN old.record IS NOT new.record
    BEGIN ${restingOn('new')} END;
  CREATE TRIGGER core_history_after_lost_finding AFTER DELETE ON finding BEGIN ${restingOn('old')} END;
  CREATE TRIGGER core_history_after_move AFTER INSERT ON move BEGIN ${forgotten('id = new.board_id')} END;
  CREATE TRIGGER core_history_after_new_move AFTER UPDATE ON move BEGIN ${forgotten('id = new.board_id')} END;
  CREATE TRIGGER core_history_after_lost_move AFTER DELETE ON move BEGIN ${forgotten('id = old.board_id')} END;
  CREATE TRIGGER core_history_after_edit AFTER UPDATE OF species_id, thickness_mm, sawn_on, bark_side, bark_off_on
    ON board BEGIN ${forgotten('id = new.id')} END;
  CREATE TRIGGER core_history_after_species AFTER UPDATE OF record ON species
    BEGIN ${forgotten('species_id = new.id')} END;
  CREATE TRIGGER core_history_after_place AFTER UPDATE OF kind, air, air_source, air_movement ON place BEGIN ${forgotten('TRUE')} END;
`;
