/** A finding may have no call: it is read from its record alone. */
export const sql = `
  ALTER TABLE finding DROP COLUMN call;
`;
