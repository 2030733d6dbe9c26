import { describe, expect, test } from 'vitest';
import { agoWords, dayOf, dayWords, instantOfDay } from '../../../../renderer/parts/days.ts';

describe('Days as a person says them', () => {
  test('a local day is that day wherever the machine stands', () => {
    expect(dayWords('2026-11-03')).toBe('3 Nov 2026');
  });

  test('an instant is shown on its local day', () => {
    expect(dayWords(new Date(2026, 10, 3, 23, 50).toISOString())).toBe('3 Nov 2026');
    expect(dayOf(new Date(2026, 0, 5, 0, 5))).toBe('2026-01-05');
  });

  const now = new Date(2026, 10, 25, 9);
  test.each([
    [new Date(2026, 10, 25, 0, 1), 'today'],
    [new Date(2026, 10, 24, 23, 59), 'yesterday'],
    [new Date(2026, 10, 13, 12), '12 days ago'],
    [new Date(2026, 6, 25, 12), '4 months ago'],
    [new Date(2023, 10, 25, 12), '3 years ago'],
  ])('%s was %s', (then, words) => {
    expect(agoWords(then.toISOString(), now)).toBe(words);
  });
});

describe('The instant that stands for a day', () => {
  test('is noon of a day gone by, so that no time zone turns it into another', () => {
    expect(instantOfDay('2026-11-20', new Date(2026, 10, 25, 9))).toBe(
      new Date(2026, 10, 20, 12).toISOString(),
    );
  });

  test('is now on this morning, since noon is still to come', () => {
    const now = new Date(2026, 10, 25, 9);
    expect(instantOfDay('2026-11-25', now)).toBe(now.toISOString());
  });

  test('is noon of a day to come, which the machine then refuses', () => {
    const now = new Date(2026, 10, 25, 9);
    expect(Date.parse(instantOfDay('2026-11-26', now))).toBeGreaterThan(now.getTime());
  });
});
