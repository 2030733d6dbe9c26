import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../shared-core/time.ts';
import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import type { MonthlyAir } from '../../../shared-core/wood/climate/monthly-air.ts';
import { airSegments } from '../../../shared-core/wood/drying/board-history.ts';

const room: MonthlyAir = Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.4 }));
const shed: MonthlyAir = [-2, 0, 5, 10, 15, 20, 22, 21, 16, 11, 5, 0].map((tempC, month) => ({
  tempC,
  rh: 0.6 + 0.02 * Math.abs(6 - month),
}));

describe('the air that a board was in', () => {
  test('covers every second between the two instants, without gap or overlap', () => {
    const from = Date.UTC(2024, 1, 3, 5);
    const to = Date.UTC(2026, 8, 27, 17);
    const segments = airSegments([{ fromMs: from - 9 * DAY_MS, air: shed }], from, to);
    const total = segments.reduce((sum, segment) => sum + segment.durationS, 0);
    expect(total).toBeCloseTo((to - from) / 1000, 3);
  });

  test('has in the middle of a month the EMC of that month, and runs straight to the next', () => {
    const middleOfJuly = Date.UTC(2025, 6, 16, 12);
    const [first] = airSegments([{ fromMs: 0, air: shed }], middleOfJuly, middleOfJuly + 20 * DAY_MS);
    expect(first!.emcStartPct).toBeCloseTo(emcPct(22, 0.6), 9);
    const half = (emcPct(22, 0.6) + emcPct(21, 0.62)) / 2;
    const segment = airSegments([{ fromMs: 0, air: shed }], middleOfJuly, middleOfJuly + 15.5 * DAY_MS);
    expect(segment[0]!.emcEndPct).toBeCloseTo(half, 9);
  });

  test('joins without a jump from year to year', () => {
    const segments = airSegments([{ fromMs: 0, air: shed }], Date.UTC(2025, 10, 1), Date.UTC(2026, 3, 1));
    for (const [i, segment] of segments.slice(1).entries()) {
      expect(segment.emcStartPct).toBeCloseTo(segments[i]!.emcEndPct, 9);
    }
  });

  test('changes at once on the day of a move', () => {
    const sawn = Date.UTC(2025, 3, 1);
    const moved = Date.UTC(2025, 8, 10);
    const segments = airSegments(
      [
        { fromMs: sawn, air: shed },
        { fromMs: moved, air: room },
      ],
      sawn,
      moved + 7 * DAY_MS,
    );
    const atRoom = segments.filter((segment) => Math.abs(segment.emcEndPct - emcPct(20, 0.4)) < 1e-9);
    expect(atRoom.reduce((sum, segment) => sum + segment.durationS, 0)).toBeCloseTo((7 * DAY_MS) / 1000, 3);
    expect(atRoom.every((segment) => segment.tempC === 20)).toBe(true);
  });

  test('before 1970 and at 25 below zero is no trouble', () => {
    const cold: MonthlyAir = shed.map(({ rh }) => ({ tempC: -25, rh }));
    const segments = airSegments(
      [{ fromMs: Date.UTC(1960, 0, 1), air: cold }],
      Date.UTC(1961, 5, 1),
      Date.UTC(1961, 6, 1),
    );
    expect(segments.reduce((sum, segment) => sum + segment.durationS, 0)).toBe((30 * DAY_MS) / 1000);
    expect(segments[0]!.emcStartPct).toBeGreaterThan(10);
  });

  test.each([
    ['no place', () => airSegments([], 0, DAY_MS)],
    ['a first place that began later', () => airSegments([{ fromMs: 2, air: room }], 0, DAY_MS)],
    ['time running backward', () => airSegments([{ fromMs: 0, air: room }], DAY_MS, 0)],
    [
      'moves out of order',
      () =>
        airSegments(
          [
            { fromMs: 0, air: room },
            { fromMs: 5 * DAY_MS, air: shed },
            { fromMs: DAY_MS, air: room },
          ],
          0,
          9 * DAY_MS,
        ),
    ],
  ])('is refused for %s', (_, history) => {
    expect(history).toThrow(RangeError);
  });
});
