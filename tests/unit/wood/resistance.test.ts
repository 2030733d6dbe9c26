import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  curveRangePct,
  log10OhmsAt,
  mcAtLog10Ohms,
  type ResistanceCurve,
  resistanceCurveSchema,
} from '../../../shared-core/wood/moisture/resistance.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';

const anyCurve = fc.constantFrom(...resistanceCurves.values());
const mc = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a resistance curve', () => {
  test('falls as moisture rises, on the table and beyond its ends', () => {
    fc.assert(
      fc.property(anyCurve, mc(1, 60), mc(0.01, 20), (curve, mcPct, more) => {
        expect(log10OhmsAt(curve, mcPct + more).log10Ohms).toBeLessThan(log10OhmsAt(curve, mcPct).log10Ohms);
      }),
    );
  });

  test('never leaves the span of the two published points beside it', () => {
    fc.assert(
      fc.property(anyCurve, fc.nat(), fc.double({ min: 0, max: 1, noNaN: true }), (curve, pick, part) => {
        const points = curve.points.filter(([mcPct]) => mcPct <= curveRangePct(curve).maxPct);
        const i = pick % (points.length - 1);
        const [[fromPct, fromMegohm], [toPct, toMegohm]] = [points[i]!, points[i + 1]!];
        const { log10Ohms } = log10OhmsAt(curve, fromPct + part * (toPct - fromPct));
        expect(log10Ohms).toBeLessThanOrEqual(Math.log10(fromMegohm) + 6 + 1e-12);
        expect(log10Ohms).toBeGreaterThanOrEqual(Math.log10(toMegohm) + 6 - 1e-12);
      }),
    );
  });

  test('has no corner: the slope is the same from both sides of a point', () => {
    for (const curve of resistanceCurves.values()) {
      for (const [mcPct] of curve.points.filter(([at]) => at <= curveRangePct(curve).maxPct)) {
        const at = (offset: number) => log10OhmsAt(curve, mcPct + offset).log10Ohms;
        const step = 1e-5;
        expect((at(step) - at(0)) / step).toBeCloseTo((at(0) - at(-step)) / step, 3);
      }
    }
  });

  test('is inverted to 1e-6 % MC, from below its dry end to above its wet end', () => {
    fc.assert(
      fc.property(anyCurve, mc(2, 60), (curve, mcPct) => {
        const { log10Ohms, outsideCurve } = log10OhmsAt(curve, mcPct);
        const back = mcAtLog10Ohms(curve, log10Ohms);
        expect(Math.abs(back.mcPct - mcPct)).toBeLessThan(1e-6);
        const { minPct, maxPct } = curveRangePct(curve);
        const atAnEnd = Math.min(Math.abs(mcPct - minPct), Math.abs(mcPct - maxPct)) < 1e-5;
        expect(back.outsideCurve || atAnEnd).toBe(outsideCurve || atAnEnd);
      }),
    );
  });

  test('says when it is extended', () => {
    const curve = resistanceCurves.get('douglas-fir-coast')!;
    expect(log10OhmsAt(curve, 6.9).outsideCurve).toBe(true);
    expect(log10OhmsAt(curve, 7).outsideCurve).toBe(false);
    expect(log10OhmsAt(curve, 25).outsideCurve).toBe(false);
    expect(log10OhmsAt(curve, 25.1).outsideCurve).toBe(true);
    // Megohms of 7 % and 25 % in the table, and just beyond.
    expect(mcAtLog10Ohms(curve, Math.log10(22400e6)).outsideCurve).toBe(false);
    expect(mcAtLog10Ohms(curve, Math.log10(23000e6)).outsideCurve).toBe(true);
    expect(mcAtLog10Ohms(curve, Math.log10(0.45e6)).outsideCurve).toBe(true);
  });

  test('agrees with the general PCHIP scheme on an example', () => {
    // SciPy 1.17.1: PchipInterpolator([0, 1, 3, 4], [9, 7, 2, 1])(2). Between inner points the end rule plays no part.
    const curve: ResistanceCurve = {
      name: 'example',
      source: 'invented',
      tempC: 20,
      points: [
        [0, 1e3],
        [1, 1e1],
        [3, 1e-4],
        [4, 1e-5],
      ],
    };
    expect(log10OhmsAt(curve, 2).log10Ohms).toBeCloseTo(4.292128603104213, 12);
  });

  test.each([0, -5, Number.NaN, Number.POSITIVE_INFINITY])('refuses %f ohms', (ohms) => {
    expect(() => mcAtLog10Ohms(resistanceCurves.get('birch')!, Math.log10(ohms))).toThrow(RangeError);
  });

  test('refuses a curve that does not fall', () => {
    const flat: ResistanceCurve = {
      name: 'flat',
      source: 'invented',
      tempC: 20,
      points: [
        [7, 3],
        [8, 3],
        [9, 3],
      ],
    };
    expect(() => log10OhmsAt(flat, 8)).toThrow(/does not fall/);
  });

  test('says of what is no number that it is none', () => {
    const birch = resistanceCurves.get('birch')!;
    expect(() => log10OhmsAt(birch, Number.NaN)).toThrow('Moisture content must be a number, not NaN.');
    expect(() => mcAtLog10Ohms(birch, Number.NaN)).toThrow('Resistance must be above 0 Ω.');
  });

  // Arithmetic: one decade for each 2 % MC, and a fall below 0.06 decades tells nothing more.
  test('ends where it no longer tells moisture content, and three points that do are enough', () => {
    const points: ResistanceCurve['points'] = [
      [8, 1000],
      [10, 100],
      [12, 10],
      [20, 9],
    ];
    const curve: ResistanceCurve = { name: 'plateau', source: 'invented', tempC: 20, points };
    expect(curveRangePct(curve)).toEqual({ minPct: 8, maxPct: 12 });
    expect(log10OhmsAt(curve, 11).log10Ohms).toBeCloseTo(7.5, 9);
    expect(log10OhmsAt(curve, 14).log10Ohms).toBeCloseTo(6, 9);
    expect(mcAtLog10Ohms(curve, 10).mcPct).toBeCloseTo(6, 5);
  });

  test('is taken only with points that rise, at temperatures that wood is read at', () => {
    const curve = {
      name: ' oak ',
      source: '',
      tempC: -20,
      points: [
        [7, 3],
        [8, 2],
        [9, 1],
      ],
    };
    expect(resistanceCurveSchema.parse(curve).name).toBe('oak');
    const refused = (more: object) =>
      resistanceCurveSchema.safeParse({ ...curve, ...more }).success === false;
    expect(refused({ tempC: -20.1 })).toBe(true);
    for (const mc of [
      [7, 8, 8],
      [7, 9, 8],
    ])
      expect(refused({ points: mc.map((pct, at) => [pct, 3 - at]) }), String(mc)).toBe(true);
  });
});
