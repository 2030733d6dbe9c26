import { expect, test } from 'vitest';
import { readChapter } from '../../../electron/guide/read-chapter.ts';
import { findIn, partsOf } from '../../../shared-core/guide/find.ts';

const parts = partsOf(
  'saws',
  readChapter(`# Saws

Saws cut.

## Sharp blades

- Keep **Fingers** away.
- A dull saw slips.

## Rust

Oil the sharp blade.
`),
);
const found = (typed: string) => findIn(parts, typed).map(({ heading, line }) => [heading?.text, line]);

test('a part is found by its words in any order, with the line that has most of them', () => {
  expect(found('away fingers')).toEqual([['Sharp blades', 'Keep Fingers away.']]);
  expect(found('cut')).toEqual([[undefined, 'Saws cut.']]);
});

test('a part with the word in its heading comes first', () => {
  expect(found('SHARP')).toEqual([
    ['Sharp blades', 'Sharp blades'],
    ['Rust', 'Oil the sharp blade.'],
  ]);
});

test('a part without one of the words is not found, and no words find nothing', () => {
  expect(found('sharp zebra')).toEqual([]);
  expect(found('  ')).toEqual([]);
});
