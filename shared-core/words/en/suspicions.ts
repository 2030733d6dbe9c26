/** Why a reading is questionable, and what to do about it. */
export const suspicions = {
  'suspicion.unsettled': 'Saved before the reading settled.',
  'suspicion.drifted': 'The readings drifted by {driftPoints}.',
} as const;
