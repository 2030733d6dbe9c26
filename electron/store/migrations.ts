/**
 * Numbered migrations, applied in order and never edited once landed. The number of those applied is `user_version`.
 * Instants are UTC ISO 8601 texts, days are ISO dates.
 */
export const migrations: readonly string[] = [
  `
  CREATE TABLE species (
    id TEXT PRIMARY KEY,
    record TEXT NOT NULL CHECK (json_valid(record)),
    built_in INTEGER NOT NULL CHECK (built_in IN (0, 1))
  ) STRICT;

  CREATE TABLE use (
    id TEXT PRIMARY KEY,
    record TEXT NOT NULL CHECK (json_valid(record)),
    built_in INTEGER NOT NULL CHECK (built_in IN (0, 1))
  ) STRICT;

  CREATE TABLE place (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    kind TEXT NOT NULL,
    air TEXT NOT NULL CHECK (json_array_length(air) = 12)
  ) STRICT;

  CREATE TABLE stack (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    place_id INTEGER NOT NULL REFERENCES place (id),
    use_id TEXT NOT NULL REFERENCES use (id),
    note TEXT NOT NULL
  ) STRICT;

  CREATE TABLE board (
    id INTEGER PRIMARY KEY,
    code TEXT NOT NULL UNIQUE COLLATE NOCASE,
    stack_id INTEGER NOT NULL REFERENCES stack (id),
    species_id TEXT NOT NULL REFERENCES species (id),
    thickness_mm REAL NOT NULL CHECK (thickness_mm > 0),
    width_mm REAL,
    length_mm REAL,
    sawn_on TEXT,
    sawing TEXT NOT NULL,
    log TEXT NOT NULL,
    course INTEGER,
    stack_column INTEGER,
    note TEXT NOT NULL,
    -- Of its newest finding, for lists of 100,000 boards; null where there is none.
    latest_round_id INTEGER,
    latest_verdict TEXT
  ) STRICT;
  CREATE INDEX board_by_stack ON board (stack_id, id);
  CREATE INDEX board_by_verdict ON board (stack_id, latest_verdict);

  -- Where a board stood, from when. The newest row says where it stands.
  CREATE TABLE move (
    id INTEGER PRIMARY KEY,
    board_id INTEGER NOT NULL REFERENCES board (id),
    place_id INTEGER NOT NULL REFERENCES place (id),
    since TEXT NOT NULL
  ) STRICT;
  CREATE INDEX move_by_board ON move (board_id, since);

  CREATE TABLE meter (
    id INTEGER PRIMARY KEY,
    kind TEXT NOT NULL,
    device_id TEXT NOT NULL,
    name TEXT NOT NULL,
    description TEXT CHECK (description IS NULL OR json_valid(description)),
    UNIQUE (kind, device_id)
  ) STRICT;

  CREATE TABLE round (
    id INTEGER PRIMARY KEY,
    stack_id INTEGER NOT NULL REFERENCES stack (id),
    started_at TEXT NOT NULL,
    finished_at TEXT
  ) STRICT;
  CREATE INDEX round_by_stack ON round (stack_id, started_at);

  -- What was said of the wood's temperature; the newest row for a board, else for the whole round (board_id null), holds.
  CREATE TABLE wood_temperature (
    id INTEGER PRIMARY KEY,
    round_id INTEGER NOT NULL REFERENCES round (id),
    board_id INTEGER REFERENCES board (id),
    temp_c REAL,
    said_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX wood_temperature_by_round ON wood_temperature (round_id, board_id, id);

  CREATE TABLE reading (
    id INTEGER PRIMARY KEY,
    round_id INTEGER NOT NULL REFERENCES round (id),
    board_id INTEGER NOT NULL REFERENCES board (id),
    spot_index INTEGER,
    spot TEXT NOT NULL CHECK (json_valid(spot)),
    raw REAL NOT NULL,
    unit TEXT NOT NULL CHECK (unit IN ('pct', 'ohm')),
    how TEXT NOT NULL,
    settled INTEGER CHECK (settled IN (0, 1)),
    -- The temperature known when it was taken. What holds for it now is in wood_temperature.
    wood_temp_c REAL,
    meter_id INTEGER REFERENCES meter (id),
    taken_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX reading_by_board ON reading (board_id, round_id);
  CREATE INDEX reading_by_round ON reading (round_id);
  CREATE TRIGGER reading_is_never_edited BEFORE UPDATE ON reading
    BEGIN SELECT RAISE (ABORT, 'a reading is never edited'); END;
  CREATE TRIGGER reading_is_never_deleted BEFORE DELETE ON reading
    BEGIN SELECT RAISE (ABORT, 'a reading is never deleted'); END;

  -- Set aside (why given) or put back (why null); the newest row for a reading holds.
  CREATE TABLE reading_mark (
    id INTEGER PRIMARY KEY,
    reading_id INTEGER NOT NULL REFERENCES reading (id),
    why TEXT,
    marked_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX reading_mark_by_reading ON reading_mark (reading_id, id);

  -- A cache: what the rules of that version make of the board's readings in one round. Can be thrown away.
  CREATE TABLE finding (
    board_id INTEGER NOT NULL REFERENCES board (id),
    round_id INTEGER NOT NULL REFERENCES round (id),
    at TEXT NOT NULL,
    verdict TEXT NOT NULL,
    record TEXT NOT NULL CHECK (json_valid(record)),
    rules_version INTEGER NOT NULL,
    PRIMARY KEY (board_id, round_id)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE setting (key TEXT PRIMARY KEY, value TEXT NOT NULL CHECK (json_valid(value))) STRICT;
  `,
  `
  -- A piece that the meter read and that then went into the oven. What was measured is never changed.
  CREATE TABLE oven_check (
    id INTEGER PRIMARY KEY,
    species_id TEXT NOT NULL REFERENCES species (id),
    -- Null: typed, from a meter that is not connected.
    meter_id INTEGER REFERENCES meter (id),
    piece TEXT NOT NULL,
    readings TEXT NOT NULL CHECK (json_array_length(readings) > 0),
    unit TEXT NOT NULL CHECK (unit IN ('pct', 'ohm')),
    wood_temp_c REAL,
    wet_grams REAL NOT NULL CHECK (wet_grams > 0),
    balance_grams REAL NOT NULL CHECK (balance_grams > 0),
    end_rule TEXT NOT NULL,
    note TEXT NOT NULL,
    read_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX oven_check_by_species ON oven_check (species_id, id);
  CREATE TRIGGER oven_check_is_never_edited BEFORE UPDATE ON oven_check
    BEGIN SELECT RAISE (ABORT, 'an oven-dry check is never edited'); END;
  CREATE TRIGGER oven_check_is_never_deleted BEFORE DELETE ON oven_check
    BEGIN SELECT RAISE (ABORT, 'an oven-dry check is never deleted'); END;

  CREATE TABLE oven_mass (
    id INTEGER PRIMARY KEY,
    check_id INTEGER NOT NULL REFERENCES oven_check (id),
    grams REAL NOT NULL CHECK (grams > 0),
    weighed_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX oven_mass_by_check ON oven_mass (check_id, weighed_at);
  CREATE TRIGGER oven_mass_is_never_edited BEFORE UPDATE ON oven_mass
    BEGIN SELECT RAISE (ABORT, 'a mass is never edited'); END;
  CREATE TRIGGER oven_mass_is_never_deleted BEFORE DELETE ON oven_mass
    BEGIN SELECT RAISE (ABORT, 'a mass is never deleted'); END;

  -- Set aside (why given) or put back (why null); mass_id null: the whole check. The newest row for it holds.
  CREATE TABLE oven_mark (
    id INTEGER PRIMARY KEY,
    check_id INTEGER NOT NULL REFERENCES oven_check (id),
    mass_id INTEGER REFERENCES oven_mass (id),
    why TEXT,
    marked_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX oven_mark_by_check ON oven_mark (check_id, mass_id, id);

  -- Whether the fit to the checks of a species with a meter (null: typed) is to correct its readings; the newest row holds.
  CREATE TABLE own_fit_choice (
    id INTEGER PRIMARY KEY,
    species_id TEXT NOT NULL REFERENCES species (id),
    meter_id INTEGER REFERENCES meter (id),
    in_use INTEGER NOT NULL CHECK (in_use IN (0, 1)),
    chosen_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX own_fit_choice_by_species ON own_fit_choice (species_id, meter_id, id);
  `,
  `
  -- A sample board: what it weighed when sections were cut beside it. Cut again later, it is a shorter board.
  CREATE TABLE sample_cut (
    id INTEGER PRIMARY KEY,
    board_id INTEGER NOT NULL REFERENCES board (id),
    board_kg REAL NOT NULL CHECK (board_kg > 0),
    cut_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX sample_cut_by_board ON sample_cut (board_id, cut_at);

  CREATE TABLE sample_section (
    id INTEGER PRIMARY KEY,
    cut_id INTEGER NOT NULL REFERENCES sample_cut (id),
    wet_grams REAL NOT NULL CHECK (wet_grams > 0)
  ) STRICT;
  CREATE INDEX sample_section_by_cut ON sample_section (cut_id);

  -- What a section weighed out of the oven; the newest row holds.
  CREATE TABLE sample_section_dry (
    id INTEGER PRIMARY KEY,
    section_id INTEGER NOT NULL REFERENCES sample_section (id),
    grams REAL NOT NULL CHECK (grams > 0),
    weighed_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX sample_section_dry_by_section ON sample_section_dry (section_id, id);

  CREATE TABLE sample_mass (
    id INTEGER PRIMARY KEY,
    board_id INTEGER NOT NULL REFERENCES board (id),
    kg REAL NOT NULL CHECK (kg > 0),
    weighed_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX sample_mass_by_board ON sample_mass (board_id, weighed_at);

  -- Set aside (why given) or put back (why null): a cut with its sections, or one mass. The newest row for it holds.
  CREATE TABLE sample_mark (
    id INTEGER PRIMARY KEY,
    cut_id INTEGER REFERENCES sample_cut (id),
    mass_id INTEGER REFERENCES sample_mass (id),
    why TEXT,
    marked_at TEXT NOT NULL,
    CHECK ((cut_id IS NULL) <> (mass_id IS NULL))
  ) STRICT;
  CREATE INDEX sample_mark_by_cut ON sample_mark (cut_id, id);
  CREATE INDEX sample_mark_by_mass ON sample_mark (mass_id, id);

  CREATE TRIGGER sample_cut_is_never_edited BEFORE UPDATE ON sample_cut
    BEGIN SELECT RAISE (ABORT, 'a cut is never edited'); END;
  CREATE TRIGGER sample_cut_is_never_deleted BEFORE DELETE ON sample_cut
    BEGIN SELECT RAISE (ABORT, 'a cut is never deleted'); END;
  CREATE TRIGGER sample_section_is_never_edited BEFORE UPDATE ON sample_section
    BEGIN SELECT RAISE (ABORT, 'a section is never edited'); END;
  CREATE TRIGGER sample_section_is_never_deleted BEFORE DELETE ON sample_section
    BEGIN SELECT RAISE (ABORT, 'a section is never deleted'); END;
  CREATE TRIGGER sample_section_dry_is_never_edited BEFORE UPDATE ON sample_section_dry
    BEGIN SELECT RAISE (ABORT, 'a mass is never edited'); END;
  CREATE TRIGGER sample_section_dry_is_never_deleted BEFORE DELETE ON sample_section_dry
    BEGIN SELECT RAISE (ABORT, 'a mass is never deleted'); END;
  CREATE TRIGGER sample_mass_is_never_edited BEFORE UPDATE ON sample_mass
    BEGIN SELECT RAISE (ABORT, 'a mass is never edited'); END;
  CREATE TRIGGER sample_mass_is_never_deleted BEFORE DELETE ON sample_mass
    BEGIN SELECT RAISE (ABORT, 'a mass is never deleted'); END;
  `,
  `
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
  `,
  `
  -- How a board's rings lie: what its end grain shows.
  ALTER TABLE board ADD COLUMN ring_radius_mm REAL CHECK (ring_radius_mm > 0);
  ALTER TABLE board ADD COLUMN bark_side TEXT NOT NULL DEFAULT 'unknown';
  `,
  `
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
  `,
  `
  -- A person looked at the board and says that it is of this wood; holds as long as it is entered as that.
  CREATE TABLE confirmed_wood (
    board_id INTEGER PRIMARY KEY REFERENCES board (id),
    species_id TEXT NOT NULL REFERENCES species (id),
    confirmed_at TEXT NOT NULL
  ) STRICT;
  `,
  `
  -- What is over the top course: a stack outdoors may stand under a cover or in the sun.
  ALTER TABLE stack ADD COLUMN top_cover TEXT NOT NULL DEFAULT 'covered' CHECK (top_cover IN ('covered', 'sun'));
  `,
  `
  -- The day on which bark came off a face that had dried under it.
  ALTER TABLE board ADD COLUMN bark_off_on TEXT;
  `,
];
