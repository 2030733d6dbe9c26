/** Where a round walks the boards of its stack, for those that were moved elsewhere. Null: where the stack is. */
export const sql = `
  ALTER TABLE round ADD COLUMN place_id INTEGER REFERENCES place (id);
`;
