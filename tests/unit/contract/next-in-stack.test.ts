import { expect, test } from 'vitest';
import { nextInStack } from '../../../shared-core/contract/next-in-stack.ts';

// From its end, the stack lies so, with a gap in the upper layer:
//   C . D
//   A B
const [A, B, C, D] = [
  { layer: 1, column: 1 },
  { layer: 1, column: 2 },
  { layer: 2, column: 1 },
  { layer: 2, column: 3 },
];

test.each([
  ['right', 'ArrowRight', A, B],
  ['right over a gap', 'ArrowRight', C, D],
  ['up', 'ArrowUp', A, C],
  ['up to the nearest, where none is right above', 'ArrowUp', B, C],
  ['down to the nearest, where none is right below', 'ArrowDown', D, B],
  ['nowhere beyond the end of a layer', 'ArrowRight', B, undefined],
  ['nowhere by another key', 'x', A, undefined],
])('an arrow key leads %s', (_, key, from, to) => {
  expect(nextInStack(key, from, [A, B, C, D])).toBe(to);
});
