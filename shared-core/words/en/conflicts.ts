/** Two edits of one record. */
export const conflicts = {
  'conflict.edited-meanwhile':
    'This was edited in another window in the meantime. Nothing was saved. Choose what to keep.',
  'conflict.saved': 'Saved meanwhile: {savedText}',
  'conflict.blank': '(blank)',
  'conflict.keep-mine': 'Keep mine',
  'conflict.use-theirs': 'Use theirs',
} as const;
