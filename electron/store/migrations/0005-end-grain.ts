export const sql = `
  -- How a board's rings lie: what its end grain shows.
  ALTER TABLE board ADD COLUMN ring_radius_mm REAL CHECK (ring_radius_mm > 0);
  ALTER TABLE board ADD COLUMN bark_side TEXT NOT NULL DEFAULT 'unknown';
`;
