/** What boards amount to. */
export const tally = {
  'tally.title': 'Tally',
  'tally.lead': 'How much lumber is here, and what it weighs.',
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
  'tally.weight-now': 'Weight when last probed',
  'tally.weight-then': 'Weight at target',
  'tally.save-csv': 'Save as CSV',
  'tally.file': 'tally',
  'tally.saved': '{fileName} is ready. Look in your downloads.',
  'tally.how-metric': 'Volume: width in full centimeters, length in full tenths of a meter.',
  'tally.how':
    'Board feet: length in full feet, each board to the whole square foot, times thickness in full quarters, at least 4/4. Weight is as last probed.',
} as const;
