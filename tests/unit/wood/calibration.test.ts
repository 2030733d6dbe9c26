import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fitCalibration,
  type OvenDryCheck,
  onBasisScalePct,
} from '../../../shared-core/wood/moisture/calibration.ts';
import { correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../shared-core/words/message.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { worked } from '../worked.ts';

const fitOf = (checks: readonly OvenDryCheck[]) => worked(fitCalibration(checks));

const check = (ovenDryMcPct: number, readingPct: number, more: Partial<OvenDryCheck> = {}): OvenDryCheck => ({
  ovenDryMcPct,
  readingPct,
  publishedMcPct: readingPct,
  readings: 1,
  ...more,
});

describe('fitting the reading on the oven-dry MC', () => {
  // Invented pieces; the expected values are NumPy's: polyfit(x, y, 1, w=sqrt(readings)), and the same with each
  // piece left out, its MC then found as (reading - b) / a.
  const pieces = [
    check(7, 7.6, { readings: 2 }),
    check(9, 9.3, { readings: 4 }),
    check(11, 11.9, { readings: 2 }),
    check(14, 14.4, { readings: 1 }),
    check(18, 19.1, { readings: 3 }),
  ];
  const fit = fitOf(pieces);

  test('finds the weighted least squares line', () => {
    expect(fit.model).toBe('line');
    expect(fit.line.a).toBeCloseTo(1.0595637583892616, 10);
    expect(fit.line.b).toBeCloseTo(-0.03657718120805237, 10);
  });

  test('predicts each piece from the others', () => {
    const expected = [0.33227567, -0.36674892, 0.3197026, -0.41959777, 0.43910806];
    fit.leaveOneOutPct.forEach((error, i) => {
      expect(error).toBeCloseTo(expected[i]!, 7);
    });
    expect(fit.line.standardErrorPct).toBeCloseTo(0.3784177113447379, 9);
  });

  test('is worth using, and says what it gains', () => {
    // Published (here: nothing done): off by 0.6, 0.3, 0.9, 0.4, 1.1: root mean square 0.725.
    expect(fit.publishedErrorPct).toBeCloseTo(Math.sqrt((0.36 + 0.09 + 0.81 + 0.16 + 1.21) / 5), 10);
    expect(fit.worthUsing).toBe(true);
    expect(inEnglish(fit.why)).toBe(
      'With your checks a new piece is off by about 0.4 points, without them by 0.7 points.',
    );
  });

  test('its line makes of a reading the MC that it was fitted to', () => {
    const species = builtInSpecies.find(({ id }) => id === 'cherry-black')!;
    const reading = { value: 13, unit: 'pct', woodTempC: 8, species, scale: { kind: 'unknown' } } as const;
    const shown = onBasisScalePct(reading)!;
    const { mcPct } = correctReading({ ...reading, ownCalibration: fit.line });
    expect(mcPct!).toBeCloseTo((shown - fit.line.b) / fit.line.a, 10);
    expect(onBasisScalePct({ ...reading, value: Number.NaN })).toBeNull();
  });
});

describe('what is worth using', () => {
  test('four pieces tell too little, however well they agree', () => {
    const fit = fitOf([check(8, 9), check(10, 11), check(12, 13), check(14, 15)]);
    expect(fit.worthUsing).toBe(false);
    expect(fit.why).toEqual(message('own-fit.too-few', { pieces: 4, least: 5 }));
    expectWhole([fit.why]);
  });

  test('checks that scatter more than the published correction errs are not', () => {
    const right = [8, 9, 10, 11, 12, 13];
    const scattered = [9.5, 7.5, 11.5, 9.5, 13.5, 11.5];
    const fit = fitOf(right.map((mc, i) => check(mc, scattered[i]!, { publishedMcPct: mc + 0.5 })));
    expect(fit.worthUsing).toBe(false);
    expect(fit.why.code).toBe('own-fit.no-better');
    expectWhole([fit.why]);
  });

  test('where nothing is published there is nothing to beat', () => {
    const fit = fitOf([8, 10, 12, 14, 16].map((mc) => check(mc, 1.1 * mc, { publishedMcPct: null })));
    expect(fit).toMatchObject({ worthUsing: true, publishedErrorPct: null });
    expectWhole([fit.why]);
  });

  test('pieces of much the same MC give an offset, not a slope', () => {
    const fit = fitOf([
      check(11, 12.1),
      check(11.5, 12.4),
      check(12, 13.2),
      check(12.2, 13.1),
      check(11.8, 12.9),
    ]);
    expect(fit.model).toBe('offset');
    expect(fit.line.a).toBe(1);
    expect(fit.line.b).toBeCloseTo(1.04, 10);
  });

  test('one piece far from the others tells no slope: without it nothing would', () => {
    const modelOf = (...mcs: number[]) => fitOf(mcs.map((mc) => check(mc, 1.3 * mc))).model;
    expect(modelOf(11, 11.5, 12, 12.2, 20)).toBe('offset');
    expect(modelOf(5, 12, 12.2, 12.5, 13)).toBe('offset');
    expect(modelOf(9, 11.5, 12, 12.2, 20)).toBe('line');
  });

  test('a slope that predicts no better than an offset is not fitted', () => {
    const scatter = [0.5, -0.5, 0.5, -0.5, 0.5];
    const fit = fitOf([8, 10, 12, 14, 16].map((mc, at) => check(mc, mc + 1 + scatter[at]!)));
    expect(fit.model).toBe('offset');
  });

  test('a slope that no species has is not fitted', () => {
    const modelOf = (slope: number) =>
      fitOf([6, 9, 12, 15, 18].map((mc) => check(mc, 40 + slope * (mc - 12)))).model;
    expect([0.1, 0.6, 1.9, 2.1].map(modelOf)).toEqual(['offset', 'line', 'line', 'offset']);
  });
});

describe('for any checks', () => {
  test('pieces on a line give that line back, with no error', () => {
    const mcs = fc.uniqueArray(fc.integer({ min: 6, max: 25 }), { minLength: 5, maxLength: 12 });
    fc.assert(
      fc.property(
        mcs,
        fc.double({ min: 0.6, max: 1.8, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (xs, a, b) => {
          fc.pre(Math.max(...xs) - Math.min(...xs) >= 8 && Math.abs(a - 1) > 0.01);
          const sorted = [...xs].sort((p, q) => p - q);
          fc.pre(sorted.at(-2)! - sorted[0]! >= 3 && sorted.at(-1)! - sorted[1]! >= 3);
          const { line } = fitOf(xs.map((mc) => check(mc, a * mc + b)));
          expect(line.a).toBeCloseTo(a, 8);
          expect(line.b).toBeCloseTo(b, 6);
          expect(line.standardErrorPct).toBeCloseTo(0, 6);
        },
      ),
    );
  });

  test('a piece read twice weighs as two pieces read once, in the fit', () => {
    const once = [check(8, 9), check(12, 12.5), check(12, 12.5), check(16, 17.5), check(20, 21)];
    const twice = [check(8, 9), check(12, 12.5, { readings: 2 }), check(16, 17.5), check(20, 21)];
    expect(fitOf(twice).line.b).toBeCloseTo(fitOf(once).line.b, 10);
  });

  test('a moisture content that no meter can tell is a problem to check', () => {
    const problem = message('own-fit.impossible', { mcPct: 1000 });
    expect(fitCalibration([check(8, 9), check(1000, 13), check(14, 15)])).toEqual({ ok: false, problem });
    expectWhole([problem]);
  });

  test('too few, or not moisture contents, are refused', () => {
    expect(() => fitOf([check(8, 9), check(12, 13)])).toThrow(/three/);
    expect(() => fitOf([check(8, 9), check(12, 13), check(Number.NaN, 14)])).toThrow(RangeError);
    for (const none of [check(8, 0), check(0, 9)])
      expect(() => fitOf([none, check(12, 13), check(14, 15)])).toThrow(/both above 0 %/);
    expect(() => fitOf([check(8, 9), check(12, 13), check(14, 15, { readings: 0 })])).toThrow(RangeError);
  });
});
