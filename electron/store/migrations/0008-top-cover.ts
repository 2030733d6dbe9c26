export const sql = `
  -- What is over the top course: a stack outdoors may stand under a cover or in the sun.
  ALTER TABLE stack ADD COLUMN top_cover TEXT NOT NULL DEFAULT 'covered' CHECK (top_cover IN ('covered', 'sun'));
`;
