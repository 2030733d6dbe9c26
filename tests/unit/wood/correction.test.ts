import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { correctReading, type ReadingToCorrect } from '../../../shared-core/wood/moisture/correction.ts';
import { log10OhmsAt, mcAtOhms } from '../../../shared-core/wood/moisture/resistance.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { pfaffGarrahanPct } from '../../../shared-core/wood/moisture/temperature.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';

const speciesOf = (id: string): Species => builtInSpecies.find((species) => species.id === id)!;
const oak = speciesOf('oak-northern-red');
const cherry = speciesOf('cherry-black');
const basis = { curveId: 'douglas-fir-coast', tempC: 26.7 };
const douglasFir = resistanceCurves.get('douglas-fir-coast')!;

const correct = (changes: Partial<ReadingToCorrect>) =>
  correctReading({ value: 12, unit: 'pct', woodTempC: 26.7, species: oak, basis, ...changes });

describe('the method follows from what is known', () => {
  test('ohms of a species with a curve: temperature, then the curve', () => {
    // 125 megohm is red oak of 12 % at 80 °F (James 1988, Table 1, from memory).
    const { mcPct, applied, warnings } = correct({ value: 125e6, unit: 'ohm', basis: null });
    expect(mcPct).toBeCloseTo(12, 6);
    expect(applied).toEqual(['temperature', 'species-curve']);
    expect(warnings).toEqual([]);
  });

  test('% of a species with a curve: temperature, back to ohms on the basis, then the curve', () => {
    expect(correct({}).applied).toEqual(['temperature', 'basis-curve', 'species-curve']);
  });

  test('% of a species with linear coefficients only: temperature, then MC = (M - b) / a', () => {
    const linear = { ...cherry, linear: { a: 0.9, b: 0.6 } };
    const { mcPct, applied, warnings } = correct({ species: linear });
    expect(mcPct).toBeCloseTo((12 - 0.6) / 0.9, 10);
    expect(applied).toEqual(['temperature', 'species-linear']);
    expect(warnings).toEqual([]);
  });

  test('% of a species of which nothing is published: temperature only, and it says so', () => {
    const { mcPct, applied, warnings } = correct({ species: cherry, woodTempC: 5 });
    expect(mcPct).toBeGreaterThan(12);
    expect(applied).toEqual(['temperature']);
    expect(warnings).toEqual(['no-species-correction']);
  });

  test('an unknown basis: exactly the published formula of Pfaff and Garrahan, where there is no curve', () => {
    const { mcPct } = correct({ species: cherry, woodTempC: 5, basis: null });
    // The formula's own neutral temperature is rounded to 0.1 °C: that much apart.
    expect(mcPct).toBeCloseTo(pfaffGarrahanPct(12, 5), 2);
  });

  test('ohms of a species without a curve: read on the basis curve, and it says so', () => {
    const { mcPct, applied, warnings } = correct({ value: 120e6, unit: 'ohm', species: cherry });
    // 120 megohm is Douglas-fir of 12 % (James 1988, Table 1, from memory).
    expect(mcPct).toBeCloseTo(12, 6);
    expect(applied).toEqual(['temperature', 'basis-curve']);
    expect(warnings).toEqual(['no-species-correction']);
  });

  test("the user's own oven-dry checks come before everything published", () => {
    const ownCalibration = { a: 1.1, b: -0.5, standardErrorPct: 0.3 };
    const { mcPct, applied, standardUncertaintyPct } = correct({ ownCalibration });
    expect(mcPct).toBeCloseTo((12 + 0.5) / 1.1, 10);
    expect(applied).toEqual(['temperature', 'own-calibration']);
    expect(standardUncertaintyPct).toBeCloseTo(0.3, 10);
  });

  test('temperature unknown: not corrected for it, said, and less sure', () => {
    const known = correct({ species: cherry });
    const unknown = correct({ species: cherry, woodTempC: null });
    expect(unknown.mcPct).toBe(12);
    expect(unknown.applied).toEqual([]);
    expect(unknown.warnings).toContain('temperature-unknown');
    expect(unknown.standardUncertaintyPct!).toBeGreaterThan(known.standardUncertaintyPct!);
  });
});

