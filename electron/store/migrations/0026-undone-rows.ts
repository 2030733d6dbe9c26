/** Tables that are only ever added to, whose rows bear their act; readings and amendments have an index already. */
const appended = [
  'label_print',
  'meter_check',
  'meter_profile',
  'oven_check',
  'oven_weight',
  'own_fit_choice',
  'sample_cut',
  'sample_section',
  'sample_section_dry',
  'sample_weight',
  'spot_plan',
  'wood_temperature',
];

/** A row that holds no longer, or holds again, changes what is made of the readings that it says something of. */
const judgedAgain = (event: 'INSERT' | 'DELETE', row: 'new' | 'old'): string => `
  CREATE TRIGGER judged_again_after_undone_${event.toLowerCase()} AFTER ${event} ON undone_row BEGIN
    INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading
      WHERE ${row}.in_table = 'reading' AND uuid = ${row}.uuid;
    INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading
      WHERE ${row}.in_table = 'amendment' AND id = (SELECT reading_id FROM amendment WHERE uuid = ${row}.uuid);
    INSERT OR IGNORE INTO finding_due SELECT g.board_id, g.round_id FROM wood_temperature t
      JOIN reading g ON g.round_id = t.round_id AND (t.board_id IS NULL OR g.board_id = t.board_id)
      WHERE ${row}.in_table = 'wood_temperature' AND t.uuid = ${row}.uuid;
    INSERT OR IGNORE INTO finding_due SELECT g.board_id, g.round_id FROM spot_plan p
      JOIN reading g ON g.round_id = p.round_id AND g.board_id = p.board_id
      WHERE ${row}.in_table = 'spot_plan' AND p.uuid = ${row}.uuid;
    UPDATE round SET compared_by_rules = NULL WHERE id IN (
      SELECT round_id FROM reading WHERE ${row}.in_table = 'reading' AND uuid = ${row}.uuid
      UNION ALL SELECT g.round_id FROM amendment k JOIN reading g ON g.id = k.reading_id
        WHERE ${row}.in_table = 'amendment' AND k.uuid = ${row}.uuid
      UNION ALL SELECT round_id FROM wood_temperature WHERE ${row}.in_table = 'wood_temperature' AND uuid = ${row}.uuid);
  END;`;

/**
 * Makes every act one that can be undone. A row of a table that is only ever added to stays when its act is undone, and is
 * named in `undone_row`: it holds no longer. What others refer to is hidden and not deleted.
 */
export const sql = `
  -- By the UUID of the row in its table.
  CREATE TABLE undone_row (
    uuid TEXT PRIMARY KEY,
    version INTEGER NOT NULL DEFAULT 1,
    in_table TEXT NOT NULL
  ) STRICT;
  -- The highest id that a deleted row of a table had: redone, the row has its id again, so no other may have it.
  CREATE TABLE used_id (
    in_table TEXT PRIMARY KEY,
    id INTEGER NOT NULL
  ) STRICT;

  ALTER TABLE species ADD COLUMN undone_at TEXT;
  ALTER TABLE end_use ADD COLUMN undone_at TEXT;
  ALTER TABLE round ADD COLUMN undone_at TEXT;
  ALTER TABLE meter ADD COLUMN undone_at TEXT;

  CREATE INDEX act_by_undoing ON act (undone_by) WHERE undone_by IS NOT NULL;
  DROP INDEX act_change_by_act;
  -- How many rows of each table an act added, edited and deleted is counted by it alone.
  CREATE INDEX act_change_by_act ON act_change (act_id, in_table, (old_values IS NULL), (new_values IS NULL));
  ${appended.map((table) => `CREATE INDEX ${table}_by_act ON ${table} (act_id) WHERE act_id IS NOT NULL;`).join('\n  ')}
  ${judgedAgain('INSERT', 'new')}
  ${judgedAgain('DELETE', 'old')}
`;
