export const sql = `
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
`;