describe('marked, never clamped', () => {
  test('below 6 %', () => {
    const { mcPct, warnings } = correct({ value: 4, species: cherry });
    expect(mcPct).toBeCloseTo(4, 10);
    expect(warnings).toContain('below-meter-range');
  });

  test('above fiber saturation', () => {
    const { mcPct, warnings, standardUncertaintyPct } = correct({ value: 60, species: cherry });
    expect(mcPct).toBeCloseTo(60, 10);
    expect(warnings).toContain('above-fiber-saturation');
    expect(standardUncertaintyPct!).toBeGreaterThan(10);
  });

  test('outside the curve, of the basis or of the species', () => {
    expect(correct({ value: 28 }).warnings).toContain('outside-curve');
    expect(correct({ value: 25, species: speciesOf('elm-american') }).warnings).toContain('outside-curve');
    expect(correct({ value: 24 }).warnings).not.toContain('outside-curve');
  });

  test('frozen wood is computed and marked', () => {
    const { mcPct, warnings } = correct({ woodTempC: -5 });
    expect(mcPct).toBeGreaterThan(12);
    expect(warnings).toEqual(['frozen']);
    expect(correct({ woodTempC: 0 }).warnings).toEqual(['frozen']);
    expect(correct({ woodTempC: 0.1 }).warnings).toEqual([]);
  });

  test('wood hotter than the published range is corrected on, up to 80 °C, and marked', () => {
    expect(correct({ woodTempC: 70 }).warnings).toContain('temperature-out-of-range');
    expect(correct({ woodTempC: 70 }).applied).toContain('temperature');
    const absurd = correct({ woodTempC: 300 });
    expect(absurd.warnings).toContain('temperature-out-of-range');
    expect(absurd.applied).not.toContain('temperature');
    expect(absurd.mcPct).toBeCloseTo(correct({ woodTempC: null }).mcPct!, 10);
  });
});

describe('refused, with no value', () => {
  const refused = { mcPct: null, applied: [], standardUncertaintyPct: null, warnings: ['not-a-reading'] };
  // Northern red oak holds at most 114 % (eq. 4-3 with 0.56).
  test.each([Number.NaN, Number.POSITIVE_INFINITY, -0.1, -12, 115, 1260])('a shown %f %%', (value) => {
    expect(correct({ value })).toEqual(refused);
  });
  test.each([Number.NaN, 0, -1e6, 12, 1e17, Number.POSITIVE_INFINITY])('%f ohms', (value) => {
    expect(correct({ value, unit: 'ohm' })).toEqual(refused);
  });
  test('a value that its correction brings below zero', () => {
    expect(correct({ value: 0.2, species: cherry, woodTempC: 45 })).toEqual(refused);
  });
  test('a basis that names no curve is a fault of the set-up, not of the reading', () => {
    expect(() => correct({ basis: { curveId: 'no-such', tempC: 20 } })).toThrow(/not known: "no-such"/);
  });
});

