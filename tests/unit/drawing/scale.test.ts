import { describe, expect, test } from 'vitest';
import { linearScale, niceTicks } from '../../../shared-core/drawing/chart/scale.ts';
import { timeTicks } from '../../../shared-core/drawing/chart/time-ticks.ts';

describe('Figures on an axis', () => {
  test.each([
    [0, 18, 5, [0, 5, 10, 15, 20]],
    [0, 26, 6, [0, 5, 10, 15, 20, 25, 30]],
    [0, 9.3, 5, [0, 2, 4, 6, 8, 10]],
    [0, 0, 5, [0]],
  ])('from %f to %f in at most %i steps are round', (low, high, most, ticks) => {
    expect(niceTicks(low, high, most)).toEqual(ticks);
  });

  test('a scale may run upwards on the screen', () => {
    const y = linearScale(0, 20, 200, 0);
    expect([0, 5, 20].map(y.at)).toEqual([200, 150, 0]);
  });

  test('a scale without extent puts everything at its start', () => {
    expect(linearScale(7, 7, 30, 90).at(7)).toBe(30);
  });
});

describe('Days on a time axis', () => {
  const local = (year: number, month: number, day: number) => new Date(year, month - 1, day).getTime();

  test('a fortnight is split by days, a year by months, a decade by years', () => {
    expect(timeTicks(local(2026, 3, 1), local(2026, 3, 5), 8)).toEqual(
      [1, 2, 3, 4, 5].map((day) => local(2026, 3, day)),
    );
    expect(timeTicks(local(2026, 1, 10), local(2026, 12, 20), 6)).toEqual(
      [3, 5, 7, 9, 11].map((month) => local(2026, month, 1)),
    );
    expect(timeTicks(local(2016, 6, 1), local(2026, 6, 1), 6).map((ms) => new Date(ms).getMonth())).toEqual([
      0, 0, 0, 0, 0,
    ]);
  });

  test('no tick lies outside the axis', () => {
    const [from, to] = [local(2025, 2, 27) + 5, local(2026, 2, 2)];
    for (const tick of timeTicks(from, to, 5)) {
      expect(tick).toBeGreaterThanOrEqual(from);
      expect(tick).toBeLessThanOrEqual(to);
    }
  });
});
