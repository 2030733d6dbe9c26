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
  'common.sources': 'Sources',
  'common.show-as-table': 'Show as table',
  'common.undo': 'Undo',

  'exclude.button': 'Exclude {recordName}',
  'exclude.question': 'Exclude {recordName}?',
  'exclude.effect': 'It stays on record but is not used. You can include it again.',
  'exclude.reason-missing': 'Choose a reason above, or type one.',
  'exclude.other-reason': 'Another reason',
  'exclude.excluded': 'Excluded: {reason}',
  'include.button': 'Include {recordName}',

  'exclusion.defect': 'Knot, pitch or bark',
  'exclusion.knot': 'Knot',
  'exclusion.pins-shallow': 'Pins not in far enough',
  'exclusion.read-frozen': 'Read while frozen',
  'exclusion.resin-lost': 'Resin ran out',
  'exclusion.typing-slip': 'Typing slip',
  'exclusion.undone-in-round': 'Undone during the round',
  'exclusion.wet-face': 'Wet face',
  'exclusion.wet-with-rain': 'Wet with rain',
  'exclusion.wrong-board': 'Wrong board',
  'exclusion.wrong-piece': 'Wrong piece',
  'exclusion.wrong-spot': 'Wrong board or spot',

  'reading.name': '{depth, select, core {core} other {shell}} reading {shownValue}',

  /** Where a message is of another version of Pintally. */
  'common.text-missing': 'Text missing: {missingCode}',

  'unit.board-feet': '{count, plural, one {{amount} board foot} other {{amount} board feet}}',
  'unit.or-less': '{amount} or less',
  'unit.points': '{amount} points',
  'unit.under': 'under {amount}',
  'unit.when': '{date} ({dates})',
  'unit.when-open': '{date} ({first} or later)',
} as const;
