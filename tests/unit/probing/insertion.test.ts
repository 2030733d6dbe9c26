import { expect, test } from 'vitest';
import { newestInsertion } from '../../../shared-core/probing/readings/insertion.ts';

test.each([
  ['the push that is going on', [9, 10, null, 14, 13], [14, 13]],
  ['the push before, with the pins out', [9, 10, null, 14, 13, null, null], [14, 13]],
  ['all of it, when the pins never came out', [14, 13, 12], [14, 13, 12]],
  ['nothing, when they never went in', [null, null], []],
  ['nothing, before the first value', [], []],
])('the trace shows %s', (_, trace, shown) => {
  expect(newestInsertion(trace)).toEqual(shown);
});
