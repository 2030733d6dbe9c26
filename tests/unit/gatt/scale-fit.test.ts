/** The simplest scale and offset between what meters store and what their displays show; the meters are made up. */
import { describe, expect, test } from 'vitest';
import { fitScales, type StoredAndShown } from '../../../shared-core/gatt/scale-fit.ts';

/** What a meter that stores steps of `scale` from `offset` on shows of boards, to the tenth or as given. */
const meter =
  (scale: number, offset = 0, decimals = 1) =>
  (...stored: number[]): StoredAndShown[] =>
    stored.map((each) => ({
      stored: each,
      value: Number((each * scale + offset).toFixed(decimals)),
      resolution: 10 ** -decimals,
    }));
const best = (points: StoredAndShown[]) => {
  const [fit] = fitScales(points);
  return fit && { scale: fit.scale, offset: fit.offset };
};
const costs = (points: StoredAndShown[]) => fitScales(points).map(({ cost }) => cost);

describe('a scale', () => {
  test.each([0.1, 0.05, 0.02, 0.2, 0.25, 0.5, 0.03, 2, 5, 1 / 16, 1 / 128, 1 / 256, 0.125, 0.0123])(
    'of %d is found from two boards',
    (scale) => {
      const points = meter(scale)(Math.round(13.4 / scale), Math.round(41.7 / scale));
      expect(best(points)).toEqual({ scale, offset: 0 });
    },
  );

  test('that runs the other way is found too, at four bits more', () => {
    const up = meter(0.05)(268, 514);
    const down = up.map((point) => ({ ...point, stored: -point.stored }));
    expect(best(down)).toEqual({ scale: -0.05, offset: 0 });
    expect(fitScales(down)[0]!.cost).toBe(fitScales(up)[0]!.cost + 4);
  });

  test('of fewer digits is likelier, and of equally many one that steps usually have, or a half of halves', () => {
    const cost = (scale: number) =>
      fitScales(meter(scale)(Math.round(13.4 / scale), Math.round(300 / scale)))[0]!.cost;
    const ordered = [0.2, 0.125, 0.3, 0.75, 0.35, 0.31, 0.135, 0.131].map(cost);
    expect(ordered).toEqual(ordered.toSorted((a, b) => a - b));
    expect(new Set(ordered).size).toBe(ordered.length);
  });

  test('is written as a person would: three tenths are 0.3', () => {
    expect(best(meter(0.3)(40, 90))!.scale).toBe(0.3);
    expect(best(meter(0.7)(20, 51))!.scale).toBe(0.7);
  });
});

describe('an offset', () => {
  test.each([
    [0.1, 5],
    [0.1, -5],
    [0.25, 2.5],
    [0.05, -2.5],
    [1 / 16, 3],
    [-0.1, 60],
    [-0.25, 50],
  ])('beside a scale of %d: %d', (scale, offset) => {
    const points = meter(
      scale,
      offset,
    )(...[9.8, 25.7, 44.3].map((pct) => Math.round((pct - offset) / scale)));
    expect(best(points)).toEqual({ scale, offset });
  });

  test('is one, whatever order the boards came in', () => {
    const [a, b, c] = meter(0.1, 5)(84, 90, 393);
    const fits = fitScales([a!, b!, c!]);
    expect(fits.length).toBeGreaterThan(1);
    for (const points of [
      [a!, c!, b!],
      [b!, c!, a!],
      [c!, a!, b!],
      [c!, b!, a!],
    ]) {
      expect(fitScales(points)).toEqual(fits);
    }
  });

  test('is likelier none where none is needed', () => {
    const [first, ...others] = fitScales(meter(0.1)(134, 257));
    expect(first).toMatchObject({ scale: 0.1, offset: 0 });
    for (const { cost } of others) expect(cost).toBeGreaterThan(first!.cost);
  });

  test('beyond every number shown is found, but odd', () => {
    // The same meter, with 10 more stored than the other.
    const near = fitScales(meter(0.5, -5)(40, 64))[0]!;
    const far = fitScales(meter(0.5, -50)(130, 154))[0]!;
    expect(far).toMatchObject({ scale: 0.5, offset: -50 });
    expect(far.cost - near.cost).toBeCloseTo(4, 9);
    // One beyond some of them is not, nor one as large as the largest.
    expect(costs(meter(0.5, -20)(60, 160))[0]).toBe(costs(meter(0.5, -20)(120, 160))[0]);
    expect(costs(meter(-0.1, 40)(0, 200))[0]).toBe(costs(meter(-0.1, 40)(-100, 200))[0]);
  });

  test('that is simple is likelier than an odd scale without one', () => {
    // 0.1 and 7; 0.1325 without an offset would show the same, to the percent.
    const points = meter(0.1, 7, 0)(200, 230);
    expect(best(points)).toEqual({ scale: 0.1, offset: 7 });
    expect(costs(points)).toEqual(costs(points).toSorted((a, b) => a - b));
  });

  test('is none where all numbers could be without', () => {
    // 10 with a step of 1 begins at 9.5, and 19 half steps are 9.5.
    const points = meter(0.5, 0, 0)(20, 60).concat({ stored: 19, value: 10, resolution: 1 });
    expect(best(points)).toEqual({ scale: 0.5, offset: 0 });
  });
});

describe('the display rounds', () => {
  test('a number just within half a digit agrees, one beyond it does not', () => {
    const shown = (value: number) => [
      { stored: 100, value: 10, resolution: 0.1 },
      { stored: 300, value, resolution: 0.1 },
    ];
    expect(best(shown(30.04))).toEqual({ scale: 0.1, offset: 0 });
    expect(best(shown(29.96))).toEqual({ scale: 0.1, offset: 0 });
    expect(best(shown(29.94))).not.toEqual({ scale: 0.1, offset: 0 });
    expect(best(shown(30.06))).not.toEqual({ scale: 0.1, offset: 0 });
  });

  test('two numbers for the same bytes fit nothing, nor do three that are on no line', () => {
    expect(fitScales([...meter(0.1)(134), { stored: 134, value: 20, resolution: 0.1 }])).toEqual([]);
    expect(fitScales([...meter(0.1)(134, 257), { stored: 200, value: 40, resolution: 0.1 }])).toEqual([]);
  });

  test('bytes of zero are no proportion, but may have an offset', () => {
    expect(best(meter(0.1, 6)(0, 200))).toEqual({ scale: 0.1, offset: 6 });
    // Nor where 0 is shown, as of no wood.
    expect(fitScales(meter(0.1)(0, 200)).every(({ offset }) => offset !== 0)).toBe(true);
    expect(fitScales(meter(0.1, 6)(0, 200)).every(({ offset }) => offset !== 0)).toBe(true);
  });

  test('numbers that hardly differ fit no slope', () => {
    expect(fitScales([...meter(0.1)(134), { stored: 200, value: 13.4, resolution: 0.1 }])).toEqual([]);
  });
});

test('at most three are offered, the simplest first, no scale and offset twice', () => {
  for (const points of [meter(0.1, 0, 0)(134, 257), meter(0.05, 3, 0)(300, 500), meter(1 / 16)(200, 400)]) {
    const fits = fitScales(points);
    expect(fits.length).toBeLessThanOrEqual(3);
    expect(costs(points)).toEqual(costs(points).toSorted((a, b) => a - b));
    expect(new Set(fits.map(({ scale, offset }) => `${scale} ${offset}`)).size).toBe(fits.length);
  }
});

test('nothing fits nothing', () => {
  expect(fitScales([])).toEqual([]);
});
