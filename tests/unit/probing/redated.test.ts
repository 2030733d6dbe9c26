import { expect, test } from 'vitest';
import { redated } from '../../../shared-core/probing/readings/redated.ts';

const at = (day: number, hour: number) => new Date(Date.UTC(2026, 5, day, hour)).toISOString();
const now = Date.parse(at(20, 12));

test('all readings move by as much as the beginning does', () => {
  expect(redated(at(1, 8), [at(1, 9), at(1, 10)], at(3, 7), now)).toEqual([at(3, 8), at(3, 9)]);
  expect(redated(at(3, 8), [at(3, 9)], at(1, 8), now)).toEqual([at(1, 9)]);
});

test('none can come to be in the future', () => {
  expect(redated(at(1, 8), [at(1, 9), at(1, 14)], at(20, 8), now)).toBeNull();
});

// A laptop with a flat clock battery finds the network in the middle of a round: common practice, no source.
test('those that were taken after the clock was set right stay as they are', () => {
  const wrong = '2020-01-01T08:00:00.000Z';
  const taken = ['2020-01-01T08:10:00.000Z', at(20, 9), at(20, 10)];
  expect(redated(wrong, taken, at(20, 8), now)).toEqual(['2026-06-20T08:10:00.000Z', at(20, 9), at(20, 10)]);
});

test('a round over two days moves as a whole where there is room', () => {
  expect(redated(at(1, 8), [at(1, 9), at(3, 9)], at(2, 8), now)).toEqual([at(2, 9), at(4, 9)]);
});

test('readings that the clock dated far in the future, as it ran ahead for a while, are pulled into the round', () => {
  const ahead = ['2046-06-01T09:10:00.000Z', '2046-06-01T09:20:00.000Z'];
  expect(redated(at(2, 8), [at(2, 9), ...ahead, at(2, 10)], at(1, 8), now)).toEqual([
    at(1, 9),
    at(1, 9),
    at(1, 9),
    at(1, 10),
  ]);
  expect(redated(at(2, 8), ahead, at(1, 8), now)).toEqual([at(1, 8), at(1, 8)]);
});

test('now is not the future yet, and a day is a day to its last moment', () => {
  expect(redated(at(1, 8), [at(1, 9)], at(20, 11), now)).toEqual([at(20, 12)]);
  // Set right exactly a day later.
  expect(redated(at(1, 8), [at(2, 8)], at(20, 8), now)).toEqual([at(2, 8)]);
  expect(redated(at(1, 12), [at(2, 12)], at(19, 12), now)).toEqual([at(20, 12)]);
  // Ran ahead by exactly a day, by less, and not at all.
  expect(redated(at(19, 13), [at(20, 13)], at(18, 13), now)).toEqual([at(18, 13)]);
  expect(redated(at(20, 10), [at(20, 13)], at(19, 10), now)).toEqual([at(19, 13)]);
  expect(redated(at(18, 12), [at(20, 12)], at(17, 12), now)).toEqual([at(19, 12)]);
});
