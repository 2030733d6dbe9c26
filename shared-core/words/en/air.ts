/** The air of a place. */
export const air = {
  'air.emc-at': 'EMC at {airTempC} and {rhPct}',
} as const;
