/** A board: what it is, its readings, its weights. */
export const board = {
  'board.sawn-on-missing': 'Sawing date missing.',
} as const;
