/** Boards of which some spots are read, but too few for a call, are counted by their stack without a look at the others. */
export const sql = `
  CREATE INDEX board_half_probed ON board (stack_id, place_id)
    WHERE archived_at IS NULL AND latest_call IS NULL AND latest_at IS NOT NULL;
`;
