import { describe, expect, test } from 'vitest';
import { DAY_MS, HOUR_MS } from '../../../shared-core/time.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import {
  airTempAt,
  type LoggedAir,
  measuredDays,
  measuredMonths,
  measuredStretches,
  unusedOf,
} from '../../../shared-core/wood/climate/measured-air.ts';
import { airSdPct, type MonthlyAir } from '../../../shared-core/wood/climate/monthly-air.ts';
import { withinYear } from '../../../shared-core/wood/climate/within-year.ts';
import { airSegments } from '../../../shared-core/wood/drying/board-history.ts';

const startMs = Date.UTC(2026, 4, 1);
/** The same all year, so that only what is measured differs. */
const air: MonthlyAir = Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.7 }));
const usualPct = emcPct(15, 0.7);

type Sky = (hour: number) => Partial<Pick<LoggedAir, 'tempC' | 'rh'>>;
/** A day is colder and damper by night; no two hours are quite alike. */
const hours = (days: number, sky: Sky = () => ({}), fromMs = startMs): LoggedAir[] =>
  Array.from({ length: 24 * days }, (_, hour) => ({
    atMs: fromMs + hour * HOUR_MS,
    tempC: 15 - 4 * Math.cos((2 * Math.PI * hour) / 24) + 0.01 * (hour % 7),
    rh: 0.7 + 0.1 * Math.cos((2 * Math.PI * hour) / 24),
    isOfDay: false,
    ...sky(hour),
  }));
const typed = (day: number, tempC: number, rh: number): LoggedAir => ({
  atMs: startMs + day * DAY_MS + 10 * HOUR_MS,
  tempC,
  rh,
  isOfDay: true,
});
const open = { isOpen: true, untilMs: Date.UTC(2030, 0), excluded: new Set<number>() };
const indoors = { ...open, isOpen: false };
const doubts = (log: readonly LoggedAir[], use = open) =>
  measuredDays(log, air, use).map(({ doubt }) => doubt);

describe('a day', () => {
  test('of even air has the EMC of that air', () => {
    const [day] = measuredDays([typed(0, 21.1, 0.5)], air, open);
    // Wood Handbook, Table 4-2, 70 °F and 50 %.
    expect(day!.emcPct).toBeCloseTo(9.2, 1);
    expect(day).toMatchObject({ dayMs: startMs, values: 1, doubt: null });
  });

  test('takes fog as the dampest air there is a figure for', () => {
    expect(measuredDays([typed(0, 10, 1)], air, open)[0]!.rh).toBe(0.99);
  });

  test('of a hygrometer is used', () => {
    expect(doubts(hours(3))).toEqual([null, null, null]);
  });

  test('outdoors is not known by its afternoon alone; in a room it is', () => {
    const afternoon = hours(1).slice(12, 18);
    expect(doubts(afternoon)).toEqual(['part-of-day']);
    expect(doubts(afternoon, indoors)).toEqual([null]);
  });
});

test('of two values that a person gave for a day, only the later one counts', () => {
  const earlier = { ...typed(0, 15, 0.45), isOutdated: true };
  const [day] = measuredDays([earlier, typed(0, 15, 0.7)], air, open);
  expect(day).toMatchObject({ rh: 0.7, values: 2, doubt: null });
  expect(unusedOf([earlier, typed(0, 15, 0.7)], air, open)).toEqual(['outdated', null]);
});

describe('not used is', () => {
  test('a sensor that shows the same for days', () => {
    expect(doubts(hours(4, (hour) => (hour >= 24 ? { tempC: 12, rh: 0.6 } : {})))).toEqual([
      null,
      'stuck',
      'stuck',
      'stuck',
    ]);
  });

  test('one at 100 % for days; a foggy night is nothing', () => {
    expect(doubts(hours(5, (hour) => (hour >= 24 ? { rh: 1 } : {}))).slice(1)).toEqual(
      Array(4).fill('saturated'),
    );
    expect(doubts(hours(2, (hour) => (hour < 10 ? { rh: 1 } : {})))).toEqual([null, null]);
  });

  test('what a clock that was ahead logged for a day still to come', () => {
    const use = { ...open, untilMs: startMs + DAY_MS - 1 };
    expect(doubts(hours(2), use)).toEqual([null, 'later']);
    expect(doubts([typed(0, 15, 0.7), typed(1, 15, 0.7)], use)).toEqual([null, 'later']);
  });

  test('what it says while it lay in a hot truck, and only that', () => {
    const log = hours(2, (hour) => (hour >= 8 && hour < 16 ? { tempC: 48, rh: 0.1 } : {}));
    const [day, next] = measuredDays(log, air, indoors);
    expect(day).toMatchObject({ doubt: null });
    expect(day!.tempC).toBeLessThan(16);
    expect(next).toMatchObject({ doubt: null });
  });

  test('air that is nothing like that of the month', () => {
    expect(doubts([typed(0, 38, 0.5), typed(1, 16, 0.5), typed(2, 16, 0.05)])).toEqual([
      'unlike',
      null,
      'unlike',
    ]);
  });
});

