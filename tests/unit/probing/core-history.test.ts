import { describe, expect, test } from 'vitest';
import {
  CORE_BEHIND_POINTS,
  GRADIENT_SHARE,
  profileAt,
  reaches,
  SHELL_SD_POINTS,
} from '../../../shared-core/probing/readings/core-history.ts';
import { DAY_MS } from '../../../shared-core/time.ts';

const made = Date.parse('2026-05-31T23:59:59.999Z');
const on = (day: number) => made + day * DAY_MS;
const history = [
  { atMs: on(0), differencePct: 2, sdPct: 0.3 },
  { atMs: on(10), differencePct: 1, sdPct: 0.5 },
];

describe('What history tells of the core', () => {
  test('is between what it tells of the days before and after, and a little more: cores come behind their forecast', () => {
    expect(CORE_BEHIND_POINTS).toBeGreaterThan(0);
    expect(profileAt(history, on(5))?.differencePct).toBeCloseTo(1.5 + CORE_BEHIND_POINTS, 9);
    expect(profileAt(history, on(10))?.differencePct).toBeCloseTo(1 + CORE_BEHIND_POINTS, 9);
  });

  test('leaves open what the weather of the last days and the model itself do to a gradient', () => {
    expect(profileAt(history, on(5))?.differenceSdPct).toBeCloseTo(
      Math.hypot(0.4, SHELL_SD_POINTS, GRADIENT_SHARE * 1.5),
      9,
    );
  });

  test('holds on the day that it was made, and not before that or beyond its last day', () => {
    expect(profileAt(history, on(-0.9))?.differencePct).toBeCloseTo(2 + CORE_BEHIND_POINTS, 9);
    expect(profileAt(history, on(-1.1))).toBeNull();
    expect(profileAt(history, on(10.1))).toBeNull();
    expect(profileAt([], on(0))).toBeNull();
  });

  test('is interpolated between the two days around, and on the first and last day is that day’s own', () => {
    const third = { atMs: on(30), differencePct: 0.2, sdPct: 0.6 };
    const at = (day: number) => profileAt([...history, third], on(day))!.differencePct - CORE_BEHIND_POINTS;
    expect([0, 2, 10, 15, 30].map((day) => Number(at(day).toFixed(6)))).toEqual([2, 1.8, 1, 0.8, 0.2]);
  });

  test('covers every instant where the board had no history, else from the day before its first', () => {
    expect(reaches([], on(-400))).toBe(true);
    expect([on(-1), on(-1) - 1, on(10), on(10) + 1].map((atMs) => reaches(history, atMs))).toEqual([
      true,
      false,
      true,
      false,
    ]);
    expect(profileAt(history.slice(0, 1), on(0))).toBeNull();
  });

  test('is nothing where it leaves so much open that no board could be Ready by it', () => {
    const wide = history.map((each) => ({ ...each, sdPct: 1.3 }));
    expect(profileAt(wide, on(5))).toBeNull();
  });
});
