/**
 * Makes a round due once where it was due already. `INSERT OR IGNORE` does not do that here: SQLite takes the conflict
 * rule of the statement that fires a trigger, and what adds to `lineage` is an upsert.
 */
const dueOnce = (row: 'new' | 'old', until: string): string => `
    INSERT INTO finding_due (board_id, round_id)
      SELECT DISTINCT ${row}.board_id, g.round_id FROM reading g JOIN round r ON r.id = g.round_id
      WHERE g.board_id = ${row}.ancestor_id AND ${until}
        AND NOT EXISTS (SELECT 1 FROM finding_due d WHERE d.board_id = ${row}.board_id AND d.round_id = g.round_id);`;

export const sql = `
  DROP TRIGGER finding_due_after_lineage;
  DROP TRIGGER finding_due_after_other_lineage;
  DROP TRIGGER finding_due_after_lost_lineage;
  CREATE TRIGGER finding_due_after_lineage AFTER INSERT ON lineage BEGIN
    ${dueOnce('new', 'r.started_at < new.until')} END;
  CREATE TRIGGER finding_due_after_other_lineage AFTER UPDATE ON lineage BEGIN ${dueOnce('new', '1')} END;
  CREATE TRIGGER finding_due_after_lost_lineage AFTER DELETE ON lineage BEGIN ${dueOnce('old', '1')} END;
`;
