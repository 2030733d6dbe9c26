/** What was wrong, what was kept, what to do. */
export const refusals = {
  'refusal.no-yard': 'No yard is open. Open one first.',
} as const;
