import { describe, expect, test } from 'vitest';
import { isJump, type Sample, startSettling, step } from '../../../shared-core/probing/readings/settle.ts';

/*
 * Streams made up by hand, in which each threshold of the detector can be reached and just missed. The thresholds are
 * ours (`tests/bench/settling.bench.ts`); they stand for no particular meter.
 */

/** What a meter sends in so long, one value each `gapMs`. */
const stream = (gapMs: number, forMs: number, at: (ms: number) => number | null, fromMs = 0): Sample[] =>
  Array.from({ length: Math.round(forMs / gapMs) + 1 }, (_, index) => ({
    atMs: fromMs + index * gapMs,
    value: at(index * gapMs),
  }));
const rest = (value: number) => () => value;

/** What is saved of a stream, and when. */
function saved(samples: readonly Sample[], unit: 'pct' | 'ohm' = 'pct'): [atMs: number, value: number][] {
  let state = startSettling(unit);
  return samples.flatMap((sample): [number, number][] => {
    const result = step(state, sample);
    state = result.state;
    return result.settledNow ? [[sample.atMs, result.value!]] : [];
  });
}
const savedAt = (samples: readonly Sample[]): number[] => saved(samples).map(([atMs]) => atMs);
/** The newest of what the screen shows. */
function last(
  samples: readonly Sample[],
  unit: 'pct' | 'ohm' = 'pct',
  range: { min: number; max: number } | null = null,
) {
  const start = step(startSettling(unit, range), { atMs: -1000, value: null });
  return samples.reduce((before, sample) => step(before.state, sample), start);
}
const phaseOf = (
  value: number,
  unit: 'pct' | 'ohm',
  range: { min: number; max: number } | null = null,
): string => last([{ atMs: 0, value }], unit, range).phase;

describe('a value at rest from the start', () => {
  test.each([
    ['tenths', 12.3, 1400],
    ['half points', 12.5, 2300],
    ['whole points', 12, 2700],
  ])('on a display in %s is saved the later the coarser it is', (_, value, atMs) => {
    for (const gapMs of [50, 100]) expect(saved(stream(gapMs, 3000, rest(value)))).toEqual([[atMs, value]]);
  });

  test.each([
    [200, 2000],
    [300, 2100],
    [500, 2500],
    [1000, 5000],
    [2000, 10_000],
  ])(
    'is saved later where a value comes only each %d ms: six are needed, and that they are sure',
    (gapMs, atMs) => {
      expect(saved(stream(gapMs, 6 * gapMs + 1500, rest(12.3)))).toEqual([[atMs, 12.3]]);
    },
  );

  test('of which the meter has shown finer steps before is not watched as if its display were coarse', () => {
    const shown = (value: number) => [...stream(100, 500, rest(value)), ...stream(100, 500, () => null, 600)];
    const after = stream(100, 4000, rest(12), 1200);
    expect(savedAt([...shown(12.3), ...after])).toEqual([1200 + 1400]);
    expect(savedAt([...shown(12.5), ...after])).toEqual([1200 + 2300]);
  });

  test('is of a coarse display though its numbers are not quite whole', () => {
    expect(savedAt(stream(100, 5000, rest(12.000_000_01)))).toEqual([2700]);
    expect(savedAt(stream(100, 5000, rest(12.000_1)))).toEqual([1400]);
  });

  test('in ohms is never watched as a coarse display', () => {
    expect(saved(stream(100, 5000, rest(4.7e5)), 'ohm')).toEqual([[1400, 4.7e5]]);
    expect(saved(stream(100, 5000, rest(1e9)), 'ohm')).toEqual([[1400, 1e9]]);
  });
});

