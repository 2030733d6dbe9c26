import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Z_90 } from '../../../shared-core/wood/maths/gaussian.ts';
import { correctedByEach, correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import { log10OhmsAt } from '../../../shared-core/wood/moisture/resistance.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import {
  atWoodTempPct,
  byEachCorrection,
  disagreementPct,
  james,
  pfaffGarrahan,
  vtt,
} from '../../../shared-core/wood/moisture/temperature.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';

const SCALE_C = 21.1;
const curve = resistanceCurves.get('douglas-fir-coast')!;

describe.each([
  ['Pfaff and Garrahan', pfaffGarrahan],
  ['James', james],
  ['VTT 420', vtt],
])('the correction of %s', (_, published) => {
  const shown = fc.double({ min: 6, max: 28, noNaN: true });
  const woodTempC = fc.double({ min: -20, max: 60, noNaN: true });
  const scaleTempC = fc.double({ min: 15, max: 30, noNaN: true });
  const more = fc.double({ min: 0.1, max: 10, noNaN: true });

  test('gives more in colder wood, and more for more shown', () => {
    fc.assert(
      fc.property(shown, woodTempC, scaleTempC, more, (shownPct, tempC, scaleC, by) => {
        const mcPct = atWoodTempPct(published, shownPct, tempC, scaleC);
        expect(atWoodTempPct(published, shownPct + by, tempC, scaleC)).toBeGreaterThan(mcPct);
        expect(atWoodTempPct(published, shownPct, tempC - by, scaleC)).toBeGreaterThan(mcPct);
      }),
    );
  });

  test('is smooth: a hundredth of a degree, or of a point, never jumps', () => {
    fc.assert(
      fc.property(shown, woodTempC, (shownPct, tempC) => {
        const mcPct = atWoodTempPct(published, shownPct, tempC, SCALE_C);
        expect(Math.abs(atWoodTempPct(published, shownPct, tempC + 0.01, SCALE_C) - mcPct)).toBeLessThan(
          0.01,
        );
        expect(Math.abs(atWoodTempPct(published, shownPct + 0.01, tempC, SCALE_C) - mcPct)).toBeLessThan(
          0.02,
        );
      }),
    );
  });

  test('leaves a value as it is at the temperature of its scale, and there and back is nothing', () => {
    fc.assert(
      fc.property(shown, woodTempC, scaleTempC, (shownPct, tempC, scaleC) => {
        expect(atWoodTempPct(published, shownPct, scaleC, scaleC)).toBeCloseTo(shownPct, 10);
        const there = atWoodTempPct(published, shownPct, tempC, scaleC);
        expect(atWoodTempPct(published, there, scaleC, tempC)).toBeCloseTo(shownPct, 8);
      }),
    );
  });

  test('is still falling with temperature from -40 to 80 °C, for anything from 0 to 100 %', () => {
    const anyTempC = fc.double({ min: -40, max: 78, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), anyTempC, (shownPct, tempC) => {
        const [colder, warmer] = [tempC, tempC + 2].map((t) =>
          atWoodTempPct(published, shownPct, t, SCALE_C),
        );
        expect(warmer!).toBeLessThan(colder!);
        expect(colder!).toBeLessThan(2 * shownPct + 10);
      }),
    );
  });

  test.each([-41, 81, Number.NaN])('is refused at %f °C', (tempC) => {
    expect(() => atWoodTempPct(published, 12, tempC, SCALE_C)).toThrow(RangeError);
    expect(() => atWoodTempPct(published, 12, SCALE_C, tempC)).toThrow(RangeError);
  });
});

