/** Species and their curves. */
export const species = {
  'species.beyond-curve': 'Beyond the published data for this species; rough.',
} as const;
