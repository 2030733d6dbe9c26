/** What boards amount to. */
export const tally = {
  'tally.title': 'Tally',
  'tally.lead': 'Board feet, volume, and weight.',
  'tally.open': 'Tally',
  'tally.open-by': 'Tally by species, thickness, or call',
  'tally.of': 'Boards to tally',
  'tally.all-stacks': 'All stacks',
  'tally.split-by': 'Split by',
  'tally.by.species': 'Species',
  'tally.by.thickness': 'Thickness',
  'tally.by.call': 'Call',
  'tally.by.stack': 'Stack',
  'tally.none': 'No boards here yet.',
  'tally.total': '{boards, plural, one {# board} other {# boards}} in all',
  'tally.weights':
    'Weight{which, select, all {} other { of {boards, plural, one {# board} other {# boards}}}}: {nowKg} when last probed, {thenKg} at target.',
  'tally.boards': 'Boards',
  'tally.measured': 'of {boards, plural, one {# board} other {# boards}}',
  'tally.volume': 'Volume',
  'tally.weight-now': 'Weight',
  'tally.weight-then': 'At target',
  'tally.how': 'Each board is rounded to whole square feet, times its thickness. Weight is as last probed.',
} as const;
