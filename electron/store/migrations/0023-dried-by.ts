export const sql = `
  -- Whether a board came from a kiln: then it may be drier than the air of its places makes it.
  ALTER TABLE board ADD COLUMN dried_by TEXT NOT NULL DEFAULT 'air' CHECK (dried_by IN ('air', 'kiln'));
`;
