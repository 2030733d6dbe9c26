/** When a board or a stack gets there. */
export const forecast = {
  'forecast.none': 'No forecast yet.',
  'forecast.likely-when': 'Likely {likelyWhen}.',
  'forecast.likely-interval': 'Likely {likelyInterval}.',
} as const;
