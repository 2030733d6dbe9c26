/** Labels and sheets of them. */
export const labels = {
  'labels.probed-on': 'Probed {probedOn}',
} as const;
