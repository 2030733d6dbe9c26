/** Once an act and place, as for what is typed: a period has a row for each of its days. @param row  SQL for its row */
const due = (event: 'INSERT' | 'DELETE', row: 'new' | 'old'): string => `
  CREATE TRIGGER outlook_due_after_air_exclusion_${event.toLowerCase()} AFTER ${event} ON air_exclusion
    WHEN (SELECT act_id FROM act_now) IS NOT (SELECT air_act FROM place WHERE id = ${row}.place_id) BEGIN
      INSERT INTO outlook_due (board_id, touched) SELECT id, 1 FROM board WHERE archived_at IS NULL
        ON CONFLICT (board_id) DO UPDATE SET touched = touched + 1;
      DELETE FROM core_history;
      UPDATE place SET air_act = (SELECT act_id FROM act_now) WHERE id = ${row}.place_id;
    END;`;

/**
 * What of the air that was measured at a place is not used because a person says so: what sensors logged on a day, by its
 * UTC date; or a value that was typed, which was deleted or replaced. The log itself stays.
 */
export const sql = `
  CREATE TABLE air_exclusion (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    version INTEGER NOT NULL DEFAULT 1,
    place_id INTEGER NOT NULL REFERENCES place (id),
    day TEXT,
    log_id INTEGER REFERENCES air_log (id),
    CHECK ((day IS NULL) <> (log_id IS NULL))
  ) STRICT;
  CREATE INDEX air_exclusion_by_place ON air_exclusion (place_id);
  CREATE INDEX air_exclusion_by_log ON air_exclusion (log_id) WHERE log_id IS NOT NULL;
  ${due('INSERT', 'new')}
  ${due('DELETE', 'old')}
`;
