import { describe, expect, test } from 'vitest';
import { type ForecastFacts, forecastReasons } from '../../../shared-core/probing/calls/forecast-reasons.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import type { PlaceForecast } from '../../../shared-core/wood/drying/forecast.ts';
import { areas } from '../../../shared-core/words/en/index.ts';
import { message } from '../../../shared-core/words/message.ts';
import { codesOf, expectWhole, inEnglish } from '../words/in-english.ts';

const nowMs = Date.UTC(2026, 5, 1);
const inDays = (days: number) => nowMs + days * DAY_MS;
const onDay = (days: number) => new Date(inDays(days)).toISOString();
const targetRange = { minPct: 6, maxPct: 8 };
/** The last day that `place` looks at. */
const untilOn = onDay(730);
const around = (median: number) => ({ low: median - 1, median, high: median + 1 });

/** A place in which the average goes down a point each hundred days, to a lowest. */
function place(changes: Partial<PlaceForecast> = {}, lowestPct = 12): PlaceForecast {
  const atMs = Array.from({ length: 74 }, (_, i) => inDays(i * 10));
  const average = atMs.map((_, i) => around(Math.max(lowestPct, 15 - i / 10)));
  return {
    placeId: 1,
    reach: { earlyMs: null, likelyMs: null, lateMs: null },
    floorPct: around(lowestPct),
    floorMonth: 4,
    airOffsetPct: null,
    never: false,
    band: { atMs, average, shell: average, core: average },
    ...changes,
  };
}

function facts(places: PlaceForecast[], changes: Partial<ForecastFacts['forecast']> = {}): ForecastFacts {
  return {
    forecast: {
      now: {
        average: around(15),
        shell: around(14),
        core: around(16),
        faceAPct: 14,
        faceBPct: 14,
        probabilityReady: 0,
        profile: [],
      },
      places,
      ...changes,
    },
    nowMs,
    endUse: targetRange,
    places: ['Shed', 'Bench room', 'Shop'].map((name) => ({ name, lowestEmcPct: 11.7 })),
  };
}

describe('where it is', () => {
  test('with a date: the likely day with the days it may fall between', () => {
    const reach = { earlyMs: inDays(40), likelyMs: inDays(60), lateMs: inDays(100) };
    expect(forecastReasons(facts([place({ reach })]))).toEqual([
      message('forecast.reach', {
        placeName: 'Shed',
        targetRange,
        likelyWhen: { likely: onDay(60), from: onDay(40), to: onDay(100) },
      }),
    ]);
  });

  test('where the latest day is beyond the forecast, its end stays open', () => {
    const reach = { earlyMs: inDays(0), likelyMs: inDays(60), lateMs: null };
    expect(forecastReasons(facts([place({ reach })]))[0]).toEqual(
      message('forecast.reach', {
        placeName: 'Shed',
        targetRange,
        likelyWhen: { likely: onDay(60), from: onDay(0), to: null },
      }),
    );
  });

  // Nine chances in ten are not certainty.
  test('a board that is about there says by when it likely is', () => {
    const reach = { earlyMs: inDays(0), likelyMs: inDays(0), lateMs: inDays(22) };
    expect(forecastReasons(facts([place({ reach })]))[0]).toEqual(
      message('forecast.reach-now', { placeName: 'Shed', targetRange, lateOn: onDay(22) }),
    );
  });

  test('air that cannot do it: how little is gained after which day', () => {
    // From 15 % a point each hundred days: within half a point of 12 % after 250 days.
    const [reason] = forecastReasons(facts([place()]));
    expect(reason).toEqual(
      message('forecast.too-damp', { placeName: 'Shed', gainsUntilOn: onDay(250), gainPoints: 0.5 }),
    );
    expect(inEnglish(reason)).toMatch(/ it dries less than 0\.5 points more in Shed\.$/);
  });

  test('a board that is as dry as that air makes it: waiting gains nothing more', () => {
    expect(forecastReasons(facts([place({}, 14.8)]))[0].code).toBe('forecast.too-damp-now');
  });

  test('a board too dry for its use', () => {
    const dry = facts([place({}, 4)], { now: { ...facts([]).forecast.now, average: around(5) } });
    expect(forecastReasons(dry)[0]).toEqual(
      message('forecast.too-dry', { placeName: 'Shed', targetRange, averagePct: 5, untilOn }),
    );
  });

  test('a board that is ready today needs no other sentence', () => {
    const ready = facts([place()], {
      now: { ...facts([]).forecast.now, average: around(7), probabilityReady: 0.956 },
    });
    expect(forecastReasons(ready)).toEqual([
      message('forecast.ready-now', { averagePct: 7, targetRange, sureChancePct: 95 }),
    ]);
  });
});

describe('another place', () => {
  const reached = (days: number) => ({
    reach: { earlyMs: inDays(days - 5), likelyMs: inDays(days), lateMs: inDays(days + 9) },
  });

  test('the soonest is named', () => {
    const reasons = forecastReasons(facts([place(), place(reached(50)), place(reached(35))]));
    expect(reasons[1]).toEqual(
      message('forecast.moved', {
        placeName: 'Shop',
        likelyWhen: { likely: onDay(35), from: onDay(30), to: onDay(44) },
      }),
    );
  });

  test('not where it gains less than a week', () => {
    const reasons = forecastReasons(facts([place(reached(40)), place(reached(36))]));
    expect(reasons).toHaveLength(1);
  });

  test('where none does it either, that is said', () => {
    expect(forecastReasons(facts([place(), place()]))[1]).toEqual(message('forecast.nowhere', { untilOn }));
  });
});

test('every sentence is whole', () => {
  const reach = (earlyMs: number | null, likelyMs: number | null, lateMs: number | null) => ({
    reach: { earlyMs, likelyMs, lateMs },
  });
  const now = facts([]).forecast.now;
  const reasons = [
    facts([place()], { now: { ...now, probabilityReady: 1 } }),
    facts([place(reach(inDays(9), inDays(60), null))]),
    facts([place(reach(nowMs, nowMs, inDays(30)))]),
    facts([place(reach(nowMs, nowMs, null))]),
    facts([place(reach(inDays(9), null, null)), place()]),
    facts([place(reach(nowMs, null, null)), place(reach(nowMs, nowMs, nowMs))]),
    facts([place(), place(reach(inDays(9), inDays(20), inDays(30)))]),
    facts([place({}, 14.8)]),
    facts([place({}, 4)], { now: { ...now, average: around(5) } }),
    facts([place({}, 4)]),
  ].flatMap(forecastReasons);
  const expected = Object.keys(areas.forecastReasons).filter(
    (code) => !/^forecast\.(none|assumed|probe)[.-]?/.test(code) || /^forecast\.probe-/.test(code),
  );
  expect([...codesOf(reasons)].filter((code) => !code.startsWith('forecast.probe.')).sort()).toEqual(
    expected.sort(),
  );
  expectWhole(reasons);
});
