import { hasEffect } from '../undone-rows.ts';
import { uuidV5 } from '../uuid.ts';
import type { Db } from '../yard-file.ts';

export function prepare(db: Db): void {
  db.function('correction_uuid', { deterministic: true }, (act: string) => uuidV5(act, 'check_correction'));
}

/** Whether readings are corrected by a check of their meter. The newest row of a check holds. */
export const sql = `
  CREATE TABLE check_correction (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    act_id INTEGER REFERENCES act (id),
    meter_check_id INTEGER NOT NULL REFERENCES meter_check (id),
    corrects INTEGER NOT NULL CHECK (corrects IN (0, 1)),
    at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX check_correction_by_check ON check_correction (meter_check_id, id);
  CREATE INDEX check_correction_by_act ON check_correction (act_id) WHERE act_id IS NOT NULL;
  CREATE TRIGGER check_correction_is_never_edited BEFORE UPDATE ON check_correction
    BEGIN SELECT RAISE (ABORT, 'a row of check_correction is never edited'); END;
  CREATE TRIGGER check_correction_is_never_deleted BEFORE DELETE ON check_correction
    BEGIN SELECT RAISE (ABORT, 'a row of check_correction is never deleted'); END;
  INSERT INTO check_correction (uuid, act_id, meter_check_id, corrects, at)
    SELECT correction_uuid(a.uuid), a.id, c.id, 1, a.at
    FROM act a JOIN meter_check c ON c.id = a.outcome ->> 'checkId'
    WHERE a.request = 'meterChecks.correct' AND ${hasEffect('a')} ORDER BY a.id;
`;
