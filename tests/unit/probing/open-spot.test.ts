import { expect, test } from 'vitest';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';

const at = (spotIndex: number | null, counts = true) => ({ spotIndex, counts });

test('a board not read yet is begun at its first spot', () => {
  expect(openSpot(4, [])).toBe(0);
});

test('the next spot is the first from there on that has none which counts', () => {
  expect(openSpot(4, [at(0), at(1, false), at(2)])).toBe(1);
  expect(openSpot(4, [at(0), at(1, false), at(2)], 2)).toBe(3);
});

test('after the last spot it goes round to one that was passed over', () => {
  expect(openSpot(4, [at(0), at(2), at(3)], 4)).toBe(1);
});

test('with every spot read there is none; a reading elsewhere on the board fills no spot', () => {
  expect(openSpot(2, [at(0), at(1)], 1)).toBeNull();
  expect(openSpot(2, [at(0), at(null)])).toBe(1);
});
