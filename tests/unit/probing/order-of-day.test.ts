import { expect, test } from 'vitest';
import {
  dayOrderSchema,
  momentOfMove,
  momentOfPage,
  type SameDay,
} from '../../../shared-core/probing/readings/order-of-day.ts';
import { HOUR_MS } from '../../../shared-core/time.ts';

const at = (hours: number) => hours * HOUR_MS;
const day: SameDay = {
  fromMs: at(0),
  untilMs: at(24) - 1,
  movesBeforeMs: [],
  movesAfterMs: [],
  readings: [],
};
const noon = { atMs: at(12), isDayOnly: true };

test('a move whose time is known stays there, before or after readings whose time is known', () => {
  const readings = [{ atMs: at(10), isDayOnly: false }];
  for (const hours of [9, 11]) {
    expect(momentOfMove({ atMs: at(hours), isDayOnly: false }, { ...day, readings }, null)).toBe(at(hours));
  }
});

test.each([
  ['of the move', true, false],
  ['of the reading', false, true],
])('where only the day %s is known, a person says which came first', (_, moveIs, readingIs) => {
  const readings = [{ atMs: at(12), isDayOnly: readingIs }];
  const move = { atMs: at(12), isDayOnly: moveIs };
  expect(momentOfMove(move, { ...day, readings }, null)).toBe('order-missing');
  expect(momentOfMove(move, { ...day, readings }, 'moved-first')).toBeLessThan(at(12));
  expect(momentOfMove(move, { ...day, readings }, 'probed-first')).toBeGreaterThan(at(12));
});

test('the day alone leaves a page where it is, unless the board was moved on that day, too', () => {
  const { fromMs, untilMs } = day;
  expect(momentOfPage(at(12), { fromMs, untilMs, moves: [] }, null)).toBe(at(12));
  const moves = [at(9), at(15)].map((atMs) => ({ atMs, isDayOnly: false }));
  expect(momentOfPage(at(12), { fromMs, untilMs, moves }, null)).toBe('order-missing');
  expect(momentOfPage(at(12), { fromMs, untilMs, moves }, 'moved-first')).toBeGreaterThan(at(15));
  expect(momentOfPage(at(12), { fromMs, untilMs, moves }, 'probed-first')).toBeLessThan(at(9));
  const atMidnight = [{ atMs: at(0), isDayOnly: false }];
  expect(momentOfPage(at(12), { fromMs, untilMs, moves: atMidnight }, 'probed-first')).toBe('no-room');
});

test('the day alone puts a move after earlier moves of the day and before later ones', () => {
  const earlier = momentOfMove(noon, { ...day, movesBeforeMs: [at(15)] }, null);
  expect(earlier).toBe(at(15) + 1000);
  const later = momentOfMove(noon, { ...day, movesAfterMs: [at(9)] }, null);
  expect(later).toBe(at(9) - 1000);
});

test('a move between two is between them, however close they are; where nothing is between, a time is needed', () => {
  const between = (gapMs: number) =>
    momentOfMove(noon, { ...day, movesBeforeMs: [at(9)], movesAfterMs: [at(9) + gapMs] }, null);
  expect(between(2)).toBe(at(9) + 1);
  expect(between(1)).toBe('no-room');
  const readings = [{ atMs: at(9), isDayOnly: false }];
  expect(momentOfMove(noon, { ...day, movesBeforeMs: [at(9)], readings }, 'moved-first')).toBe('no-room');
});

test('each order that a person can say is known', () => {
  expect(dayOrderSchema.options).toEqual(['moved-first', 'probed-first']);
});

test('the day is whole: from its first moment, and past its last where a reading has that', () => {
  for (const atMs of [day.fromMs, day.untilMs])
    expect(momentOfMove({ atMs, isDayOnly: true }, day, null)).toBe(atMs);
  const readings = [{ atMs: day.untilMs, isDayOnly: true }];
  expect(momentOfMove(noon, { ...day, readings }, 'probed-first')).toBe(day.untilMs + 1);
});

test('a known time holds, also outside the day', () => {
  const atMs = day.fromMs - at(2);
  expect(momentOfMove({ atMs, isDayOnly: false }, day, null)).toBe(atMs);
});
