/** When a board or a stack gets there. */
export const forecast = {
  'forecast.none': 'No forecast yet.',
  'forecast.likely-on': 'Likely {likelyOn} ({likelyRange}).',
  'forecast.likely-pct': 'Likely {likelyRange}.',
} as const;
