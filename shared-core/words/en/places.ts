/** Places and the boards in them. */
export const places = {
  'places.lowest-emc': 'Lowest EMC here, in {monthName}: {emcPct}.',
} as const;
