/** A meter that is no longer owned leaves the lists; its readings keep it. */
export const sql = `
  ALTER TABLE meter ADD COLUMN closed_at TEXT;
`;
