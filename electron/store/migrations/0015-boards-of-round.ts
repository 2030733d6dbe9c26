/**
 * The newest board that there was when a round was finished: its date can be corrected, and a clock can be wrong, so no
 * time tells which boards it had.
 */
export const sql = `
  ALTER TABLE round ADD COLUMN last_board_id INTEGER;
  UPDATE round SET last_board_id = (
    SELECT max(b.id) FROM board b WHERE (SELECT min(since) FROM move WHERE board_id = b.id) <= round.finished_at
  ) WHERE finished_at IS NOT NULL;
`;
