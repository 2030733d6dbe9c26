/** An instant after all others: of two records of one board, all readings are of it. */
const ALWAYS = '9999';
const until = (origin: string) => `iif(${origin}.how = 'merged', '${ALWAYS}', ${origin}.at)`;

/** Rounds of a board with readings of those that it came from, which are to be judged again. */
const dueBelow = (readings: string): string => `
    INSERT OR IGNORE INTO finding_due SELECT DISTINCT l.board_id, g.round_id FROM reading g
      JOIN round r ON r.id = g.round_id JOIN lineage l ON l.ancestor_id = g.board_id
      WHERE r.started_at < l.until AND ${readings};`;

const allOf = (row: 'new' | 'old'): string => `
    INSERT OR IGNORE INTO finding_due
      SELECT DISTINCT ${row}.board_id, round_id FROM reading WHERE board_id = ${row}.ancestor_id;`;

const undone = (event: 'INSERT' | 'DELETE', row: 'new' | 'old'): string => `
  CREATE TRIGGER lineage_due_after_undone_${event.toLowerCase()} AFTER ${event} ON undone_row BEGIN
    ${dueBelow(`${row}.in_table = 'reading' AND g.uuid = ${row}.uuid`)}
    ${dueBelow(`${row}.in_table = 'amendment' AND g.id = (SELECT reading_id FROM amendment WHERE uuid = ${row}.uuid)`)}
    ${dueBelow(`${row}.in_table = 'wood_temperature' AND g.round_id = (SELECT round_id FROM wood_temperature WHERE uuid = ${row}.uuid)`)}
    ${dueBelow(`${row}.in_table = 'spot_plan' AND g.round_id = (SELECT round_id FROM spot_plan WHERE uuid = ${row}.uuid)`)}
  END;`;

const suspicions = (event: 'INSERT' | 'UPDATE' | 'DELETE', row: 'new' | 'old'): string => `
  CREATE TRIGGER lineage_due_after_suspicion_${event.toLowerCase()} AFTER ${event} ON round_suspicion BEGIN
    ${dueBelow(`g.round_id = ${row}.round_id AND g.board_id = ${row}.board_id`)} END;`;

/** What is missing of it. */
const MADE = `
    INSERT OR IGNORE INTO lineage (board_id, ancestor_id, until)
      SELECT board_id, ancestor_id, max(until) FROM (
        WITH RECURSIVE line (board_id, ancestor_id, until) AS (
          SELECT o.child_id, o.parent_id, ${until('o')} FROM board_origin o
          UNION SELECT l.board_id, o.parent_id, min(l.until, ${until('o')})
            FROM line l JOIN board_origin o ON o.child_id = l.ancestor_id)
        SELECT * FROM line WHERE board_id <> ancestor_id) GROUP BY board_id, ancestor_id;`;
/** Looked for among all origins: one is seldom taken back or corrected. */
const MADE_AGAIN = `
    DELETE FROM lineage WHERE board_id = old.child_id
      OR board_id IN (SELECT board_id FROM lineage WHERE ancestor_id = old.child_id);${MADE}`;

/**
 * A cache made from `board_origin`: for each board all boards that it came from, and until when readings of those are
 * readings of its wood. Its findings are of these too, so whatever makes those due makes its own due.
 */
export const sql = `
  CREATE TABLE lineage (
    board_id INTEGER NOT NULL REFERENCES board (id),
    ancestor_id INTEGER NOT NULL REFERENCES board (id),
    until TEXT NOT NULL,
    PRIMARY KEY (board_id, ancestor_id)
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX lineage_by_ancestor ON lineage (ancestor_id);

  CREATE TRIGGER lineage_of_new_origin AFTER INSERT ON board_origin BEGIN
    INSERT INTO lineage (board_id, ancestor_id, until)
      SELECT d.id, a.id, min(d.until, a.until, ${until('new')})
      FROM (SELECT new.child_id AS id, '${ALWAYS}' AS until
          UNION ALL SELECT board_id, until FROM lineage WHERE ancestor_id = new.child_id) d
        CROSS JOIN (SELECT new.parent_id AS id, '${ALWAYS}' AS until
          UNION ALL SELECT ancestor_id, until FROM lineage WHERE board_id = new.parent_id) a
      WHERE d.id <> a.id
      ON CONFLICT (board_id, ancestor_id) DO UPDATE SET until = max(until, excluded.until);
  END;
  CREATE TRIGGER lineage_of_edited_origin AFTER UPDATE ON board_origin BEGIN ${MADE_AGAIN} END;
  CREATE TRIGGER lineage_of_lost_origin AFTER DELETE ON board_origin BEGIN ${MADE_AGAIN} END;

  CREATE TRIGGER finding_due_after_lineage AFTER INSERT ON lineage BEGIN
    ${dueBelow('l.board_id = new.board_id AND g.board_id = new.ancestor_id')} END;
  CREATE TRIGGER finding_due_after_other_lineage AFTER UPDATE ON lineage BEGIN ${allOf('new')} END;
  CREATE TRIGGER finding_due_after_lost_lineage AFTER DELETE ON lineage BEGIN ${allOf('old')} END;

  CREATE TRIGGER lineage_due_after_reading AFTER INSERT ON reading BEGIN
    INSERT OR IGNORE INTO finding_due SELECT board_id, new.round_id FROM lineage
      WHERE ancestor_id = new.board_id AND until > (SELECT started_at FROM round WHERE id = new.round_id); END;
  CREATE TRIGGER lineage_due_after_amendment AFTER INSERT ON amendment
    WHEN new.reading_id IS NOT NULL AND new.field <> 'note' BEGIN ${dueBelow('g.id = new.reading_id')} END;
  CREATE TRIGGER lineage_due_after_temperature AFTER INSERT ON wood_temperature BEGIN
    ${dueBelow('g.round_id = new.round_id AND (new.board_id IS NULL OR g.board_id = new.board_id)')} END;
  CREATE TRIGGER lineage_due_after_spot_plan AFTER INSERT ON spot_plan WHEN new.board_id IS NOT NULL BEGIN
    ${dueBelow('g.round_id = new.round_id AND g.board_id = new.board_id')} END;
  CREATE TRIGGER lineage_due_after_lost_finding AFTER DELETE ON finding BEGIN
    ${dueBelow('l.board_id = old.board_id AND g.round_id = old.round_id')} END;
  -- Another date may be after the cut, or before it.
  CREATE TRIGGER lineage_due_after_redating AFTER UPDATE OF started_at ON round WHEN old.started_at <> new.started_at BEGIN
    INSERT OR IGNORE INTO finding_due SELECT DISTINCT l.board_id, g.round_id FROM reading g
      JOIN lineage l ON l.ancestor_id = g.board_id WHERE g.round_id = new.id; END;
  ${undone('INSERT', 'new')}
  ${undone('DELETE', 'old')}
  ${suspicions('INSERT', 'new')}
  ${suspicions('UPDATE', 'new')}
  ${suspicions('DELETE', 'old')}

  -- An export that was brought in may have had origins.
  ${MADE}
`;