describe('a value that creeps', () => {
  test.each([0.01, 0.03, 0.05])('by %d points a second is saved at once', (perSecond) => {
    for (const way of [1, -1])
      expect(savedAt(stream(20, 2000, (ms) => 12.34 + (way * perSecond * ms) / 1000))).toEqual([1400]);
  });

  test.each([0.055, 0.08, 0.3])('by %d points a second is never saved', (perSecond) => {
    for (const way of [1, -1])
      expect(saved(stream(50, 5000, (ms) => 12.34 + (way * perSecond * ms) / 1000))).toEqual([]);
  });

  test.each([
    [100, 1600],
    [400, 2650],
    [1000, 4600],
    [2000, 7250],
  ])('to its end with a time constant of %d ms is saved once it is nearly there', (tauMs, atMs) => {
    for (const start of [-3, 3]) {
      const found = saved(stream(50, 8000, (ms) => 12.6 + start * Math.exp(-ms / tauMs)));
      expect(found.map(([at]) => at)).toEqual([atMs]);
      // Half a point is allowed; this is how far a drift so slow still has to go.
      expect(Math.abs(found[0]![1] - 12.6)).toBeLessThan(0.1);
    }
  });

  test.each([
    [0.08, 2400],
    [0.13, 2500],
    [0.2, 2600],
  ])('by %d points a second, and stops after two, is saved soon after', (perSecond, atMs) => {
    expect(savedAt(stream(50, 3000, (ms) => 12.34 + (perSecond * Math.min(ms, 2000)) / 1000))).toEqual([
      atMs,
    ]);
  });

  test.each([
    [0.06, 2200],
    [0.1, 2300],
  ])('by %d points a second, and turns back after two, is not saved before it turns', (perSecond, atMs) => {
    const turning = (ms: number) => 12.34 + (perSecond * (2000 - Math.abs(ms - 2000))) / 1000;
    expect(savedAt(stream(50, 3000, turning))).toEqual([atMs]);
  });
});

describe('a value that moved before it came to rest', () => {
  /** Pushed in by several pushes: up and down each 300 ms, `turns` times, and then at rest. */
  const pushed = (turns: number, by: number, from = 12.34) =>
    stream(100, 6000, (ms) => from + (Math.min(turns, Math.floor(ms / 300)) % 2) * by);

  test('is watched for longer with each turn', () => {
    expect([1, 2, 3].flatMap((turns) => savedAt(pushed(turns, 0.9)))).toEqual([1600, 3400, 5200]);
    expect([1, 2, 3].flatMap((turns) => savedAt(pushed(turns, 3)))).toEqual([1600, 3400, 5200]);
  });

  test('is not where the turn is but noise, which is more in wet wood', () => {
    expect([0.45, 0.5, 0.55, 0.6].flatMap((by) => savedAt(pushed(2, by, 12.3)))).toEqual([
      1900, 1900, 3400, 3400,
    ]);
    expect([0.7, 0.8, 0.85, 0.9].flatMap((by) => savedAt(pushed(2, by, 24.3)))).toEqual([
      1900, 1900, 3400, 3400,
    ]);
    // A whole step to and fro is what a coarse display does between two values.
    expect([1, 2].flatMap((by) => savedAt(pushed(2, by, 12)))).toEqual([2700, 4200]);
  });

  test('by pushes all one way is not watched for longer, nor where it then creeps back by less than a turn', () => {
    const steps = (...ends: number[]) =>
      savedAt(stream(100, 4000, (ms) => ends[Math.min(ends.length - 1, Math.floor(ms / 300))]!));
    expect(steps(12.34, 13.24, 14.14)).toEqual([1900]);
    expect(steps(12.34, 13.24, 13.14)).toEqual([1800]);
    // Back from the furthest that it came to.
    expect(steps(12.34, 13.24, 13.54, 12.94)).toEqual([2900]);
    // What is noise in wet wood, wherever it came from.
    expect(steps(12.34, 24.34, 23.64)).toEqual([1900]);
  });

  // From 12 to 13 in whole points, from 12.5 to 13 in half points.
  test.each([
    [300, 2900, 2500],
    [1000, 3600, 3200],
    [1200, 3800, 3800],
    [1500, 4900, 4900],
    [2000, 5500, 5500],
  ])(
    'and stood for %d ms on a coarse display is watched for much longer after that',
    (stoodMs, whole, half) => {
      expect(savedAt(stream(100, 6000, (ms) => (ms < stoodMs ? 12 : 13)))).toEqual([whole]);
      expect(savedAt(stream(100, 6000, (ms) => (ms < stoodMs ? 12.5 : 13)))).toEqual([half]);
    },
  );
});

