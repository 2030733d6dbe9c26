/** What readings of months ago still say today. */
import { describe, expect, test } from 'vitest';
import { type Judgement, judge } from '../../../shared-core/probing/calls/judgement.ts';
import type { Quantiles } from '../../../shared-core/wood/drying/run-quantiles.ts';
import { inEnglish } from '../words/in-english.ts';
import { ahead, facts, found, onDay, place, reach } from './a-judged-board.ts';

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
