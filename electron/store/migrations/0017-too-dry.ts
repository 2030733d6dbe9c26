/** Where a board's call comes in lists, boards without one last: what `board_by_call` is by. */
export const CALL_RANK = `CASE latest_call WHEN 'ready' THEN 0 WHEN 'bring-in' THEN 1 WHEN 'keep-drying' THEN 2
  WHEN 'too-dry' THEN 3 WHEN 'probe-again' THEN 4 ELSE 5 END`;

/** Boards can be called too dry, and are sorted by that. */
export const sql = `
  DROP INDEX board_by_call;
  CREATE INDEX board_by_call ON board (${CALL_RANK}) WHERE archived_at IS NULL;
`;
