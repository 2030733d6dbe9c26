/** Finds what acts deleted by its id, for its name, and by the board that it was of. */
export const sql = `
  CREATE INDEX act_change_by_lost_id ON act_change (in_table, old_values ->> 'id') WHERE new_values IS NULL;
  CREATE INDEX act_change_by_lost_board ON act_change (old_values ->> 'board_id') WHERE new_values IS NULL;
`;
