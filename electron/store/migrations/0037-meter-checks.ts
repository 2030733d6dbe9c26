/** A test block is one meter's, says how often that meter is to be checked, and can be closed; a check has its temperature. */
export const sql = `
  ALTER TABLE test_block ADD COLUMN meter_id INTEGER REFERENCES meter (id);
  ALTER TABLE test_block ADD COLUMN check_every TEXT NOT NULL DEFAULT 'day';
  ALTER TABLE test_block ADD COLUMN closed_at TEXT;
  ALTER TABLE meter_check ADD COLUMN temp_c REAL;
  CREATE INDEX test_block_by_meter ON test_block (meter_id);
  CREATE INDEX meter_check_by_block ON meter_check (test_block_id, checked_at);
  CREATE INDEX meter_check_by_profile ON meter_check (meter_profile_id, checked_at);
`;