describe('where the published corrections disagree', () => {
  test('the disagreement is how far the other two lie from the one used', () => {
    // 16 % at 0 °C: 18.60, 20.02 and 18.64, by hand from the formulas.
    const by = byEachCorrection(16, 0, SCALE_C);
    expect(Object.values(by).map((pct) => Number(pct.toFixed(2)))).toEqual([18.6, 20.02, 18.64]);
    const [fromFormula, fromFigure] = [1.42 ** 2 + 0.04 ** 2, 1.42 ** 2 + 1.38 ** 2];
    expect(disagreementPct(pfaffGarrahan, 16, 0, SCALE_C)).toBeCloseTo(Math.sqrt(fromFormula / 2), 2);
    expect(disagreementPct(james, 16, 0, SCALE_C)).toBeCloseTo(Math.sqrt(fromFigure / 2), 2);
  });

  test('there is none at the temperature of the scale, and more the colder the wood', () => {
    const at = (woodTempC: number) => disagreementPct(pfaffGarrahan, 14, woodTempC, SCALE_C);
    expect(at(SCALE_C)).toBeCloseTo(0, 10);
    expect(at(10)).toBeGreaterThan(0.2);
    expect(at(0)).toBeGreaterThan(at(10) + 0.2);
    expect(at(-10)).toBeGreaterThan(at(0) + 0.3);
    expect(at(45)).toBeGreaterThan(0.3);
  });

  const walnut = builtInSpecies.find(({ id }) => id === 'walnut-black')!;
  const uncertainty = (woodTempC: number, compensatesTemp: boolean | null) =>
    correctReading({
      value: 14,
      unit: 'pct',
      woodTempC,
      species: walnut,
      scale: { kind: 'usual' },
      compensatesTemp,
    }).standardUncertaintyPct!;

  test('it is part of the uncertainty of a corrected value, also where the meter corrects itself', () => {
    for (const compensatesTemp of [true, false]) {
      const [cold, mild] = [uncertainty(0, compensatesTemp), uncertainty(22, compensatesTemp)];
      expect(cold ** 2 - mild ** 2).toBeGreaterThan(
        0.7 * disagreementPct(pfaffGarrahan, 14, 0, SCALE_C) ** 2,
      );
    }
  });

  test('not to know whether the meter corrects itself is less sure than to know', () => {
    expect(uncertainty(0, null)).toBeGreaterThan(uncertainty(0, false) + 0.1);
    expect(uncertainty(22.7, null)).toBeCloseTo(uncertainty(22.7, false), 6);
  });
});

// 24 °F: 12.5 % became 15.2 % by one formula, and 60 MΩ, which is 12.4 % on the curve, 17.5 % by another.
test('at 24 °F the uncertainty of a value covers what each published correction makes of it', () => {
  const species = builtInSpecies.find(({ id }) => id === 'douglas-fir-coast')!;
  const scale = { kind: 'species', speciesId: species.id, curveId: species.curveId, tempC: SCALE_C } as const;
  for (let shownPct = 6; shownPct <= 18; shownPct += 1) {
    const typed = { value: shownPct, unit: 'pct', woodTempC: -4.4, species, scale } as const;
    const inOhms = { ...typed, value: 10 ** log10OhmsAt(curve, shownPct).log10Ohms, unit: 'ohm' } as const;
    for (const input of [typed, inOhms]) {
      const { mcPct, standardUncertaintyPct } = correctReading(input);
      const byEach = correctedByEach(input);
      expect(byEach).toHaveLength(3);
      expect(byEach.some((pct) => Math.abs(pct - mcPct!) < 1e-9)).toBe(true);
      for (const pct of byEach) expect(Math.abs(pct - mcPct!)).toBeLessThan(Z_90 * standardUncertaintyPct!);
    }
  }
});

test('ohms and % of one piece come out alike within what the corrections disagree about', () => {
  const species = builtInSpecies.find(({ id }) => id === 'douglas-fir-coast')!;
  for (let woodTempC = -20; woodTempC <= 60; woodTempC += 5) {
    // 33 MΩ is 14 % in Douglas-fir at 80 °F (James 1988, Table 1, from memory).
    const byOhms = correctReading({ value: 33e6, unit: 'ohm', woodTempC, species, scale: { kind: 'ohms' } });
    const scale = { kind: 'species', speciesId: species.id, curveId: species.curveId, tempC: 26.7 } as const;
    const byPct = correctReading({ value: 14, unit: 'pct', woodTempC, species, scale });
    expect(Math.abs(byOhms.mcPct! - byPct.mcPct!)).toBeLessThan(
      2 * disagreementPct(pfaffGarrahan, 14, woodTempC, 26.7) + 1e-6,
    );
  }
});
