/**
 * The act of this file that merged in each act of another file. If it is undone, those acts count as new again. Blank if
 * not known.
 */
export const sql = `
  CREATE TABLE merged_by (
    uuid TEXT NOT NULL,
    by_act TEXT NOT NULL,
    PRIMARY KEY (uuid, by_act)
  ) STRICT;
  INSERT INTO merged_by SELECT uuid, '' FROM merged_act;
  DROP TABLE merged_act;
  ALTER TABLE merged_by RENAME TO merged_act;
`;
