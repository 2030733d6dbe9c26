/** What is wrong with a field of a form. */
export const validation = {
  'validation.fix-fields': 'Fix the highlighted fields.',
} as const;