describe('a value that flickers', () => {
  test('between two steps of a coarse display is at rest, unless it never comes back to where it was', () => {
    expect(savedAt(stream(100, 5000, (ms) => 12 + (Math.floor(ms / 200) % 2)))).toEqual([2800]);
    expect(savedAt(stream(100, 5000, (ms) => 12 + 0.5 * ((ms / 100) % 2)))).toEqual([3900]);
  });

  test('by two steps is not', () => {
    expect(saved(stream(100, 5000, (ms) => 12.5 + (Math.floor(ms / 200) % 2)))).toEqual([]);
    expect(saved(stream(100, 6000, (ms) => 12 + 2 * (Math.floor(ms / 200) % 2)))).toEqual([]);
  });

  const noise = [0, 1, -1, 0.5, -0.5, 0.8, -0.2, -0.9, 0.3, 0.6, -0.7];
  test.each([
    [0.05, [1850]],
    [0.1, [3100]],
    [0.2, [4150]],
    [0.25, []],
  ])(
    'by %d points about its middle is watched the longer, and beyond a quarter never saved',
    (points, atMs) => {
      const samples = stream(50, 6000, (ms) => 12.34 + points * noise[(ms / 50) % noise.length]!);
      expect(savedAt(samples)).toEqual(atMs);
    },
  );

  test('fast between two values is saved where they are half a point apart, and more in proportion where wetter', () => {
    const between = (from: number, by: number) =>
      saved(stream(20, 4000, (ms) => from + ((ms / 20) % 2) * by));
    expect(between(12.3, 0.5)).toEqual([[3080, 12.3]]);
    expect(between(12.3, 0.6)).toEqual([]);
    expect(between(30.3, 0.6)).toEqual([[3080, 30.3]]);
  });

  test('once, as a spike does, is saved as if it had not; a spike of two values is looked at again', () => {
    const spike = (...at: number[]) => saved(stream(100, 5000, (ms) => (at.includes(ms) ? 15 : 12.3)));
    expect([0, 700, 1400].flatMap((at) => spike(at))).toEqual(Array(3).fill([1400, 12.3]));
    expect(spike(700, 800)).toEqual([[3700, 12.3]]);
  });
});

describe('pins moved after a reading', () => {
  const moved = (from: number, by: number) =>
    saved(stream(100, 5000, (ms) => (ms < 3000 ? from : from + by)));

  test.each([
    [12.3, 1.5],
    [12.3, -1.5],
    [20.1, 2.4],
    [20.1, -2.4],
  ])('from %d by %d points are the same insertion, and by a little more another', (from, by) => {
    expect(moved(from, 0.99 * by)).toHaveLength(1);
    expect(moved(from, 1.02 * by)).toEqual([expect.anything(), [4400, from + 1.02 * by]]);
    expect(isJump('pct', from, from + 0.99 * by)).toBe(false);
    expect(isJump('pct', from, from + 1.02 * by)).toBe(true);
  });

  test('in ohms are told by what those are in moisture content', () => {
    const samples = stream(100, 6000, (ms) => (ms < 3000 ? 1e9 : 1e8));
    expect(saved(samples, 'ohm').map(([, value]) => value)).toEqual([1e9, 1e8]);
    expect([isJump('ohm', 1e9, 1e8), isJump('ohm', 1e9, 9e8)]).toEqual([true, false]);
  });

  test('by just that much are the same insertion', () => {
    expect(moved(12, 1.5)).toHaveLength(1);
    expect(isJump('pct', 12, 13.5)).toBe(false);
  });

  test('show at once as one stray value, which is another insertion once it lasts', () => {
    const stray = (ms: number) =>
      savedAt(stream(50, 3500, (at) => (at >= 1600 && at < 1600 + ms ? 20.1 : 12.3)));
    // From the first to the last of them.
    expect([50, 100, 150].map(stray)).toEqual([[1400], [1400], [1400]]);
    expect(stray(200)).toEqual([1400, 3150]);
    // Two lone ones are two spikes.
    expect(savedAt(stream(50, 6000, (ms) => (ms === 3000 || ms === 4000 ? 20.1 : 12.3)))).toEqual([1400]);
    // A slow meter's one value of it is not enough.
    expect(savedAt(stream(1000, 15_000, (ms) => (ms === 9000 ? 20.1 : 12.3)))).toEqual([5000]);
  });
});

