/** What many places share: buttons, states, and the words that go with a number. */
export const common = {
  'common.add': 'Add',
  'common.cancel': 'Cancel',
  'common.close': 'Close',
  'common.done-of': '{done} of {total}',
  'common.edit': 'Edit',
  'common.exclude': 'Exclude',
  'common.include': 'Include',
  'common.legend': 'Legend',
  'common.loading': 'Loading …',
  'common.not-saved': 'What you typed is not saved yet. Save it, or press Cancel.',
  'common.print': 'Print',
  'common.save': 'Save',
  'common.saving': 'Saving …',
  'common.sources': 'Sources',
  'common.show-as-table': 'Show as table',
  'common.try-again': 'Try again',

  'exclude.button': 'Exclude {recordName}',
  'exclude.question': 'Exclude {recordName}?',
  'exclude.effect': 'It stays on record but is not used. You can include it again.',
  'exclude.reason-missing': 'Choose a reason above, or type one.',
  'exclude.other-reason': 'Another reason',
  'exclude.excluded': 'Excluded: {reason}',
  'include.button': 'Include {recordName}',

  'exclusion.damaged': 'Damaged on the disk; include it if it is right',
  'exclusion.defect': 'Knot, pitch, or bark',
  'exclusion.knot': 'Knot',
  'exclusion.pins-shallow': 'Pins not in far enough',
  'exclusion.read-frozen': 'Read while frozen',
  'exclusion.resin-lost': 'Resin ran out',
  'exclusion.typing-slip': 'Typing slip',
  'exclusion.undone-in-round': 'Undone during the round',
  'exclusion.replaced': 'Replaced by a new reading',
  'exclusion.wet-face': 'Wet face',
  'exclusion.wet-with-rain': 'Wet with rain',
  'exclusion.wrong-board': 'Wrong board',
  'exclusion.wrong-piece': 'Wrong piece',
  'exclusion.wrong-spot': 'Wrong board or spot',

  'records.remarks': 'Remarks',
  'records.remark-number': 'See note {number}.',
  'records.actions': 'Exclude or include',

  'severity.refused': 'Not used.',
  'severity.questionable': 'Questionable.',
  'severity.note': 'Note.',

  'reading.corrected':
    '{how, select, species {corrected for species only} none {not corrected} other {corrected}}',
  'reading.mc': 'MC',
  'reading.name': '{depth, select, core {core} average {average} other {shell}} reading {shownValue}',
  'reading.raw': 'raw',
  'reading.raw-as-shown': 'raw, as the meter shows',

  'pins.drifting': 'Drifting: hold still',
  'pins.pins-out': 'Pins out',
  'pins.settled': 'Settled',

  'species-field.hint': 'Any common or botanical name',
  'combobox.which': '“{typedText}” could be {nameChoices}. Choose one.',
  'combobox.others': '{others, plural, one {one more} other {one of # others}}',
  'combobox.many': '{found} match. Keep typing to narrow the list.',
  'species-field.none': 'No species has that name. You can add it under Species.',
  'date-field.calendar': 'Calendar',
  'date-field.too-late': 'No later than {latestOn}.',
  'time-field.hint': 'Blank means now',

  'wood-temp.label': 'Wood temperature',
  'wood-temp.hint': 'Measure the wood, not the air. A stack stays cold after a cold night.',
  'wood-temp.unknown': 'I don’t know',
  'wood-temp.unknown-effect':
    'Readings are not corrected for temperature. Wood {warmerStepK} colder or warmer than the meter assumes shifts a reading by about {shiftPoints}. Calls are less certain.',
  'wood-temp.frozen':
    'Below freezing, readings are less exact. Boards above {frozenLimitPct} cannot be read until they thaw.',
  'wood-temp.missing': 'Type the wood temperature, or check “I don’t know”.',

  /** Where a message is of another version of Pintally. */
  'common.text-missing': 'Text missing: {missingCode}',

  'unit.board-feet': '{count, plural, one {{amount} board foot} other {{amount} board feet}}',
  'unit.or-less': '{amount} or less',
  'unit.points': '{amount} points',
  'unit.under': 'under {amount}',
  'unit.when': '{date} ({dates})',
  'unit.when-open':
    '{date}{isFirst, select, yes {} other {. Unlikely before {first}}}; it may take over two years',
} as const;
