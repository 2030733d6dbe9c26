/**
 * Names the acts that are done in slices and whose last one is not done yet (`act-slices.ts`). Where the app ended in
 * between, what they did is taken back when the file is next opened.
 */
export const sql = `
  CREATE TABLE unfinished_act (
    act_id INTEGER PRIMARY KEY REFERENCES act (id)
  ) STRICT;
`;
