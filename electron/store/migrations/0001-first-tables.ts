export const sql = `
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
`;