describe('for every species, meter and temperature', () => {
  const species = fc.constantFrom(...builtInSpecies);
  const woodTempC = fc.double({ min: 1, max: 50, noNaN: true });
  const shown = fc.double({ min: 7, max: 24, noNaN: true });
  const more = fc.double({ min: 0.05, max: 5, noNaN: true });
  const log10Ohms = fc.double({ min: 5.8, max: 10, noNaN: true });
  const anyBasis = fc.record({
    curveId: fc.constantFrom(...resistanceCurves.keys()),
    tempC: fc.double({ min: 15, max: 30, noNaN: true }),
  });

  test('more shown is more moisture', () => {
    fc.assert(
      fc.property(species, anyBasis, woodTempC, shown, more, (aSpecies, aBasis, tempC, value, step) => {
        const at = (v: number) =>
          correctReading({ value: v, unit: 'pct', woodTempC: tempC, species: aSpecies, basis: aBasis });
        const [low, high] = [at(value), at(value + step)];
        fc.pre(low.mcPct !== null && high.mcPct !== null);
        expect(high.mcPct!).toBeGreaterThan(low.mcPct!);
      }),
    );
  });

  test('more resistance is less moisture', () => {
    fc.assert(
      fc.property(species, woodTempC, log10Ohms, more, (aSpecies, tempC, decades, step) => {
        const at = (d: number) =>
          correctReading({ value: 10 ** d, unit: 'ohm', woodTempC: tempC, species: aSpecies, basis: null })
            .mcPct;
        const [wet, dry] = [at(decades), at(decades + step / 5)];
        fc.pre(wet !== null && dry !== null);
        expect(dry!).toBeLessThan(wet!);
      }),
    );
  });

  test('the same reading in colder wood is more moisture', () => {
    fc.assert(
      fc.property(
        species,
        fc.constantFrom('pct', 'ohm'),
        woodTempC,
        shown,
        more,
        (aSpecies, unit, tempC, value, colder) => {
          fc.pre(tempC - colder > 0);
          const raw = unit === 'pct' ? value : 10 ** log10OhmsAt(douglasFir, value).log10Ohms;
          const at = (t: number) =>
            correctReading({ value: raw, unit, woodTempC: t, species: aSpecies, basis }).mcPct;
          const [warm, cold] = [at(tempC), at(tempC - colder)];
          fc.pre(warm !== null && cold !== null);
          expect(cold!).toBeGreaterThan(warm!);
        },
      ),
    );
  });

  test('a meter made for this very species at this very temperature is right as it is', () => {
    fc.assert(
      fc.property(anyBasis, shown, (aBasis, value) => {
        const own = builtInSpecies.find(({ curveId }) => curveId === aBasis.curveId)!;
        const { mcPct } = correctReading({
          value,
          unit: 'pct',
          woodTempC: aBasis.tempC,
          species: own,
          basis: aBasis,
        });
        expect(mcPct!).toBeCloseTo(value, 6);
      }),
    );
  });

  test('% on a basis and the ohms behind that % are the same reading, at the temperature of the curves', () => {
    const withCurve = fc.constantFrom(...builtInSpecies.filter(({ curveId }) => curveId !== null));
    fc.assert(
      fc.property(withCurve, shown, (aSpecies, value) => {
        const ohms = 10 ** log10OhmsAt(douglasFir, value).log10Ohms;
        const byPct = correctReading({ value, unit: 'pct', woodTempC: 26.7, species: aSpecies, basis });
        const byOhms = correctReading({
          value: ohms,
          unit: 'ohm',
          woodTempC: 26.7,
          species: aSpecies,
          basis: null,
        });
        expect(byPct.mcPct!).toBeCloseTo(byOhms.mcPct!, 6);
        expect(byOhms.mcPct!).toBeCloseTo(mcAtOhms(resistanceCurves.get(aSpecies.curveId!)!, ohms).mcPct, 6);
      }),
    );
  });

  test('a value comes with an uncertainty of at least 0.5 % MC, and no value with none', () => {
    const anyValue = fc.oneof(fc.double(), fc.double({ min: 0, max: 200 }), fc.double({ min: 1, max: 1e12 }));
    fc.assert(
      fc.property(
        species,
        fc.constantFrom('pct', 'ohm'),
        anyValue,
        fc.option(fc.double()),
        (aSpecies, unit, value, tempC) => {
          const { mcPct, standardUncertaintyPct, warnings } = correctReading({
            value,
            unit,
            woodTempC: tempC,
            species: aSpecies,
            basis: null,
          });
          if (mcPct === null) {
            expect(standardUncertaintyPct).toBeNull();
            expect(warnings).toEqual(['not-a-reading']);
          } else {
            expect(Number.isFinite(mcPct)).toBe(true);
            expect(mcPct).toBeGreaterThanOrEqual(0);
            expect(standardUncertaintyPct!).toBeGreaterThanOrEqual(0.5);
            expect(standardUncertaintyPct!).toBeLessThan(1000);
          }
        },
      ),
      { numRuns: 500 },
    );
  });
});

test('the spread assumed where no species is corrected for is that of the published curves', () => {
  // Root mean square of what the curves make of one resistance, as a share of the MC on Douglas-fir: about 0.07.
  for (const mcPct of [8, 10, 12, 15, 18, 20]) {
    const ohms = 10 ** log10OhmsAt(douglasFir, mcPct).log10Ohms;
    const squares = [...resistanceCurves.values()].map((curve) => (mcAtOhms(curve, ohms).mcPct - mcPct) ** 2);
    const rms = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
    expect(rms / mcPct).toBeGreaterThan(0.06);
    expect(rms / mcPct).toBeLessThan(0.085);
  }
});
