/** Probing a stack, board by board. */
export const round = {
  'round.done': '{boards, plural, one {# board} other {# boards}} probed.',
} as const;
