/** What many places share: buttons, states, and the words that go with a number. */
export const common = {
  'common.add': 'Add',
  'common.cancel': 'Cancel',
  'common.close': 'Close',
  'common.delete': 'Delete',
  'common.edit': 'Edit',
  'common.exclude': 'Exclude',
  'common.include': 'Include',
  'common.loading': 'Loading …',
  'common.print': 'Print',
  'common.save': 'Save',
  'common.show-as-table': 'Show as table',
  'common.undo': 'Undo',
  /** Where a message is of another version of Pintally. */
  'common.text-missing': 'Text missing: {missingCode}',

  'unit.board-feet': '{count, plural, one {{amount} board foot} other {{amount} board feet}}',
  'unit.or-less': '{amount} or less',
  'unit.points': '{amount} points',
  'unit.under': 'under {amount}',
} as const;
