/** What happened to the yard's file, and what was saved of it. */
export const yardFile = {
  'yard-note.changes-repaired':
    '{changes, plural, one {# recent change was} other {# recent changes were}} damaged on the disk and {changes, plural, one {has} other {have}} been repaired. Nothing was lost. The disk may be failing: save a copy on another disk.',
  'yard-note.changes-missing':
    '{changes, plural, one {# of your last changes is missing. It was made {newestAt}.} other {# of your last changes are missing. The newest was made {newestAt}.}} A yard file was removed or replaced while Pintally was closed. Check your last readings. A backup may have them.',
  'yard-note.wal-brought-back':
    'The last changes of {file} were {how, select, deleted {deleted or moved} other {replaced}} while Pintally was open. Nothing was lost: Pintally still had those changes.',
  'yard-note.rescued-copies':
    'Something outside Pintally deleted or changed the yard file while it was open. What was saved until then is in {copies, plural, one {a rescued copy} other {# rescued copies}}: {names}. If anything is missing here, restore it by “Restore from a file”.',
  'yard-note.taken-back':
    'Pintally was closed while it changed many boards. Everything is as it was before that change. Make it again if you still want it.',
  'yard-note.taken-back-restored':
    'This backup was made while many boards were being changed. They are as before that change.',
  'yard-note.built-in-repaired':
    '{entries, plural, one {# built-in species or use was} other {# built-in species and uses were}} damaged on the disk and {entries, plural, one {has} other {have}} been repaired. The disk may be failing: save a copy on another disk.',
  'yard-note.rules-repaired':
    '{rules, plural, one {# rule} other {# rules}} in the yard file {rules, plural, one {was} other {were}} damaged on the disk and {rules, plural, one {has} other {have}} been repaired. Nothing was lost. The disk may be failing: save a copy on another disk.',
  'yard-note.entries-damaged': 'A disk error damaged {entries}. {nextSentences} Or restore a backup.',
  'yard-note.damaged-defaults': 'Default values are used instead.',
  'yard-note.damaged-blank': 'Blank values were lost.',
  'yard-note.damaged-check':
    '{entries, plural, one {Open it, check it, and save it.} other {Open each, check it, and save it.}}',
  'yard-note.damaged-describe':
    '{meters, plural, one {Describe the meter again on the Meter page.} other {Describe the meters again on the Meter page.}}',
  'yard-note.damaged-check-settings': 'Check the settings.',
  'yard-note.damaged-place': 'the air of {name}',
  'yard-note.damaged-species': 'the species {name}',
  'yard-note.damaged-use': 'the use {name}',
  'yard-note.damaged-meter': 'the description of the meter {name}',
  'yard-note.damaged-settings': 'the settings',
  'damaged.entry': 'Damaged',
  'damaged.place':
    'A disk error damaged this place’s air data. Where values were lost, average air is used. Edit it, check it, and save it. Or restore a backup.',
  'damaged.species':
    'A disk error damaged this species’ values. Blank values were lost. Edit them, check them, and save them. Or restore a backup.',
  'damaged.species-built-in':
    'A disk error damaged this species’ values. Default values are used instead. Edit them, check them, and save them. Or restore a backup.',
  'damaged.use':
    'A disk error damaged this use’s values. Default values are used instead. Edit them, check them, and save them. Or restore a backup.',
  'yard-note.salvaged':
    'Recovered from the damaged file: {boards, plural, one {# board} other {# boards}} and {readings, plural, one {# reading} other {# readings}}. {nextSentences}',
  'yard-note.salvaged.lost':
    '{lost, plural, one {# reading is lost or damaged.} other {# readings are lost or damaged.}}',
  'yard-note.salvaged.more': 'More may be lost: not all can be counted.',
  'yard-note.salvaged.file': 'The damaged file is in the same folder: {damagedFile}.',
  'yard-note.salvaged.file-renamed': 'The damaged file is in the same folder under another name.',
  'yard-note.salvaged.backup':
    'The backup of {backupAt} has {more, plural, one {# more reading} other {# more readings}}.',
  'yard-note.readings-damaged':
    'A disk error changed {readings, plural, one {# reading} other {# readings}}. {readings, plural, one {It is} other {They are}} not used. {boards} {backup}',
  'yard-note.readings-damaged.boards':
    'Probe again: {boardCodes}{more, plural, =0 {} one { and # more board} other { and # more boards}}.',
  'yard-note.readings-damaged.no-board': 'The boards are no longer known.',
  'yard-note.readings-damaged.backup':
    'Or restore the backup of {backupAt}: it has {readings, plural, one {it} other {them}} unchanged.',
  'yard-note.readings-damaged.no-backup':
    'No backup has {readings, plural, one {it} other {all of them}} unchanged.',

  'yard-note.rescued':
    'This is the rescued copy, now your yard. It has everything saved before the file was lost.',
  'yard-note.started-new':
    'You started a new yard. The earlier file is in the same folder under another name: {file}.',

  'damaged.recover-title': 'From the damaged file',
  'damaged.recover-newer': 'Recommended: it may have readings that no backup has.',
  'damaged.recover-older': 'Damaged readings will be missing.',
  'damaged.backup-title': 'Newest backup',
  'damaged.backup-of':
    '{backedUpText}: {boards, plural, one {# board} other {# boards}}, {readings, plural, one {# reading} other {# readings}}.',
  'damaged.backup-last-round': 'Last round: {lastRoundAt}.',
  'damaged.backup-has-all': 'Recommended: nothing was saved after it.',
  'damaged.restore': 'Restore …',
  'damaged.stays': 'Neither deletes the damaged file. After recovering, you can still restore a backup.',
  'damaged.stays-alone': 'The damaged file is not deleted.',
  'damaged.no-backup': 'There is no backup.',
  'damaged.other-backups': 'Other backups',
  'damaged.no-other-backup': 'There is no other backup.',

  'salvage.do': 'Recover what can be read',
  'salvage.busy': 'Recovering what can be read. A large yard takes a minute.',
  'salvage.show-report': 'Show what was recovered',
  'salvage.save-report': 'Save as text',
  'salvage.title': 'Recovered from the damaged file',
  'salvage.places':
    '{lost, plural, =0 {Places: {saved} recovered.} other {Places: {saved} recovered, {lost} lost or damaged.}}',
  'salvage.stacks':
    '{lost, plural, =0 {Stacks: {saved} recovered.} other {Stacks: {saved} recovered, {lost} lost or damaged.}}',
  'salvage.boards':
    '{lost, plural, =0 {Boards: {saved} recovered.} other {Boards: {saved} recovered, {lost} lost or damaged.}}',
  'salvage.rounds':
    '{lost, plural, =0 {Rounds: {saved} recovered.} other {Rounds: {saved} recovered, {lost} lost or damaged.}}',
  'salvage.readings':
    '{lost, plural, =0 {Readings: {saved} recovered.} other {Readings: {saved} recovered, {lost} lost or damaged.}}',
  'salvage.other':
    '{lost, plural, =0 {Other entries: {saved} recovered.} other {Other entries: {saved} recovered, {lost} lost or damaged.}}',
  'salvage.not-counted': 'More may be lost. Some lost entries cannot be counted.',
  'salvage.recovered': 'Check the name, species, and thickness of: {names}. Their own entries were lost.',
  'salvage.rounds-made-again':
    '{rounds, plural, one {# lost round was rebuilt from its readings} other {# lost rounds were rebuilt from their readings}}: {startedAt}. Check {rounds, plural, one {its date} other {their dates}}.',
  'salvage.what-to-do': 'Probe again where readings are missing.',

  // Names that a person sees in place of lost ones.
  'recovered.species': 'Recovered species',
  'recovered.end-use': 'Recovered use',
  'recovered.place': 'Recovered place',
  'recovered.stack': 'Recovered stack',
  'recovered.meter': 'Recovered meter',
} as const;
