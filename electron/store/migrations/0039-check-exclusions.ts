/** Why a check of a meter is excluded, as JSON; null where it is included again. The newest row of a check holds. */
export const sql = `
  CREATE TABLE check_exclusion (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    act_id INTEGER REFERENCES act (id),
    meter_check_id INTEGER NOT NULL REFERENCES meter_check (id),
    excluded TEXT NOT NULL CHECK (json_valid(excluded)),
    at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX check_exclusion_by_check ON check_exclusion (meter_check_id, id);
  CREATE INDEX check_exclusion_by_act ON check_exclusion (act_id) WHERE act_id IS NOT NULL;
  CREATE TRIGGER check_exclusion_is_never_edited BEFORE UPDATE ON check_exclusion
    BEGIN SELECT RAISE (ABORT, 'a row of check_exclusion is never edited'); END;
  CREATE TRIGGER check_exclusion_is_never_deleted BEFORE DELETE ON check_exclusion
    BEGIN SELECT RAISE (ABORT, 'a row of check_exclusion is never deleted'); END;
`;
