export const sql = `
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
`;
