import { describe, expect, test } from 'vitest';
import { dayOf, instantOfDay } from '../../../../renderer/ui/days.ts';

test('an instant is on its local day', () => {
  expect(dayOf(new Date(2026, 10, 3, 23, 50))).toBe('2026-11-03');
  expect(dayOf(new Date(2026, 0, 5, 0, 5))).toBe('2026-01-05');
});

describe('The instant of a day', () => {
  test('is noon of a day gone by, so that no time zone turns it into another', () => {
    expect(instantOfDay('2026-11-20', new Date(2026, 10, 25, 9))).toBe(
      new Date(2026, 10, 20, 12).toISOString(),
    );
  });

  test.each([9, 20])('of today at %i h is now, after what was done earlier today', (hour) => {
    const now = new Date(2026, 10, 25, hour);
    expect(instantOfDay('2026-11-25', now)).toBe(now.toISOString());
  });

  test('is noon of a day to come, which the machine then refuses', () => {
    const now = new Date(2026, 10, 25, 9);
    expect(Date.parse(instantOfDay('2026-11-26', now))).toBeGreaterThan(now.getTime());
  });
});
