import { randomUUID } from 'node:crypto';
import { readingChecksum } from '../reading-checksum.ts';
import { EVERY_YARD, uuidV5 } from '../uuid.ts';
import type { Db } from '../yard-file.ts';

/**
 * Gives every record a UUID and what can be edited a version; keeps who did what (`act`); appends what is corrected
 * about a reading or a weighing instead of changing it (`amendment`); and makes room for everything that is to come.
 *
 * UUIDs of old records are made from what never changed in them, within the namespace of their yard, so that two
 * copies of one file that are upgraded apart give each record the same. Species, uses and meters are the same
 * records in every yard.
 */
export function prepare(db: Db): void {
  // The parts are joined here and not in SQL: how SQLite writes a number depends on its version.
  db.function('uuid_v5', { deterministic: true, varargs: true }, (namespace: string, ...parts: unknown[]) =>
    uuidV5(namespace, parts.join(':')),
  );
  db.function('uuid_random', { deterministic: false }, () => randomUUID());
  db.function(
    'reading_checksum',
    { deterministic: true, varargs: true },
    (
      uuid: string,
      roundId: number,
      boardId: number,
      spotIndex: number | null,
      spot: string,
      raw: number,
      unit: string,
      how: string,
      settled: number | null,
      woodTempC: number | null,
      meterProfileId: number | null,
      takenAt: string,
    ) =>
      readingChecksum({
        uuid,
        roundId,
        boardId,
        spotIndex,
        spot,
        raw,
        unit,
        how,
        settled,
        woodTempC,
        meterProfileId,
        takenAt,
      }),
  );
}

/** Tables that are only ever added to. */
const appendOnly = [
  'meter_profile',
  'wood_temperature',
  'reading',
  'amendment',
  'oven_check',
  'oven_weight',
  'own_fit_choice',
  'sample_cut',
  'sample_section',
  'sample_section_dry',
  'sample_weight',
  'label_print',
  'meter_check',
  'air_log',
];

const neverChanged = (table: string): string => `
  CREATE TRIGGER ${table}_is_never_edited BEFORE UPDATE ON ${table}
    BEGIN SELECT RAISE (ABORT, 'a row of ${table} is never edited'); END;
  CREATE TRIGGER ${table}_is_never_deleted BEFORE DELETE ON ${table}
    BEGIN SELECT RAISE (ABORT, 'a row of ${table} is never deleted'); END;`;

const oldTables = [
  'species',
  'use',
  'place',
  'stack',
  'board',
  'move',
  'meter',
  'round',
  'wood_temperature',
  'reading',
  'reading_mark',
  'setting',
  'oven_check',
  'oven_mass',
  'oven_mark',
  'own_fit_choice',
  'sample_cut',
  'sample_section',
  'sample_section_dry',
  'sample_mass',
  'sample_mark',
  'confirmed_wood',
];

const oldTriggers = [
  'reading_is_never_edited',
  'reading_is_never_deleted',
  'oven_check_is_never_edited',
  'oven_check_is_never_deleted',
  'oven_mass_is_never_edited',
  'oven_mass_is_never_deleted',
  'sample_cut_is_never_edited',
  'sample_cut_is_never_deleted',
  'sample_section_is_never_edited',
  'sample_section_is_never_deleted',
  'sample_section_dry_is_never_edited',
  'sample_section_dry_is_never_deleted',
  'sample_mass_is_never_edited',
  'sample_mass_is_never_deleted',
  'round_to_compare_after_reading',
  'round_to_compare_after_mark',
  'round_to_compare_after_temperature',
  'finding_due_after_reading',
  'finding_due_after_mark',
  'finding_due_after_temperature',
  'finding_due_after_its_loss',
  'finding_made',
  'finding_made_anew',
];

/** A record of this yard: the parts are what never changed in it. */
const inYard = (parts: string): string => `uuid_v5((SELECT uuid FROM yard), ${parts})`;
const inEveryYard = (parts: string): string => `uuid_v5('${EVERY_YARD}', ${parts})`;

/** Why an older Pintally or a person excluded something; null where it was included again. */
const reason = (why: string): string => `
  CASE
    WHEN ${why} IS NULL THEN 'null'
    WHEN ${why} = 'Taken back during the round.' THEN '{"code":"undone-in-round"}'
    ELSE json_object('text', ${why})
  END`;

