/** Stacks and their boards. */
export const stacks = {
  'stacks.group': 'Group in the list',
  'stacks.go-to-stacks': 'Go to stacks',
} as const;