describe('what wood followed', () => {
  const damp = (days: number, fromMs = startMs) =>
    measuredDays(
      hours(days, (hour) => ({ tempC: 15 + 0.01 * (hour % 5), rh: 0.8 }), fromMs),
      air,
      open,
    );

  test('is the measured air while it was measured, and the months before and after', () => {
    const measured = measuredStretches(damp(20), air);
    const segments = airSegments(
      [{ fromMs: 0, air, measured }],
      startMs - 30 * DAY_MS,
      startMs + 60 * DAY_MS,
    );
    const seconds = segments.reduce((sum, { durationS }) => sum + durationS, 0);
    expect(seconds).toBe((90 * DAY_MS) / 1000);
    expect(segments[0]!.emcStartPct).toBeCloseTo(usualPct, 6);
    expect(segments.at(-1)!.emcEndPct).toBeCloseTo(usualPct, 6);
    const middle = segments[Math.floor(segments.length / 2)]!;
    expect(middle.emcStartPct).toBeCloseTo(emcPct(15.02, 0.8), 1);
  });

  test('goes on straight over a gap of some days, and not over a month', () => {
    const ofDays = (gapDays: number) =>
      measuredStretches([...damp(10), ...damp(10, startMs + (10 + gapDays) * DAY_MS)], air);
    const covered = (stretches: ReturnType<typeof ofDays>) =>
      stretches.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0) / DAY_MS;
    expect(covered(ofDays(10))).toBeGreaterThanOrEqual(30);
    expect(covered(ofDays(40))).toBeLessThanOrEqual(30);
  });

  test('never overlaps, and runs forward', () => {
    const year = { length: 300 };
    const days = Array.from(year, (_, at) => typed(at * (1 + (at % 3)), 15, 0.5 + (at % 40) / 100));
    const stretches = measuredStretches(
      measuredDays(days, air, open).sort((a, b) => a.dayMs - b.dayMs),
      air,
    );
    for (const [at, { fromMs, toMs }] of stretches.entries()) {
      expect(toMs).toBeGreaterThan(fromMs);
      expect(stretches[at + 1]?.fromMs ?? Infinity).toBeGreaterThanOrEqual(toMs);
    }
  });
});

describe('the months by what was measured', () => {
  const monthsOf = (days: number, rh: number, of = air) =>
    measuredMonths(
      measuredDays(
        hours(days, (hour) => ({ tempC: 15 + 0.01 * (hour % 5), rh })),
        of,
        open,
      ),
      of,
      true,
    )!;
  const damperPct = emcPct(15.02, 0.8) - usualPct;

  test('are shifted toward it, the more the longer it was measured', () => {
    const [week, year] = [monthsOf(7, 0.8), monthsOf(365, 0.8)];
    expect(week.shiftPct).toBeGreaterThan(0);
    expect(year.shiftPct).toBeGreaterThan(2 * week.shiftPct);
    expect(year.shiftPct).toBeLessThan(damperPct);
    expect(emcOfYear(year.air).driestEmcPct).toBeCloseTo(usualPct + year.shiftPct, 6);
  });

  test('of a region are surer then, but never surer than a hygrometer', () => {
    const rough = air.map((month) => ({ ...month, emcSdPct: 1.5 }));
    const [before, after] = [airSdPct(rough), airSdPct(monthsOf(365, 0.8, rough).air)];
    expect(after).toBeLessThan(before);
    expect(after).toBeGreaterThanOrEqual(airSdPct(air));
  });

  test('stay as they are without a day that is used', () => {
    expect(measuredMonths(measuredDays([typed(0, 50, 0.1)], air, open), air, true)).toBeNull();
  });
});

test('a value within the year is that of the month in its middle', () => {
  const { monthlyEmcPct } = emcOfYear(air.map((month, at) => ({ ...month, rh: 0.5 + at / 40 })));
  expect(withinYear(monthlyEmcPct, Date.UTC(2026, 4, 16, 12))).toBeCloseTo(monthlyEmcPct[4]!, 6);
});

describe('the air of an instant', () => {
  const tempAt = (log: readonly LoggedAir[], hour: number, use = open) => {
    const atMs = startMs + hour * HOUR_MS;
    const dayFromMs = Math.floor(atMs / DAY_MS) * DAY_MS;
    return airTempAt(log, air, use, { atMs, dayFromMs, dayToMs: dayFromMs + DAY_MS - 1 });
  };
  const log = hours(4);
  const ofDay = typed(3, 18, 0.6);

  test('is the last value until then, whatever was logged later and typed of the day', () => {
    expect(
      tempAt(
        [...log, ofDay].sort((a, b) => a.atMs - b.atMs),
        74.5,
      ),
    ).toBe(log[74]!.tempC);
  });

  test('is what was typed of its day where the log is three hours old, and not that of another day', () => {
    const until = log.slice(0, 74);
    expect(tempAt([...until, ofDay], 75)).toBe(log[73]!.tempC);
    expect(tempAt([...until, ofDay], 78)).toBe(18);
    expect(tempAt([...until, ofDay], 98)).toBeNull();
    expect(tempAt([...until, { ...ofDay, isOutdated: true }], 78)).toBeNull();
  });

  test('is not that of a sensor that is stuck, of another air, or excluded', () => {
    expect(
      tempAt(
        hours(4, () => ({ tempC: 9, rh: 0.5 })),
        74,
      ),
    ).toBeNull();
    expect(
      tempAt(
        hours(4, () => ({ tempC: 40 })),
        74,
      ),
    ).toBeNull();
    expect(tempAt(log, 78, { ...open, excluded: new Set([startMs + 3 * DAY_MS]) })).toBeNull();
  });
});