/** Settings as JSON, each under the name that it now has. */
const renamedSettings = (value: string): string => `
  CASE
    WHEN ${value} ->> 'keepWhenSettled' IS NULL THEN ${value}
    ELSE json_remove(json_set(${value}, '$.saveWhenSettled', json(${value} -> 'keepWhenSettled')), '$.keepWhenSettled')
  END`;

export const sql = `
  -- Pint, in ASCII.
  PRAGMA application_id = 0x50696E74;

  ${oldTriggers.map((name) => `DROP TRIGGER ${name};`).join('\n  ')}
  -- Caches, made again from the readings.
  DROP TABLE finding;
  DROP TABLE finding_due;
  DROP TABLE round_doubt;
  ${oldTables.map((name) => `ALTER TABLE ${name} RENAME TO old_${name};`).join('\n  ')}

  CREATE TABLE yard (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    uuid TEXT NOT NULL,
    created_at TEXT NOT NULL
  ) STRICT;
  INSERT INTO yard
    SELECT 1, ${inEveryYard("'yard', board_id, since")}, since FROM old_move ORDER BY board_id, id LIMIT 1;
  INSERT INTO yard
    SELECT 1, ${inEveryYard("'yard', id, name")}, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')
    FROM old_place WHERE NOT EXISTS (SELECT 1 FROM yard) ORDER BY id LIMIT 1;
  INSERT INTO yard
    SELECT 1, uuid_random(), strftime('%Y-%m-%dT%H:%M:%fZ', 'now') WHERE NOT EXISTS (SELECT 1 FROM yard);

  -- What a person did: one request that changed something. Its UUID is the request's, so that the same one sent twice
  -- takes effect once.
  CREATE TABLE act (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    request TEXT NOT NULL,
    input_hash TEXT NOT NULL,
    at TEXT NOT NULL,
    who TEXT NOT NULL,
    outcome TEXT CHECK (json_valid(outcome)),
    undone_by INTEGER REFERENCES act (id)
  ) STRICT;

  -- The act that the running transaction belongs to; null between transactions. The triggers of change-triggers.ts
  -- read it.
  CREATE TABLE act_now (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO act_now VALUES (1, NULL);

  -- How to undo an act: a row added (old_values null), deleted (new_values null), or edited (both, only what changed).
  CREATE TABLE act_change (
    id INTEGER PRIMARY KEY,
    act_id INTEGER NOT NULL REFERENCES act (id),
    in_table TEXT NOT NULL,
    row_uuid TEXT NOT NULL,
    old_values TEXT CHECK (json_valid(old_values)),
    new_values TEXT CHECK (json_valid(new_values)),
    CHECK (old_values IS NOT NULL OR new_values IS NOT NULL)
  ) STRICT;

  CREATE TABLE species (
    id TEXT PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    record TEXT NOT NULL CHECK (json_valid(record)),
    built_in INTEGER NOT NULL CHECK (built_in IN (0, 1))
  ) STRICT;
  INSERT INTO species SELECT id, ${inEveryYard("'species', id")}, 1, record, built_in FROM old_species;

  CREATE TABLE end_use (
    id TEXT PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    record TEXT NOT NULL CHECK (json_valid(record)),
    built_in INTEGER NOT NULL CHECK (built_in IN (0, 1))
  ) STRICT;
  INSERT INTO end_use SELECT id, ${inEveryYard("'end-use', id")}, 1, record, built_in FROM old_use;

  CREATE TABLE place (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    name TEXT NOT NULL COLLATE NOCASE,
    kind TEXT NOT NULL,
    air TEXT NOT NULL CHECK (json_array_length(air) = 12),
    -- Where the months come from: a station, a file, a sensor, the person; null where that is not known.
    air_source TEXT CHECK (json_valid(air_source)),
    air_movement TEXT,
    latitude REAL CHECK (latitude BETWEEN -90 AND 90),
    longitude REAL CHECK (longitude BETWEEN -180 AND 180),
    note TEXT NOT NULL DEFAULT '',
    closed_at TEXT
  ) STRICT;
  INSERT INTO place (id, uuid, name, kind, air)
    SELECT id, ${inYard("'place', id, name")}, name, kind, air FROM old_place;
  CREATE UNIQUE INDEX place_by_name ON place (name) WHERE closed_at IS NULL;

  CREATE TABLE stack (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    name TEXT NOT NULL COLLATE NOCASE,
    place_id INTEGER NOT NULL REFERENCES place (id),
    end_use_id TEXT NOT NULL REFERENCES end_use (id),
    -- What is over the top layer: a stack outdoors may stand under a cover or in the sun.
    top_cover TEXT NOT NULL DEFAULT 'covered' CHECK (top_cover IN ('covered', 'sun')),
    note TEXT NOT NULL DEFAULT '',
    closed_at TEXT
  ) STRICT;
  INSERT INTO stack (id, uuid, name, place_id, end_use_id, top_cover, note)
    SELECT id, ${inYard("'stack', id, name")}, name, place_id, use_id, top_cover, note FROM old_stack;
  CREATE UNIQUE INDEX stack_by_name ON stack (name) WHERE closed_at IS NULL;
  CREATE INDEX stack_by_place ON stack (place_id);

  CREATE TABLE board (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    code TEXT NOT NULL COLLATE NOCASE,
    stack_id INTEGER NOT NULL REFERENCES stack (id),
    species_id TEXT NOT NULL REFERENCES species (id),
    thickness_mm REAL NOT NULL CHECK (thickness_mm > 0),
    -- Where it was given in quarters of an inch: 8/4 stays 8/4.
    thickness_quarters INTEGER CHECK (thickness_quarters > 0),
    width_mm REAL,
    length_mm REAL,
    sawn_on TEXT,
    sawing TEXT NOT NULL,
    ring_radius_mm REAL CHECK (ring_radius_mm > 0),
    bark_side TEXT NOT NULL DEFAULT 'unknown',
    -- The day on which bark came off a face that had dried under it.
    bark_off_on TEXT,
    log TEXT NOT NULL,
    layer INTEGER,
    stack_column INTEGER,
    note TEXT NOT NULL DEFAULT '',
    -- The day since when it is known to be at the EMC of its place.
    at_emc_since TEXT,
    archived_at TEXT,
    archived_why TEXT CHECK (json_valid(archived_why)),
    -- Of its newest finding, for lists of 100,000 boards; null where there is none.
    latest_round_id INTEGER,
    latest_call TEXT,
    CHECK ((archived_at IS NULL) = (archived_why IS NULL))
  ) STRICT;
  INSERT INTO board (id, uuid, code, stack_id, species_id, thickness_mm, width_mm, length_mm, sawn_on, sawing,
      ring_radius_mm, bark_side, bark_off_on, log, layer, stack_column, note)
    SELECT id, ${inYard("'board', id, (SELECT since FROM old_move WHERE board_id = old_board.id ORDER BY id LIMIT 1)")},
      code, stack_id, species_id, thickness_mm, width_mm, length_mm, sawn_on, sawing, ring_radius_mm, bark_side, bark_off_on, log,
      course, stack_column, note FROM old_board;

  -- Which board was made of which: ripped, crosscut, merged with another that was the same.
  CREATE TABLE board_origin (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    child_id INTEGER NOT NULL REFERENCES board (id),
    parent_id INTEGER NOT NULL REFERENCES board (id),
    how TEXT NOT NULL,
    at TEXT NOT NULL,
    UNIQUE (child_id, parent_id),
    CHECK (child_id <> parent_id)
  ) STRICT;
  CREATE INDEX board_origin_by_parent ON board_origin (parent_id);

  -- Where a board stood, from when. The newest row says where it stands.
  CREATE TABLE move (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    board_id INTEGER NOT NULL REFERENCES board (id),
    place_id INTEGER NOT NULL REFERENCES place (id),
    since TEXT NOT NULL,
    -- How well the instant is known: by the clock, a time that a person gave, or only the day.
    dated_by TEXT NOT NULL DEFAULT 'time' CHECK (dated_by IN ('clock', 'time', 'day'))
  ) STRICT;
  INSERT INTO move (id, uuid, board_id, place_id, since)
    SELECT m.id, uuid_v5(b.uuid, 'move', m.id, m.since), m.board_id, m.place_id, m.since
    FROM old_move m JOIN board b ON b.id = m.board_id ORDER BY m.id;

  CREATE TABLE planned_move (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    stack_id INTEGER REFERENCES stack (id),
    board_id INTEGER REFERENCES board (id),
    place_id INTEGER NOT NULL REFERENCES place (id),
    planned_on TEXT NOT NULL,
    note TEXT NOT NULL DEFAULT '',
    CHECK ((stack_id IS NULL) <> (board_id IS NULL))
  ) STRICT;

  CREATE TABLE meter (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    kind TEXT NOT NULL,
    device_id TEXT NOT NULL,
    name TEXT NOT NULL,
    UNIQUE (kind, device_id)
  ) STRICT;
  INSERT INTO meter SELECT id, ${inEveryYard("'meter', kind, device_id")}, 1, kind, device_id, name FROM old_meter;

  -- How to read a meter, and what its values mean; meter_id null: typed values. Readings keep the version that they were
  -- taken with. The record is JSON null where nobody knew.
  CREATE TABLE meter_profile (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    meter_id INTEGER REFERENCES meter (id),
    version INTEGER NOT NULL,
    record TEXT NOT NULL CHECK (json_valid(record)),
    -- Null: before this was written down.
    made_at TEXT,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  CREATE UNIQUE INDEX meter_profile_by_meter ON meter_profile (coalesce(meter_id, 0), version);
  INSERT INTO meter_profile (uuid, meter_id, version, record)
    SELECT uuid_v5(m.uuid, 'profile', 1, coalesce(o.description, 'null')), m.id, 1, coalesce(o.description, 'null')
    FROM meter m JOIN old_meter o ON o.id = m.id
    WHERE o.description IS NOT NULL
      OR EXISTS (SELECT 1 FROM old_reading WHERE meter_id = m.id)
      OR EXISTS (SELECT 1 FROM old_oven_check WHERE meter_id = m.id)
    ORDER BY m.id;

  CREATE TABLE round (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    stack_id INTEGER NOT NULL REFERENCES stack (id),
    started_at TEXT NOT NULL,
    finished_at TEXT,
    dated_by TEXT NOT NULL DEFAULT 'clock' CHECK (dated_by IN ('clock', 'time', 'day')),
    meter_profile_id INTEGER REFERENCES meter_profile (id),
    air_temp_c REAL,
    air_rh REAL CHECK (air_rh BETWEEN 0 AND 1),
    note TEXT NOT NULL DEFAULT '',
    -- The version of the rules that last compared the round's boards; 0 while they are, null
    -- since a reading, an amendment or a temperature came.
    compared_by_rules INTEGER
  ) STRICT;
  INSERT INTO round (id, uuid, stack_id, started_at, finished_at)
    SELECT id, ${inYard("'round', id, started_at, stack_id")}, stack_id, started_at, finished_at
    FROM old_round;

  -- The wood's temperature as a person gave it; the newest row for a board, else for the whole round (board_id null), holds.
  CREATE TABLE wood_temperature (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    round_id INTEGER NOT NULL REFERENCES round (id),
    board_id INTEGER REFERENCES board (id),
    temp_c REAL,
    given_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO wood_temperature (id, uuid, round_id, board_id, temp_c, given_at)
    SELECT t.id, uuid_v5(r.uuid, 'wood-temperature', t.id, t.said_at), t.round_id, t.board_id, t.temp_c,
      t.said_at FROM old_wood_temperature t JOIN round r ON r.id = t.round_id;

  -- One raw value as it was taken. What is corrected about it is appended to amendment.
  CREATE TABLE reading (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
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
    -- Null: typed, and nobody told with which meter.
    meter_profile_id INTEGER REFERENCES meter_profile (id),
    taken_at TEXT NOT NULL,
    -- Of everything above, by reading-checksum.ts.
    checksum INTEGER NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO reading
    SELECT id, uuid, round_id, board_id, spot_index, spot, raw, unit, how, settled, wood_temp_c, profile_id, taken_at,
      reading_checksum(uuid, round_id, board_id, spot_index, spot, raw, unit, how, settled, wood_temp_c, profile_id,
        taken_at), NULL
    FROM (
      SELECT g.*, p.id AS profile_id, uuid_v5(r.uuid, 'reading', g.id, b.uuid, g.taken_at, g.raw) AS uuid
      FROM old_reading g JOIN round r ON r.id = g.round_id JOIN board b ON b.id = g.board_id
      LEFT JOIN meter_profile p ON p.meter_id = g.meter_id ORDER BY g.id
    );

  -- A piece that the meter read and that then went into the oven.
  CREATE TABLE oven_check (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    species_id TEXT NOT NULL REFERENCES species (id),
    -- Null: typed, and nobody told with which meter.
    meter_profile_id INTEGER REFERENCES meter_profile (id),
    piece TEXT NOT NULL,
    readings TEXT NOT NULL CHECK (json_array_length(readings) > 0),
    unit TEXT NOT NULL CHECK (unit IN ('pct', 'ohm')),
    wood_temp_c REAL,
    wet_grams REAL NOT NULL CHECK (wet_grams > 0),
    balance_grams REAL NOT NULL CHECK (balance_grams > 0),
    end_rule TEXT NOT NULL,
    note TEXT NOT NULL,
    read_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO oven_check
    SELECT c.id, ${inYard("'oven-check', c.id, c.species_id, c.read_at")}, c.species_id, p.id,
      c.piece, c.readings, c.unit, c.wood_temp_c, c.wet_grams, c.balance_grams, c.end_rule, c.note, c.read_at, NULL
    FROM old_oven_check c LEFT JOIN meter_profile p ON p.meter_id = c.meter_id;

  CREATE TABLE oven_weight (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    check_id INTEGER NOT NULL REFERENCES oven_check (id),
    grams REAL NOT NULL CHECK (grams > 0),
    weighed_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO oven_weight
    SELECT m.id, uuid_v5(c.uuid, 'weight', m.id, m.weighed_at, m.grams), m.check_id, m.grams,
      m.weighed_at, NULL FROM old_oven_mass m JOIN oven_check c ON c.id = m.check_id;

  -- Whether the fit to the checks of a species with a meter (null: typed) is to correct its readings; the newest row holds.
  CREATE TABLE own_fit_choice (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    species_id TEXT NOT NULL REFERENCES species (id),
    meter_id INTEGER REFERENCES meter (id),
    in_use INTEGER NOT NULL CHECK (in_use IN (0, 1)),
    chosen_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO own_fit_choice
    SELECT id, ${inYard("'own-fit-choice', id, species_id, chosen_at")}, species_id, meter_id, in_use,
      chosen_at, NULL FROM old_own_fit_choice;

  -- A sample board: what it weighed when sections were cut beside it. Cut again later, it is a shorter board.
  CREATE TABLE sample_cut (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    board_id INTEGER NOT NULL REFERENCES board (id),
    board_kg REAL NOT NULL CHECK (board_kg > 0),
    cut_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO sample_cut
    SELECT c.id, uuid_v5(b.uuid, 'sample-cut', c.id, c.cut_at, c.board_kg), c.board_id, c.board_kg,
      c.cut_at, NULL FROM old_sample_cut c JOIN board b ON b.id = c.board_id;

  CREATE TABLE sample_section (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    cut_id INTEGER NOT NULL REFERENCES sample_cut (id),
    wet_grams REAL NOT NULL CHECK (wet_grams > 0),
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO sample_section
    SELECT s.id, uuid_v5(c.uuid, 'section', s.id, s.wet_grams), s.cut_id, s.wet_grams, NULL
    FROM old_sample_section s JOIN sample_cut c ON c.id = s.cut_id;

  -- What a section weighed out of the oven; the newest row holds.
  CREATE TABLE sample_section_dry (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    section_id INTEGER NOT NULL REFERENCES sample_section (id),
    grams REAL NOT NULL CHECK (grams > 0),
    weighed_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO sample_section_dry
    SELECT d.id, uuid_v5(s.uuid, 'dry', d.id, d.weighed_at, d.grams), d.section_id, d.grams,
      d.weighed_at, NULL FROM old_sample_section_dry d JOIN sample_section s ON s.id = d.section_id;

  CREATE TABLE sample_weight (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    board_id INTEGER NOT NULL REFERENCES board (id),
    kg REAL NOT NULL CHECK (kg > 0),
    weighed_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  INSERT INTO sample_weight
    SELECT m.id, uuid_v5(b.uuid, 'sample-weight', m.id, m.weighed_at, m.kg), m.board_id, m.kg,
      m.weighed_at, NULL FROM old_sample_mass m JOIN board b ON b.id = m.board_id;

  -- What holds now of something that is only ever added to: the newest row of a field. JSON null in excluded: it is
  -- included again.
  CREATE TABLE amendment (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    reading_id INTEGER REFERENCES reading (id),
    oven_check_id INTEGER REFERENCES oven_check (id),
    oven_weight_id INTEGER REFERENCES oven_weight (id),
    sample_cut_id INTEGER REFERENCES sample_cut (id),
    sample_weight_id INTEGER REFERENCES sample_weight (id),
    field TEXT NOT NULL,
    value TEXT NOT NULL CHECK (json_valid(value)),
    at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id),
    CHECK ((reading_id IS NOT NULL) + (oven_check_id IS NOT NULL) + (oven_weight_id IS NOT NULL)
      + (sample_cut_id IS NOT NULL) + (sample_weight_id IS NOT NULL) = 1)
  ) STRICT;
  INSERT INTO amendment (uuid, reading_id, field, value, at)
    SELECT uuid_v5(g.uuid, 'excluded', k.id, k.marked_at), g.id, 'excluded', ${reason('k.why')}, k.marked_at
    FROM old_reading_mark k JOIN reading g ON g.id = k.reading_id ORDER BY k.id;
  INSERT INTO amendment (uuid, oven_check_id, oven_weight_id, field, value, at)
    SELECT uuid_v5(coalesce(w.uuid, c.uuid), 'excluded', k.id, k.marked_at), iif(w.id IS NULL, c.id, NULL),
      w.id, 'excluded', ${reason('k.why')}, k.marked_at
    FROM old_oven_mark k JOIN oven_check c ON c.id = k.check_id LEFT JOIN oven_weight w ON w.id = k.mass_id
    ORDER BY k.id;
  INSERT INTO amendment (uuid, sample_cut_id, sample_weight_id, field, value, at)
    SELECT uuid_v5(coalesce(w.uuid, c.uuid), 'excluded', k.id, k.marked_at), c.id, w.id, 'excluded',
      ${reason('k.why')}, k.marked_at
    FROM old_sample_mark k LEFT JOIN sample_cut c ON c.id = k.cut_id LEFT JOIN sample_weight w ON w.id = k.mass_id
    ORDER BY k.id;

  -- A person checked that the board is of this species; holds as long as the board is entered as that.
  CREATE TABLE confirmed_species (
    board_id INTEGER PRIMARY KEY REFERENCES board (id),
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    species_id TEXT NOT NULL REFERENCES species (id),
    confirmed_at TEXT NOT NULL
  ) STRICT;
  INSERT INTO confirmed_species
    SELECT c.board_id, uuid_v5(b.uuid, 'confirmed-species'), 1, c.species_id, c.confirmed_at
    FROM old_confirmed_wood c JOIN board b ON b.id = c.board_id;

  CREATE TABLE setting (
    key TEXT PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    value TEXT NOT NULL CHECK (json_valid(value))
  ) STRICT;
  INSERT INTO setting SELECT key, ${inYard("'setting', key")}, 1, ${renamedSettings('value')} FROM old_setting;

  CREATE TABLE project (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    name TEXT NOT NULL COLLATE NOCASE,
    needed_by TEXT,
    note TEXT NOT NULL DEFAULT '',
    closed_at TEXT
  ) STRICT;
  CREATE UNIQUE INDEX project_by_name ON project (name) WHERE closed_at IS NULL;

  CREATE TABLE reservation (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    board_id INTEGER NOT NULL UNIQUE REFERENCES board (id),
    project_id INTEGER NOT NULL REFERENCES project (id)
  ) STRICT;
  CREATE INDEX reservation_by_project ON reservation (project_id);

  CREATE TABLE label_print (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    board_id INTEGER NOT NULL REFERENCES board (id),
    content_hash TEXT NOT NULL,
    printed_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  CREATE INDEX label_print_by_board ON label_print (board_id, id);

  -- A block or resistor that a meter is checked against, with the value that it must show.
  CREATE TABLE test_block (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    name TEXT NOT NULL COLLATE NOCASE,
    expected REAL NOT NULL,
    tolerance REAL NOT NULL CHECK (tolerance > 0),
    unit TEXT NOT NULL CHECK (unit IN ('pct', 'ohm'))
  ) STRICT;

  CREATE TABLE meter_check (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    test_block_id INTEGER NOT NULL REFERENCES test_block (id),
    meter_profile_id INTEGER REFERENCES meter_profile (id),
    round_id INTEGER REFERENCES round (id),
    -- Of the block, when it was checked.
    expected REAL NOT NULL,
    tolerance REAL NOT NULL,
    shown REAL NOT NULL,
    checked_at TEXT NOT NULL,
    act_id INTEGER REFERENCES act (id)
  ) STRICT;
  CREATE INDEX meter_check_by_round ON meter_check (round_id) WHERE round_id IS NOT NULL;

  -- The picture itself lies beside the yard file, under its hash.
  CREATE TABLE picture (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    board_id INTEGER REFERENCES board (id),
    stack_id INTEGER REFERENCES stack (id),
    round_id INTEGER REFERENCES round (id),
    reading_id INTEGER REFERENCES reading (id),
    content_hash TEXT NOT NULL,
    media_type TEXT NOT NULL,
    bytes INTEGER NOT NULL CHECK (bytes > 0),
    caption TEXT NOT NULL DEFAULT '',
    added_at TEXT NOT NULL,
    CHECK ((board_id IS NOT NULL) + (stack_id IS NOT NULL) + (round_id IS NOT NULL) + (reading_id IS NOT NULL) = 1)
  ) STRICT;
  CREATE INDEX picture_by_board ON picture (board_id) WHERE board_id IS NOT NULL;

  -- The air of a place as a sensor there logged it. A line is known by its place, instant and sensor.
  CREATE TABLE air_log (
    place_id INTEGER NOT NULL REFERENCES place (id),
    at TEXT NOT NULL,
    sensor TEXT NOT NULL,
    temp_c REAL,
    rh REAL CHECK (rh BETWEEN 0 AND 1),
    PRIMARY KEY (place_id, at, sensor)
  ) STRICT, WITHOUT ROWID;

  -- A cache: what the rules of that version make of the board's readings in one round. Can be thrown away.
  CREATE TABLE finding (
    board_id INTEGER NOT NULL REFERENCES board (id),
    round_id INTEGER NOT NULL REFERENCES round (id),
    at TEXT NOT NULL,
    call TEXT NOT NULL,
    record TEXT NOT NULL CHECK (json_valid(record)),
    rules_version INTEGER NOT NULL,
    PRIMARY KEY (board_id, round_id)
  ) STRICT, WITHOUT ROWID;

  -- A cache: what holding the boards of a round against each other found, as JSON.
  CREATE TABLE round_suspicion (
    round_id INTEGER NOT NULL REFERENCES round (id),
    board_id INTEGER NOT NULL REFERENCES board (id),
    suspicions TEXT NOT NULL CHECK (json_valid(suspicions)),
    PRIMARY KEY (round_id, board_id)
  ) STRICT, WITHOUT ROWID;

  -- A board's readings of a round that are still to be judged: the file itself keeps count, so that opening a yard need
  -- not look for them among all readings.
  CREATE TABLE finding_due (
    board_id INTEGER NOT NULL REFERENCES board (id),
    round_id INTEGER NOT NULL REFERENCES round (id),
    PRIMARY KEY (board_id, round_id)
  ) STRICT, WITHOUT ROWID;
  INSERT INTO finding_due SELECT DISTINCT board_id, round_id FROM reading ORDER BY board_id, round_id;

  ${[...oldTables]
    .reverse()
    .map((name) => `DROP TABLE old_${name};`)
    .join('\n  ')}

  CREATE UNIQUE INDEX board_by_code ON board (code) WHERE archived_at IS NULL;
  CREATE INDEX board_by_archived ON board (archived_at);
  CREATE INDEX board_by_stack ON board (stack_id, archived_at);
  CREATE INDEX board_by_call ON board (stack_id, archived_at, latest_call);
  CREATE INDEX move_by_board ON move (board_id, since);
  CREATE INDEX round_by_stack ON round (stack_id, started_at);
  CREATE INDEX round_by_rules ON round (compared_by_rules);
  CREATE INDEX wood_temperature_by_round ON wood_temperature (round_id, board_id, id);
  CREATE INDEX reading_by_board ON reading (board_id, round_id);
  CREATE INDEX reading_by_round ON reading (round_id);
  CREATE INDEX reading_by_profile ON reading (meter_profile_id, board_id) WHERE meter_profile_id IS NOT NULL;
  CREATE INDEX reading_by_act ON reading (act_id) WHERE act_id IS NOT NULL;
  CREATE INDEX oven_check_by_species ON oven_check (species_id, id);
  CREATE INDEX oven_weight_by_check ON oven_weight (check_id, weighed_at);
  CREATE INDEX own_fit_choice_by_species ON own_fit_choice (species_id, meter_id, id);
  CREATE INDEX sample_cut_by_board ON sample_cut (board_id, cut_at);
  CREATE INDEX sample_section_by_cut ON sample_section (cut_id);
  CREATE INDEX sample_section_dry_by_section ON sample_section_dry (section_id, id);
  CREATE INDEX sample_weight_by_board ON sample_weight (board_id, weighed_at);
  CREATE INDEX amendment_of_reading ON amendment (reading_id, field, id) WHERE reading_id IS NOT NULL;
  CREATE INDEX amendment_of_oven_check ON amendment (oven_check_id, field, id) WHERE oven_check_id IS NOT NULL;
  CREATE INDEX amendment_of_oven_weight ON amendment (oven_weight_id, field, id) WHERE oven_weight_id IS NOT NULL;
  CREATE INDEX amendment_of_sample_cut ON amendment (sample_cut_id, field, id) WHERE sample_cut_id IS NOT NULL;
  CREATE INDEX amendment_of_sample_weight ON amendment (sample_weight_id, field, id) WHERE sample_weight_id IS NOT NULL;
  CREATE INDEX amendment_by_act ON amendment (act_id) WHERE act_id IS NOT NULL;
  CREATE INDEX act_change_by_act ON act_change (act_id);
  CREATE INDEX act_change_by_row ON act_change (row_uuid);
  CREATE INDEX finding_by_rules ON finding (rules_version);

  ${appendOnly.map(neverChanged).join('')}

  CREATE TRIGGER round_to_compare_after_reading AFTER INSERT ON reading
    BEGIN UPDATE round SET compared_by_rules = NULL WHERE id = new.round_id; END;
  CREATE TRIGGER round_to_compare_after_amendment AFTER INSERT ON amendment
    WHEN new.reading_id IS NOT NULL AND new.field <> 'note'
    BEGIN UPDATE round SET compared_by_rules = NULL
      WHERE id = (SELECT round_id FROM reading WHERE id = new.reading_id); END;
  CREATE TRIGGER round_to_compare_after_temperature AFTER INSERT ON wood_temperature
    BEGIN UPDATE round SET compared_by_rules = NULL WHERE id = new.round_id; END;

  CREATE TRIGGER finding_due_after_reading AFTER INSERT ON reading
    BEGIN INSERT OR IGNORE INTO finding_due VALUES (new.board_id, new.round_id); END;
  CREATE TRIGGER finding_due_after_amendment AFTER INSERT ON amendment
    WHEN new.reading_id IS NOT NULL AND new.field <> 'note'
    BEGIN INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading WHERE id = new.reading_id; END;
  CREATE TRIGGER finding_due_after_temperature AFTER INSERT ON wood_temperature
    BEGIN INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading
      WHERE round_id = new.round_id AND (new.board_id IS NULL OR board_id = new.board_id); END;
  CREATE TRIGGER finding_due_after_its_loss AFTER DELETE ON finding
    BEGIN INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading
      WHERE board_id = old.board_id AND round_id = old.round_id; END;
  CREATE TRIGGER finding_made AFTER INSERT ON finding
    BEGIN DELETE FROM finding_due WHERE board_id = new.board_id AND round_id = new.round_id; END;
  CREATE TRIGGER finding_made_again AFTER UPDATE ON finding
    BEGIN DELETE FROM finding_due WHERE board_id = new.board_id AND round_id = new.round_id; END;
`;
