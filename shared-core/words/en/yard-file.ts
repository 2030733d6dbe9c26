/** What happened to the yard's file, and what was saved of it. */
export const yardFile = {
  'yard-note.log-repaired':
    '{changes, plural, one {# recent change was} other {# recent changes were}} damaged on the disk and {changes, plural, one {is} other {are}} repaired. Nothing was lost. The disk may be failing: save a copy on another disk.',
  'yard-note.changes-missing':
    '{changes, plural, one {# change is} other {# changes are}} missing from this yard, the newest of {newestAt}. Part of the yard’s files was removed or replaced while Pintally was closed. Check your last readings. A backup may hold them.',
  'yard-note.taken-back':
    'Pintally was closed while it changed many boards. Everything is as it was before that change. Make it again if you still want it.',
  'yard-note.built-in-repaired':
    '{entries, plural, one {# built-in species or use was} other {# built-in species and uses were}} damaged on the disk and {entries, plural, one {is} other {are}} repaired. The disk may be failing: save a copy on another disk.',
  'yard-note.salvaged':
    'Saved from the damaged file: {boards, plural, one {# board} other {# boards}} and {readings, plural, one {# reading} other {# readings}}. The damaged file was renamed and is still there.',

  'salvage.do': 'Save what can be read',
  'salvage.busy': 'Saving what can be read. A large yard takes a minute.',
  'salvage.show-report': 'Show what was saved',
  'salvage.save-report': 'Save as text',
  'salvage.title': 'Saved from the damaged file',
  'salvage.places': 'Places: {saved} saved, {lost} lost or damaged.',
  'salvage.stacks': 'Stacks: {saved} saved, {lost} lost or damaged.',
  'salvage.boards': 'Boards: {saved} saved, {lost} lost or damaged.',
  'salvage.rounds': 'Rounds: {saved} saved, {lost} lost or damaged.',
  'salvage.readings': 'Readings: {saved} saved, {lost} lost or damaged.',
  'salvage.other': 'Other entries: {saved} saved, {lost} lost or damaged.',
  'salvage.not-counted': 'More may be lost: entries on unreadable pages cannot always be counted.',
  'salvage.recovered': 'Own entry lost, so check name, species, and thickness: {names}.',
  'salvage.what-to-do':
    'The damaged file was renamed and is in the same folder. Probe again where readings are missing.',

  // Names that a person sees in place of lost ones.
  'recovered.species': 'Recovered species',
  'recovered.end-use': 'Recovered use',
  'recovered.place': 'Recovered place',
  'recovered.stack': 'Recovered stack',
  'recovered.meter': 'Recovered meter',
} as const;
