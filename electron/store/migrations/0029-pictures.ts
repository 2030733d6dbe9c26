/** Finds pictures by what they are of, and shows them in lists by small ones. A copy of the yard in one file has the pictures in it. */
export const sql = `
  CREATE INDEX picture_by_stack ON picture (stack_id) WHERE stack_id IS NOT NULL;
  CREATE INDEX picture_by_round ON picture (round_id) WHERE round_id IS NOT NULL;
  CREATE INDEX picture_by_reading ON picture (reading_id) WHERE reading_id IS NOT NULL;

  -- A cache: can be made again from the picture.
  CREATE TABLE thumbnail (
    content_hash TEXT PRIMARY KEY,
    base64 TEXT NOT NULL
  ) STRICT, WITHOUT ROWID;

  -- Empty but in a copy of the yard that is taken elsewhere.
  CREATE TABLE packed_picture (
    id INTEGER PRIMARY KEY,
    content_hash TEXT NOT NULL UNIQUE,
    content BLOB NOT NULL
  ) STRICT;
`;
