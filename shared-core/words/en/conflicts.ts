/** Two edits of one record. */
export const conflicts = {
  'conflict.edited-meanwhile':
    'This was edited in another window in the meantime. Nothing was saved. Choose what to keep.',
  'conflict.saved': 'Saved meanwhile: {savedText}',
  'conflict.blank': '(blank)',
  'conflict.keep-mine': 'Use what I typed',
  'conflict.use-theirs': 'Use what was saved',
} as const;
