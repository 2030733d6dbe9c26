/** Which scales are tried for a layout, and how unlikely each is, in bits. Which are common is common practice, no source. */
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import { scaledLayouts } from '../../../shared-core/gatt/scaled-layouts.ts';
import type { StoredStretch } from '../../../shared-core/gatt/stretch.ts';

const plain = { exponent: 0, scale: 1, offset: 0 } as const;
// Bluetooth SIG, Assigned Numbers, Format Types (checked): uint8 is 4, uint16 is 6, float32 is 20.
const number = (format: number): Layout => ({ kind: 'number', format, byteOffset: 0, ...plain });
const bits: Layout = { kind: 'bits', firstBit: 0, bits: 10, signed: false, ...plain };
const text: Layout = { kind: 'text', byteOffset: 0, nth: 1, ...plain };
const typed = (value: number, resolution = 0.1) => ({ value, resolution, fromMs: 0, toMs: 0 });

describe('a power of ten', () => {
  const powersOf = (layout: Layout, resolutions: number[], unit: 'pct' | 'ohm' = 'pct', cost = 0) => {
    const shown = resolutions.map((resolution) => typed(13.4, resolution));
    const none = shown.map((): StoredStretch => []);
    return scaledLayouts({ layout, cost }, none, shown, unit);
  };
  /** What each power costs, by its exponent. */
  const costs = (...given: Parameters<typeof powersOf>) =>
    Object.fromEntries(powersOf(...given).map(({ factor, cost }) => [Math.round(Math.log10(factor)), cost]));

  test('of whole numbers is likeliest that of the last digit on the display', () => {
    expect(costs(number(6), [0.1])).toEqual({ '-1': 0, '-2': 0.4, '-3': 0.8, 0: 3.5, 1: 3.5, 2: 3.5 });
    expect(costs(number(6), [1])).toEqual({ '-1': 0.4, '-2': 0.8, '-3': 0.4 * 3, 0: 0, 1: 3.5, 2: 3.5 });
    expect(costs(bits, [0.1])[-1]).toBe(0);
  });

  test('of ohms may well be coarser', () => {
    expect(costs(number(6), [1e5], 'ohm')).toMatchObject({ 5: 0, 4: 0.4, 3: 0.8, 0: 2, 6: 1.5, 9: 1.5 });
  });

  test('goes by the finest of the typed numbers', () => {
    expect(costs(number(6), [1, 0.1, 1])).toMatchObject({ '-1': 0, 0: 3.5 });
  });

  test('is added to what the layout costs', () => {
    expect(costs(number(6), [0.1], 'pct', 1.5)).toMatchObject({ '-1': 1.5, '-2': 1.9, 0: 5 });
  });

  test('of what holds no wet wood, 45% and more, costs four bits more', () => {
    // One byte holds up to 25.5, 10 bits up to 102.3 or 10.23.
    expect(costs(number(4), [0.1])).toMatchObject({ '-1': 4, '-2': 4.4, 0: 3.5 });
    expect(costs(bits, [0.1])).toMatchObject({ '-1': 0, '-2': 4.4 });
    expect(costs(number(4), [0.1], 'ohm')).toMatchObject({ '-1': 0 });
  });

  test('of a decimal or a text is seldom other than one', () => {
    const rare = { '-1': 2, '-2': 2, '-3': 2, 0: -2, 1: 2, 2: 2 };
    expect(costs(number(20), [0.1])).toEqual(rare);
    expect(costs(text, [0.1])).toEqual(rare);
  });

  test('is an exponent, or a scale where the format takes none', () => {
    const hundredths = (layout: Layout) =>
      powersOf(layout, [0.1]).find(({ factor }) => factor === 0.01)?.layout;
    expect(hundredths(number(6))).toEqual({ ...number(6), exponent: -2 });
    expect(hundredths(bits)).toEqual({ ...bits, exponent: -2 });
    expect(hundredths(text)).toEqual({ ...text, exponent: -2 });
    expect(hundredths(number(20))).toEqual({ ...number(20), scale: 0.01 });
  });
});

