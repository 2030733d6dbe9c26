/** Once an act and place: a long import would mark all boards for each of its rows. @param place  SQL for its id */
const due = (name: string, event: string, when: string, place: string): string => `
  CREATE TRIGGER ${name} AFTER ${event}
    WHEN (${when}) AND (SELECT act_id FROM act_now) IS NOT (SELECT air_act FROM place WHERE id = ${place}) BEGIN
      ${dueAll}
      UPDATE place SET air_act = (SELECT act_id FROM act_now) WHERE id = ${place};
    END;`;

/** Any board could have been there, or be moved there. */
const dueAll = `
      INSERT INTO outlook_due (board_id, touched) SELECT id, 1 FROM board WHERE archived_at IS NULL
        ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1;
      DELETE FROM core_history;`;

const ofLog = (row: 'new' | 'old'): string => `(SELECT place_id FROM air_log WHERE uuid = ${row}.uuid)`;

/**
 * Sensors of air and of wood temperature, where each was since when, and what they logged. A log names its sensor, so that
 * a sensor that was moved needs no row of it changed; or the place, where a person typed or imported it as of its day.
 * What a sensor logs by itself bears no act.
 */
export const sql = `
  DROP TABLE air_log;

  CREATE TABLE air_sensor (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    name TEXT NOT NULL,
    device_id TEXT NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('air', 'probe')),
    closed_at TEXT
  ) STRICT;

  -- From an instant until the next one of its sensor. Null: at no place.
  CREATE TABLE air_sensor_stay (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    sensor_id INTEGER NOT NULL REFERENCES air_sensor (id),
    place_id INTEGER REFERENCES place (id),
    since TEXT NOT NULL
  ) STRICT;
  CREATE INDEX air_sensor_stay_by_sensor ON air_sensor_stay (sensor_id, since);
  CREATE INDEX air_sensor_stay_by_place ON air_sensor_stay (place_id) WHERE place_id IS NOT NULL;

  CREATE TABLE air_log (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    act_id INTEGER REFERENCES act (id),
    place_id INTEGER REFERENCES place (id),
    sensor_id INTEGER REFERENCES air_sensor (id),
    at TEXT NOT NULL,
    temp_c REAL NOT NULL,
    rh REAL NOT NULL CHECK (rh BETWEEN 0 AND 1),
    CHECK ((place_id IS NULL) <> (sensor_id IS NULL))
  ) STRICT;
  CREATE INDEX air_log_by_sensor ON air_log (sensor_id, at) WHERE sensor_id IS NOT NULL;
  CREATE INDEX air_log_by_place ON air_log (place_id, at) WHERE place_id IS NOT NULL;
  CREATE INDEX air_log_by_act ON air_log (act_id) WHERE act_id IS NOT NULL;
  CREATE TRIGGER air_log_is_never_edited BEFORE UPDATE ON air_log
    BEGIN SELECT RAISE (ABORT, 'a row of air_log is never edited'); END;
  CREATE TRIGGER air_log_is_never_deleted BEFORE DELETE ON air_log
    BEGIN SELECT RAISE (ABORT, 'a row of air_log is never deleted'); END;

  -- The act that last marked the boards for what was typed or imported of the air there.
  ALTER TABLE place ADD COLUMN air_act INTEGER;
  ${due('outlook_due_after_air', 'INSERT ON air_log', 'new.act_id IS NOT NULL', 'new.place_id')}
  ${due('outlook_due_after_air_undone', 'INSERT ON undone_row', "new.in_table = 'air_log'", ofLog('new'))}
  ${due('outlook_due_after_air_redone', 'DELETE ON undone_row', "old.in_table = 'air_log'", ofLog('old'))}
  ${['INSERT', 'UPDATE', 'DELETE']
    .map(
      (event) =>
        `CREATE TRIGGER outlook_due_after_sensor_${event.toLowerCase()} AFTER ${event} ON air_sensor_stay BEGIN ${dueAll} END;`,
    )
    .join('\n  ')}
`;
