/**
 * The acts of other yard files that were brought in, by their UUIDs: where both files are brought together again, what
 * these acts did is known here.
 */
export const sql = `
  CREATE TABLE merged_act (uuid TEXT PRIMARY KEY) STRICT;
`;
