export const sql = `
  -- The day on which bark came off a face that had dried under it.
  ALTER TABLE board ADD COLUMN bark_off_on TEXT;
`;
