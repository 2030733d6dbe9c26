/** What readings of months ago still say today. */
import { describe, expect, test } from 'vitest';
import { foundToday } from '../../../shared-core/probing/calls/call-today.ts';
import { type Judgement, judge } from '../../../shared-core/probing/calls/judgement.ts';
import type { Quantiles } from '../../../shared-core/wood/drying/run-quantiles.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';
import { ahead, around, facts, found, nowMs, onDay, place, reach } from './a-judged-board.ts';

const never = reach(null, null, null);
const outdoors = place(1, 'Outdoors', 'outdoors', 12.3);
const said = ({ reasons, next }: Judgement): string[] =>
  [...reasons, ...(next.why ? [next.why] : [])].map((each) => inEnglish(each));

/** A board read at 26% twenty months ago, with what its forecast has for today. */
function longAgo(average: Quantiles, more: Partial<Parameters<typeof facts>[0]> = {}): Judgement {
  const forecast = ahead(average.median, [never]);
  return judge(
    facts({
      found: found('keep-drying', 26, { at: onDay(-600) }),
      places: [outdoors],
      forecast: { ...forecast, now: { ...forecast.now, average } },
      ...more,
    }),
  );
}

describe('a reading of twenty months ago', () => {
  test('a board that is surely too wet by its forecast is called so with its interval and the day it was read', () => {
    const judgement = longAgo({ low: 12, median: 13.4, high: 15 });
    expect(judgement).toMatchObject({ call: 'bring-in', next: { step: 'move', due: 'add-place' } });
    expect(judgement.average).toMatchObject({ averagePct: 13.4, readOn: null });
    expect(said(judgement)).toEqual([
      'Too wet by its forecast for today: 13.4%, likely 12.0–15.0%. Target 6–8%.',
      'Outdoors is unlikely to dry it to the target: lowest EMC 12.3%, in May.',
      'Dry enough to bring in: average at most 20%, core at most 25%.',
      'Last probed Jan 28, 2025.',
      'After Dec 29, 2026 it dries less than 0.5 points more in Outdoors.',
      'None of your places is dry enough. Add a drier one, or change the use.',
    ]);
    expect(said(judgement).join(' ')).not.toContain('26.0%');
  });

  test.each([
    ['it may be in the target by now', { low: 7, median: 8.5, high: 10 }],
    ['whether it may go indoors is open', { low: 16, median: 19, high: 24 }],
  ])('is no call where %s: probe again, with the day and what the forecast has', (_, average) => {
    const judgement = longAgo(average);
    expect(judgement).toMatchObject({ call: 'probe-again', next: { step: 'probe', due: 'probe-again' } });
    expect(said(judgement)[0]).toBe('Last probed Jan 28, 2025, too long ago for a call.');
    expect(judgement.average).toMatchObject({ averagePct: average.median, readOn: null });
  });

  test('of three months less a day still holds', () => {
    const at = onDay(-89);
    const judgement = longAgo({ low: 7, median: 8.5, high: 10 }, { found: found('keep-drying', 9, { at }) });
    expect(judgement.call).not.toBe('probe-again');
    expect(judgement.average).toMatchObject({ averagePct: 9, readOn: at });
  });

  test('Ready is not said of a board that by its forecast is so no longer', () => {
    const ready = found('ready', 7, { at: onDay(-600) });
    const judgement = longAgo({ low: 10, median: 12, high: 14 }, { found: ready });
    expect(judgement.call).toBe('probe-again');
    const still = ahead(7.2, [never], { probabilityReady: 0.9 });
    expect(judge(facts({ found: ready, places: [outdoors], forecast: still })).call).toBe('ready');
  });

  test('Too dry is said on only while the forecast is sure of it', () => {
    const tooDry = found('too-dry', 5, { at: onDay(-600) });
    expect(longAgo({ low: 5.5, median: 6.2, high: 7 }, { found: tooDry }).call).toBe('probe-again');
    expect(longAgo({ low: 4, median: 4.5, high: 5 }, { found: tooDry }).call).toBe('too-dry');
  });
});

describe('what a reading found, and what of it holds today', () => {
  const target = { minPct: 6, maxPct: 8 };
  const today = (
    of: ReturnType<typeof found>,
    average: Quantiles,
    more: { getsThere?: boolean | null; probabilityReady?: number } = {},
  ) => {
    const { getsThere = null, probabilityReady = 0 } = more;
    return foundToday(of, { average, core: average, probabilityReady }, target, getsThere, nowMs);
  };
  const old = (call: Parameters<typeof found>[0], averagePct = 12) =>
    found(call, averagePct, { at: onDay(-600) });
  const lastRead = message('call.last-read', { probedOn: onDay(-600) });

  // 90 days: common practice, no source.
  test('all of it for 90 days', () => {
    const at = (days: number) => today(found('keep-drying', 12, { at: onDay(-days) }), around(7));
    expect(at(89).isByForecast).toBe(false);
    expect(at(90)).toMatchObject({ isByForecast: true, found: { call: 'probe-again' } });
  });

  test('that it has no call, or is to be probed again, for as long as nobody reads it', () => {
    for (const call of [null, 'probe-again'] as const)
      expect(today(old(call), around(30))).toEqual({ found: old(call), isByForecast: false });
  });

  test('Ready while it is at least as likely as not, and it says when it was read', () => {
    const ready = old('ready', 7);
    expect(today(ready, around(7), { probabilityReady: 0.5 })).toEqual({
      found: { ...ready, reasons: [...ready.reasons, lastRead] },
      isByForecast: false,
    });
    expect(today(ready, around(7), { probabilityReady: 0.49 }).found.call).toBe('probe-again');
  });

  // The ends of a forecast are passed by 1 in 10 at each: what lies beyond one is sure with 9 chances in 10.
  test('too wet where the lower end of its forecast is above the target, however wide the upper part', () => {
    expect(today(old('keep-drying'), { low: 8.1, median: 8.6, high: 15 }).found.reasons[0].code).toBe(
      'call.forecast-too-wet',
    );
    expect(today(old('keep-drying'), { low: 7.9, median: 8.6, high: 9 }).found.call).toBe('probe-again');
  });

  test('too dry where the upper end of its forecast is below the target, however wide the lower part', () => {
    const tooDry = old('too-dry', 5);
    expect(today(tooDry, { low: 2, median: 5, high: 5.9 })).toEqual({
      found: { ...tooDry, reasons: [...tooDry.reasons, lastRead] },
      isByForecast: false,
    });
    expect(today(tooDry, { low: 4.9, median: 5, high: 6.1 }).found.call).toBe('probe-again');
  });

  // 20 %: common practice, no source.
  test('that it may be too wet to bring in matters only where it has to be moved, and where that is open', () => {
    const open = { low: 16, median: 19, high: 24 };
    expect(today(old('keep-drying', 26), open, { getsThere: false }).found.call).toBe('probe-again');
    expect(today(old('keep-drying', 26), open, { getsThere: true }).found.call).toBe('keep-drying');
    const surelyWet = { low: 26, median: 28, high: 30 };
    expect(today(old('keep-drying', 33), surelyWet, { getsThere: false }).found.call).toBe('keep-drying');
  });
});
