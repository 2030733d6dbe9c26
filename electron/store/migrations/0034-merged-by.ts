/**
 * By which act of this file those of other files were brought in: where it is undone, they are news again. Blank where
 * that is not known.
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
