export const sql = `
  -- A person looked at the board and says that it is of this wood; holds as long as it is entered as that.
  CREATE TABLE confirmed_wood (
    board_id INTEGER PRIMARY KEY REFERENCES board (id),
    species_id TEXT NOT NULL REFERENCES species (id),
    confirmed_at TEXT NOT NULL
  ) STRICT;
`;
