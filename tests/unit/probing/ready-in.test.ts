/** When a board is ready in a place, by its forecast there. */
import { describe, expect, test } from 'vitest';
import {
  canReach,
  driestIn,
  isReached,
  type Ready,
  readyIn,
  readySchema,
  whenOf,
} from '../../../shared-core/probing/calls/ready-in.ts';
import { around, dayOf, inDays, nowMs, onDay, reach } from './a-judged-board.ts';

const target = { minPct: 6, maxPct: 8 };
const day = (days: number): string => dayOf(onDay(days));
const never = reach(null, null, null);
/** A place where the board has these averages, % MC, by the days from today on which it has them. */
const place = (
  medians: Record<number, number>,
  reached: ReturnType<typeof reach> = never,
): Parameters<typeof readyIn>[0] => {
  const pcts = Object.values(medians);
  return {
    reach: reached,
    best: { fromMs: inDays(50), toMs: inDays(80), averagePct: 9 },
    band: {
      atMs: Object.keys(medians).map((days) => inDays(Number(days))),
      average: pcts.map(around),
      shellPct: pcts,
      corePct: pcts,
    },
  };
};
/** Air that gets as dry as the middle of the target. */
const LOWEST_EMC_PCT = 7;
const ready = (
  at: ReturnType<typeof place>,
  {
    averagePct = 14,
    lowestEmcPct = LOWEST_EMC_PCT,
  }: { averagePct?: number; lowestEmcPct?: number | null } = {},
): Ready => {
  const made = readyIn(at, lowestEmcPct, averagePct, target, nowMs, dayOf);
  expect(readySchema.parse(made)).toEqual(made);
  return made;
};

describe('whether a place can bring a board into its target', () => {
  test.each([
    ['one that is too wet, where its lowest EMC is at the target’s top', 14, 8, true],
    ['one that is too wet, where its lowest EMC is above it', 14, 8.1, false],
    ['one that is too wet, where the air is not known', 14, null, true],
    ['one that is dry enough, whatever the air', 8, 12, true],
  ])('%s', (_, averagePct, lowestEmcPct, can) => {
    expect(canReach(averagePct, lowestEmcPct, target)).toBe(can);
  });

  test('where it cannot, the air is too damp, and it says how dry the board gets', () => {
    expect(ready(place({ 0: 14, 100: 11.5, 200: 12.5 }), { lowestEmcPct: 11 })).toEqual({
      kind: 'too-damp',
      driestPct: 11.5,
    });
    expect(driestIn(place({ 0: 14, 100: 11.5, 200: 12.5 }))).toBe(11.5);
  });
});

describe('a board that is too wet', () => {
  const drying = { 0: 14, 100: 9, 200: 7.5 };

  test('is likely ready on the likely day, from the early one to the late one', () => {
    const made = ready(place(drying, reach(60, 90, 150)));
    expect(made).toEqual({ kind: 'likely', when: { likely: day(90), from: day(60), to: day(150) } });
    expect(whenOf(made)).toEqual({ likely: day(90), from: day(60), to: day(150) });
    expect(isReached(made)).toBe(true);
  });

  test('has an open range where its late day is beyond the forecast', () => {
    expect(ready(place(drying, reach(null, 90, null)))).toEqual({
      kind: 'likely',
      when: { likely: day(90), from: day(90), to: null },
    });
  });

  test('is ready any day where the likely day is today', () => {
    const made = ready(place(drying, reach(0, 0.9, 20)));
    expect(made).toEqual({ kind: 'any-day' });
    expect(isReached(made)).toBe(true);
    expect(whenOf(made)).toBeNull();
    expect(ready(place(drying, reach(0, 1, 20))).kind).toBe('likely');
  });

  test('is unlikely to get there where only its early day is within the forecast, and it says when it is likeliest', () => {
    const made = ready(place({ 0: 14, 100: 9, 200: 8.4 }, reach(60, null, null)));
    expect(made).toEqual({ kind: 'unlikely', best: { from: day(50), to: day(80) }, driestPct: 8.4 });
    expect(isReached(made)).toBe(false);
    expect(whenOf(made)).toBeNull();
  });

  test('does not get there within the forecast where it has no day, or only today', () => {
    const slow = { 0: 14, 100: 9, 200: 8.4 };
    for (const none of [never, reach(0.5, null, null)])
      expect(ready(place(slow, none))).toEqual({ kind: 'not-within', driestPct: 8.4 });
    // It dries to the target, and stays uneven.
    expect(ready(place({ 0: 14, 200: 8 }))).toEqual({ kind: 'not-within', driestPct: null });
  });
});

describe('a board that is dry enough', () => {
  // 0.5 points: common practice, no source.
  test('leaves its target where the air takes it up by more than half a point within a year', () => {
    expect(ready(place({ 0: 7.5, 100: 8, 200: 8.2, 300: 8.6 }), { averagePct: 7.5 })).toEqual({
      kind: 'leaves',
      entersOn: null,
      leavesOn: day(200),
    });
  });

  test('stays where it takes up less than that, or later', () => {
    const stays = (medians: Record<number, number>) =>
      ready(place(medians, reach(10, 20, 30)), { averagePct: 7.5 }).kind;
    expect(stays({ 0: 7.5, 100: 8.5, 200: 8 })).toBe('likely');
    expect(stays({ 0: 7.5, 364: 8, 366: 12 })).toBe('likely');
    expect(stays({ 0: 7.5, 365: 8.6 })).toBe('leaves');
  });

  test('one that is too dry goes through its target first', () => {
    expect(ready(place({ 0: 5, 100: 6.2, 200: 8.2, 300: 10 }), { averagePct: 5 })).toEqual({
      kind: 'leaves',
      entersOn: day(100),
      leavesOn: day(200),
    });
  });

  test('one that is too wet leaves nothing', () => {
    expect(ready(place({ 0: 9, 100: 8.6, 200: 7.5 }, reach(100, 150, 200)), { averagePct: 9 }).kind).toBe(
      'likely',
    );
  });
});
