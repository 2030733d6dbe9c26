/** Stacks and their boards. */
export const stacks = {
  'stacks.group': 'Group in the list',
} as const;
