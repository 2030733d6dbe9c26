/** Settings. */
export const settings = {
  'settings.units': 'Units',
} as const;
