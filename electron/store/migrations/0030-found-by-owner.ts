/** Finds rows by the board or the round that they are of, so that undoing an act on thousands goes through no table for each. */
export const sql = `
  CREATE INDEX spot_plan_by_board ON spot_plan (board_id);
  CREATE INDEX wood_temperature_by_board ON wood_temperature (board_id) WHERE board_id IS NOT NULL;
  CREATE INDEX planned_move_by_board ON planned_move (board_id) WHERE board_id IS NOT NULL;
  CREATE INDEX planned_move_by_stack ON planned_move (stack_id) WHERE stack_id IS NOT NULL;
  CREATE INDEX finding_by_round ON finding (round_id);
  CREATE INDEX round_suspicion_by_board ON round_suspicion (board_id);
`;
