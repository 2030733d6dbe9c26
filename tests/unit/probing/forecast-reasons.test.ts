import { describe, expect, test } from 'vitest';
import { type ForecastFacts, forecastReasons } from '../../../shared-core/probing/calls/forecast-reasons.ts';
import type { PlaceForecast } from '../../../shared-core/wood/drying/forecast.ts';

const DAY_MS = 86_400_000;
const nowMs = Date.UTC(2026, 5, 1);
const inDays = (days: number) => nowMs + days * DAY_MS;
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
      nextProbe: { atMs: inDays(30), why: 'Then its rate is known.' },
      ...changes,
    },
    nowMs,
    endUse: { name: 'furniture', minPct: 6, maxPct: 8 },
    placeNames: ['Shed', 'Bench room', 'Shop'],
    day: (atMs) => `day ${Math.round((atMs - nowMs) / DAY_MS)}`,
  };
}

describe('where it stands', () => {
  test('with a date: the likely day first, then the earliest and the latest likely', () => {
    const reach = { earlyMs: inDays(40), likelyMs: inDays(60), lateMs: inDays(100) };
    expect(forecastReasons(facts([place({ reach })]))).toEqual([
      'In Shed it should reach 6.0 % to 8.0 % about day 60, hardly before day 40 and very likely by day 100.',
      'Probe it next on day 30. Then its rate is known.',
    ]);
  });

  test('where the latest is beyond the time looked at, that is said', () => {
    const reach = { earlyMs: inDays(0), likelyMs: inDays(60), lateMs: null };
    expect(forecastReasons(facts([place({ reach })]))[0]).toMatch(
      /about day 60, perhaps already now and perhaps not within the time looked at\.$/,
    );
  });

  // Nine chances in ten are not certainty.
  test('a board that is about there says by when it very likely is', () => {
    const reach = { earlyMs: inDays(0), likelyMs: inDays(0), lateMs: inDays(22) };
    expect(forecastReasons(facts([place({ reach })]))[0]).toMatch(/ now; by day 22 it very likely is\.$/);
  });

  test('air that cannot do it: its floor, and the day after which waiting gains nothing', () => {
    // From 15 % a point each hundred days: within half a point of 12 % after 250 days.
    expect(forecastReasons(facts([place()]))[0]).toBe(
      'Even the driest month’s air in Shed (April) brings wood no lower than 12.0 %, and 6.0 % to 8.0 % is wanted: waiting there gains nothing after day 250.',
    );
  });

  test('a board that is as dry as that air makes it: waiting gains nothing any more', () => {
    expect(forecastReasons(facts([place({}, 14.8)]))[0]).toMatch(/waiting there gains nothing any more\.$/);
  });

  test('a board too dry for its use is told so', () => {
    const dry = facts([place({}, 4)], {
      now: { ...facts([]).forecast.now, average: around(5) },
    });
    expect(forecastReasons(dry)[0]).toMatch(
      /^At 5\.0 % it is drier than 6\.0 % to 8\.0 %, and the air in Shed/,
    );
  });

  test('a board that is fit today needs no other sentence than when to probe', () => {
    const fit = facts([place()], {
      now: { ...facts([]).forecast.now, average: around(7), probabilityReady: 0.956 },
      nextProbe: { atMs: null, why: 'Nothing would change.' },
    });
    expect(forecastReasons(fit)).toEqual([
      'By its history it is fit for furniture today, with a probability of 95 %: about 7.0 %, and 6.0 % to 8.0 % is wanted.',
      'Nothing would change.',
    ]);
  });
});

describe('another place', () => {
  const reached = (days: number) => ({
    reach: { earlyMs: inDays(days - 5), likelyMs: inDays(days), lateMs: inDays(days + 9) },
  });

  test('the soonest is named', () => {
    const reasons = forecastReasons(facts([place(), place(reached(50)), place(reached(35))]));
    expect(reasons[1]).toBe('Moved to Shop today it should get there about day 35, very likely by day 44.');
  });

  test('not where it gains less than a week', () => {
    const reasons = forecastReasons(facts([place(reached(40)), place(reached(36))]));
    expect(reasons).toHaveLength(2);
  });

  test('where none does it either, that is said', () => {
    expect(forecastReasons(facts([place(), place()]))[1]).toMatch(/^No other place of this yard/);
  });
});
