/** What was done in the yard, and why it cannot be undone. */
export const history = {
  'history.record.board': 'Board {recordName}',
  'history.record.stack': 'Stack {recordName}',
  'history.record.place': 'Place {recordName}',
  'history.record.species': 'Species {recordName}',
  'history.record.use': 'Use {recordName}',
  'history.record.meter': 'Meter {recordName}',
  'history.record.project': 'Project {recordName}',
  'history.record.move': 'A move of board {recordName}',
  'history.record.round': 'A round of stack {recordName}',
  'history.record.reading': 'A reading of board {recordName}',
  'history.record.of': 'A record of {recordName}',
  'history.record.other': 'A record',
  'refusal.undone-already': 'This was undone already. Nothing was changed.',
  'refusal.not-undone': 'This was not undone, or was redone already. Nothing was changed.',
  'refusal.undo-changed-by':
    '{record} was changed since, on {laterAt}. Nothing was {what, select, redo {redone} other {undone}}. Undo the later change first.',
  'refusal.undo-changed':
    '{record} was changed since. Nothing was {what, select, redo {redone} other {undone}}.',
  'refusal.undo-used':
    '{record} is in use since {laterAt}. Nothing was {what, select, redo {redone} other {undone}}. Undo what uses it first.',
  'refusal.undo-taken':
    '{record} cannot come back: its ID or name is in use now. Nothing was {what, select, redo {redone} other {undone}}.',
} as const;