describe('a step of something else', () => {
  /** Numbers stored for each board, and for how many ms. */
  type Found = (readonly [stored: number | null, ms: number])[];
  /** Scales and offsets beside powers of ten. */
  const scalesOf = (layout: Layout, ...boards: readonly (readonly [shown: number, Found])[]) => {
    const finds = boards.map(([, found]): StoredStretch => found.map(([stored, ms]) => ({ stored, ms })));
    const shown = boards.map(([value]) => typed(value));
    return scaledLayouts({ layout, cost: 0 }, finds, shown, 'pct').filter(({ fitted }) => fitted !== 0);
  };
  const still = (stored: number): Found => [[stored, 1000]];
  const quarter = expect.objectContaining({ factor: 0.25, plus: 0 });

  test('is found from two numbers that differ, of which it takes one', () => {
    expect(scalesOf(number(6), [15, still(60)], [25, still(100)])[0]).toMatchObject({
      layout: { ...number(6), scale: 0.25, offset: 0 },
      factor: 0.25,
      plus: 0,
      fitted: 1,
    });
  });

  test('with an offset, where it takes two', () => {
    expect(scalesOf(number(6), [20, still(60)], [30, still(100)], [50, still(180)])).toContainEqual(
      expect.objectContaining({
        layout: { ...number(6), scale: 0.25, offset: 5 },
        factor: 0.25,
        plus: 5,
        fitted: 2,
      }),
    );
  });

  test('costs more where it holds no wet wood', () => {
    const costOf = (format: number) => scalesOf(number(format), [6, still(60)], [10, still(100)])[0]!.cost;
    expect(costOf(4)).toBe(costOf(6) + 4);
    // A tenth of one byte and 19.5 is up to 45%.
    const costTo45 = (format: number) =>
      scalesOf(number(format), [25.5, still(60)], [29.5, still(100)]).find(({ plus }) => plus === 19.5)!.cost;
    expect(costTo45(4)).toBe(costTo45(6));
  });

  test('is for whole numbers of whole bytes', () => {
    for (const layout of [number(20), bits, text]) {
      expect(scalesOf(layout, [15, still(60)], [25, still(100)])).toEqual([]);
    }
  });

  test('is not found from one number, nor from two that are nearly the same', () => {
    expect(scalesOf(number(6), [15, still(60)])).toEqual([]);
    expect(scalesOf(number(6), [15, still(60)], [15.4, still(62)])).toEqual([]);
  });

  test('is not found where a board has no number', () => {
    expect(scalesOf(number(6), [15, [[null, 1000]]], [25, still(100)])).toEqual([]);
    expect(scalesOf(number(6), [15, still(60)], [25, [[null, 1000]]])).toEqual([]);
    expect(scalesOf(number(6), [15, []], [25, still(100)])).toEqual([]);
  });

  describe('goes by the number', () => {
    /** Of both boards, where `found` holds the number of each. */
    const by = (found: (stored: number) => Found) => scalesOf(number(6), [15, found(60)], [25, found(100)]);
    const [low, high] = [1, 9999];

    test('that rested in the middle of the time', () => {
      const away = [high, 500] as const;
      const found = by((stored) => [
        ...[away, away, away, away],
        ...[[stored, 100] as const, [stored, 100] as const, [stored, 100] as const],
        ...[away, away, away],
      ]);
      expect(found).toContainEqual(quarter);
    });

    test('that was there for longest, in one time or several', () => {
      const passing = (from: number): Found =>
        Array.from({ length: 5 }, (_, at) => [high + from + at, 400] as const);
      const inOne = by((stored) => [
        ...passing(0),
        [null, 5000],
        ...passing(5),
        [stored, 500],
        ...passing(10),
      ]);
      expect(inOne).toContainEqual(quarter);
      const inTwo = by((stored) => [
        [stored, 300],
        ...passing(0),
        ...passing(5),
        [stored, 300],
        ...passing(10),
      ]);
      expect(inTwo).toContainEqual(quarter);
    });

    test('that is in the middle of all', () => {
      const found = by((stored) => [
        ...[null, null, null].map((each) => [each, 100] as const),
        ...[low, low, low].map((each) => [each, 100] as const),
        ...[high, high, high, high].map((each) => [each, 900] as const),
        [low, 100],
        [stored, 100],
        [stored, 100],
      ]);
      expect(found).toContainEqual(quarter);
    });

    test('and by none that it never comes to', () => {
      expect(by(() => [[high, 1000]])).not.toContainEqual(quarter);
    });
  });

  describe('is found though the last bit flickered', () => {
    test('by one: 53 came, and 54 was on the display', () => {
      expect(scalesOf(number(6), [13.5, still(53)], [25, still(100)])).toContainEqual(quarter);
    });

    test('not by three', () => {
      expect(scalesOf(number(6), [13.5, still(51)], [25, still(100)])).not.toContainEqual(quarter);
    });

    test('by as much of the range as the first and the last board span', () => {
      const found = scalesOf(number(6), [13.5, still(53)], [13.5, still(54)], [25, still(100)]);
      expect(found).toContainEqual(quarter);
    });
  });
});
