/** Where a board's call comes in lists, boards without one last: what `board_by_call` is by. */
export const CALL_RANK = `CASE latest_call WHEN 'ready' THEN 0 WHEN 'bring-in' THEN 1 WHEN 'keep-drying' THEN 2
  WHEN 'probe-again' THEN 3 ELSE 4 END`;

/** Marks the forecasts of some boards as due. @param boards a condition on `board` */
const due = (boards: string): string => `
    INSERT INTO outlook_due (board_id, touched) SELECT id, 1 FROM board WHERE archived_at IS NULL AND (${boards})
      ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1;`;

/** The same where the forecast that there is would mislead until then. */
const dropped = (boards: string): string => `
    DELETE FROM outlook WHERE board_id IN (SELECT id FROM board WHERE ${boards});
    UPDATE board SET ready_on = NULL, probe_why = NULL WHERE (ready_on IS NOT NULL OR probe_why IS NOT NULL)
      AND (${boards});${due(boards)}`;

/** A board and those that learn from it: of its stack, species and log. */
const withSiblings = (id: string): string => `
    id IN (SELECT ${id} UNION SELECT s.id FROM board b JOIN board s ON s.stack_id = b.stack_id
      AND s.species_id = b.species_id AND s.log = b.log COLLATE NOCASE WHERE b.id = ${id} AND b.log <> '')`;

const whereItIs = (id: string): string => `
    UPDATE board SET place_id = (SELECT place_id FROM move WHERE board_id = ${id} ORDER BY since DESC, id DESC LIMIT 1)
      WHERE id = ${id};`;

/**
 * Saves what the forecast says of each board, for lists, and which boards it is due for. Saves with each board what lists
 * are sorted and counted by, so that a yard of 100,000 boards is sorted by an index.
 */
export const sql = `
  -- Caches of its newest finding (with latest_round_id and latest_call), of its newest move, and of its forecast.
  ALTER TABLE board ADD COLUMN latest_average_pct REAL;
  ALTER TABLE board ADD COLUMN latest_at TEXT;
  ALTER TABLE board ADD COLUMN place_id INTEGER REFERENCES place (id);
  ALTER TABLE board ADD COLUMN ready_on TEXT;
  ALTER TABLE board ADD COLUMN probe_why TEXT;
  UPDATE board SET
    (latest_average_pct, latest_at) = (SELECT record ->> 'averagePct', at FROM finding
      WHERE board_id = board.id AND round_id = board.latest_round_id),
    place_id = (SELECT place_id FROM move WHERE board_id = board.id ORDER BY since DESC, id DESC LIMIT 1);

  -- A cache: what the forecast made on that local day says of a board; record is null where none can be made.
  CREATE TABLE outlook (
    board_id INTEGER PRIMARY KEY REFERENCES board (id) ON DELETE CASCADE,
    made_on TEXT NOT NULL,
    rules_version INTEGER NOT NULL,
    record TEXT CHECK (json_valid(record))
  ) STRICT;
  CREATE INDEX outlook_by_day ON outlook (made_on, rules_version);

  -- Boards to be forecast again, and how often that was asked for: what comes while one is being made is not lost.
  CREATE TABLE outlook_due (
    board_id INTEGER PRIMARY KEY REFERENCES board (id) ON DELETE CASCADE,
    touched INTEGER NOT NULL
  ) STRICT;
  INSERT INTO outlook_due SELECT id, 1 FROM board WHERE archived_at IS NULL;

  DROP INDEX board_by_call;
  CREATE INDEX board_by_standing ON board
    (stack_id, place_id, latest_call, probe_why, latest_average_pct, ready_on) WHERE archived_at IS NULL;
  CREATE INDEX board_by_call ON board (${CALL_RANK}) WHERE archived_at IS NULL;
  CREATE INDEX board_by_average ON board (latest_average_pct) WHERE archived_at IS NULL;
  CREATE INDEX board_by_reading ON board (latest_at) WHERE archived_at IS NULL;
  CREATE INDEX board_by_ready ON board (ready_on) WHERE archived_at IS NULL;
  CREATE INDEX board_by_species ON board (species_id) WHERE archived_at IS NULL;
  CREATE INDEX species_by_name ON species (record ->> 'name', id);

  CREATE TRIGGER board_placed AFTER INSERT ON move BEGIN ${whereItIs('new.board_id')}${dropped('id = new.board_id')} END;
  CREATE TRIGGER board_placed_again AFTER UPDATE ON move BEGIN ${whereItIs('new.board_id')}${dropped('id = new.board_id')} END;
  CREATE TRIGGER board_taken_back AFTER DELETE ON move BEGIN ${whereItIs('old.board_id')}${dropped('id = old.board_id')} END;

  CREATE TRIGGER outlook_due_after_finding AFTER INSERT ON finding
    BEGIN ${dropped('id = new.board_id')}${due(withSiblings('new.board_id'))} END;
  CREATE TRIGGER outlook_due_after_new_finding AFTER UPDATE ON finding
    BEGIN ${dropped('id = new.board_id')}${due(withSiblings('new.board_id'))} END;
  CREATE TRIGGER outlook_due_after_lost_finding AFTER DELETE ON finding
    BEGIN ${dropped('id = old.board_id')}${due(withSiblings('old.board_id'))} END;
  CREATE TRIGGER outlook_due_after_edit AFTER UPDATE OF stack_id, species_id, thickness_mm, sawn_on, bark_side, bark_off_on,
      log, layer ON board BEGIN ${dropped('id = new.id')}${due(withSiblings('new.id'))} END;
  -- Another top layer is in the sun.
  CREATE TRIGGER outlook_due_after_layer AFTER UPDATE OF layer ON board
    WHEN EXISTS (SELECT 1 FROM stack WHERE id = new.stack_id AND top_cover = 'sun')
    BEGIN ${due('stack_id = new.stack_id')} END;
  CREATE TRIGGER outlook_due_after_new_layer AFTER INSERT ON board
    WHEN new.layer IS NOT NULL AND EXISTS (SELECT 1 FROM stack WHERE id = new.stack_id AND top_cover = 'sun')
    BEGIN ${due('stack_id = new.stack_id')} END;
  CREATE TRIGGER outlook_due_after_stack AFTER UPDATE OF end_use_id, top_cover ON stack
    BEGIN ${dropped('stack_id = new.id')} END;
  CREATE TRIGGER outlook_due_after_end_use AFTER UPDATE OF record ON end_use
    BEGIN ${dropped('stack_id IN (SELECT id FROM stack WHERE end_use_id = new.id)')} END;
  CREATE TRIGGER outlook_due_after_species AFTER UPDATE OF record ON species
    BEGIN ${dropped('species_id = new.id')} END;
  -- Any board could be moved to any place.
  CREATE TRIGGER outlook_due_after_place AFTER UPDATE OF kind, air, closed_at ON place BEGIN ${due('TRUE')} END;
  CREATE TRIGGER outlook_due_after_new_place AFTER INSERT ON place BEGIN ${due('TRUE')} END;
`;