describe('no value', () => {
  const out = (fromMs: number, ms: number) =>
    savedAt(stream(50, 3500, (at) => (at > fromMs && at < fromMs + ms ? null : 12.3)));

  test('for less than a quarter of a second is a bounce of the contacts, and longer the pins were out', () => {
    // The last of it comes 50 ms before the next value.
    expect(out(1600, 250)).toEqual([1400]);
    expect(out(1600, 300)).toEqual([1400, 1600 + 300 + 1400]);
    expect(out(500, 250)).toEqual([1400]);
    expect(out(500, 300)).toEqual([500 + 300 + 1400]);
  });
});

describe('values from wood', () => {
  test.each([
    ['pct', 0.1, 200],
    ['ohm', 1e3, 1e12],
  ] as const)('in %s are all from %d to %d, where a meter does not say otherwise', (unit, min, max) => {
    expect([min, max].map((value) => phaseOf(value, unit))).toEqual(['drifting', 'drifting']);
    expect([0.99 * min, 1.01 * max].map((value) => phaseOf(value, unit))).toEqual(['pins-out', 'pins-out']);
  });

  test('are those of the meter’s own range, ends included', () => {
    const range = { min: 5, max: 40 };
    expect([5, 40].map((value) => phaseOf(value, 'pct', range))).toEqual(['drifting', 'drifting']);
    expect([4.9, 40.1].map((value) => phaseOf(value, 'pct', range))).toEqual(['pins-out', 'pins-out']);
    const odd = { min: -5, max: 40 };
    expect([0, -1].map((value) => phaseOf(value, 'pct', odd))).toEqual(['pins-out', 'pins-out']);
  });
});

describe('what the screen shows', () => {
  const shows = (...values: number[]) => {
    const { spread, value } = last(values.map((each, index) => ({ atMs: index * 100, value: each })));
    return [value, Number(spread!.toFixed(6))];
  };

  test('the middle one of the newest values, and how far they lie apart', () => {
    expect(shows(12.3)).toEqual([12.3, 0]);
    expect(shows(12.3, 12.5)).toEqual([12.3, 0.2]);
    expect(shows(12.3, 12.9, 12.5)).toEqual([12.5, 0.6]);
    expect(shows(12.1, 12.5, 12.9, 12.2)).toEqual([12.5, 0.8]);
    // Of 1.4 s, the newer half for the value; all but the outermost for the spread.
    expect(shows(...Array.from({ length: 20 }, (_, index) => 10 + index / 10))).toEqual([11.5, 1.2]);
  });

  test('a lone spike among ten values is no spread', () => {
    const spiked = (count: number) =>
      Array.from({ length: count }, (_, i) => (i === 4 ? 20.1 : 12.1 + i / 100));
    expect(shows(...spiked(9))[1]).toBeCloseTo(8, 6);
    expect(shows(...spiked(10))[1]).toBeCloseTo(0.08, 6);
  });
});

describe('values sent too fast', () => {
  test('are passed over where less than four milliseconds lie between them', () => {
    const { state } = step(startSettling('pct'), { atMs: 1000, value: 12.3 });
    expect(step(state, { atMs: 1003, value: 12.4 }).state).toBe(state);
    expect(step(state, { atMs: 1004, value: 12.4 }).state).not.toBe(state);
  });

  test('save as those at four milliseconds do', () => {
    const fast = (gapMs: number) => savedAt(stream(gapMs, 1420, rest(12.3)));
    expect(fast(1)).toEqual(fast(4));
  });

  test('at no time are passed over, also the first', () => {
    const state = startSettling('pct');
    for (const atMs of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(step(state, { atMs, value: 12.3 }).state).toBe(state);
  });
});
