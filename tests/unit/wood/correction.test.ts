import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Corrected,
  correctedSchema,
  type MeterScale,
  meterScaleSchema,
  readingUnitSchema,
} from '../../../shared-core/wood/moisture/corrected.ts';
import { correctReading, type ReadingToCorrect } from '../../../shared-core/wood/moisture/correction.ts';
import { log10OhmsAt, mcAtLog10Ohms } from '../../../shared-core/wood/moisture/resistance.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { pfaffGarrahan } from '../../../shared-core/wood/moisture/temperature.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';

const speciesOf = (id: string): Species => builtInSpecies.find((species) => species.id === id)!;
const oak = speciesOf('oak-northern-red');
const cherry = speciesOf('cherry-black');
const scale: MeterScale = {
  kind: 'species',
  speciesId: null,
  curveId: 'douglas-fir-coast',
  tempC: 26.7,
};
const stepsOf = ({ steps }: Corrected) => steps.map(({ step }) => step);
const douglasFir = resistanceCurves.get('douglas-fir-coast')!;

const correct = (changes: Partial<ReadingToCorrect>): Corrected => {
  const reading: ReadingToCorrect = {
    value: 12,
    unit: 'pct',
    woodTempC: 26.7,
    species: oak,
    scale,
    ...changes,
  };
  expect(readingUnitSchema.parse(reading.unit)).toBe(reading.unit);
  expect(meterScaleSchema.parse(reading.scale)).toEqual(reading.scale);
  const made = correctReading(reading);
  expect(correctedSchema.parse(made)).toEqual(made);
  return made;
};

describe('the method follows from what is known', () => {
  test('ohms of a species with a curve: the curve, then temperature', () => {
    // 125 megohm is red oak of 12 % at 80 °F (James 1988, Table 1, from memory).
    const corrected = correct({ value: 125e6, unit: 'ohm', scale: { kind: 'ohms' } });
    expect(corrected.mcPct).toBeCloseTo(12, 6);
    expect(stepsOf(corrected)).toEqual(['species-curve', 'temperature']);
    expect(corrected.warnings).toEqual([]);
  });

  test('% of a species with a curve: temperature, back to ohms on the scale, then the curve', () => {
    expect(stepsOf(correct({}))).toEqual(['temperature', 'species-curve']);
  });

  test('% of a species with linear coefficients only: temperature, then MC = (M - b) / a', () => {
    const linear = { ...cherry, linear: { a: 0.9, b: 0.6 } };
    const corrected = correct({ species: linear, scale: { kind: 'usual' } });
    const [temperature] = corrected.steps;
    expect(corrected.mcPct).toBeCloseTo((temperature!.pct - 0.6) / 0.9, 10);
    expect(stepsOf(corrected)).toEqual(['temperature', 'species-linear']);
    expect(corrected.warnings).toEqual([]);
  });

  test('% of a species of which nothing is published: temperature only, and it says so', () => {
    const corrected = correct({ species: cherry, woodTempC: 5 });
    expect(corrected.mcPct).toBeGreaterThan(12);
    expect(stepsOf(corrected)).toEqual(['temperature']);
    expect(corrected.warnings).toEqual(['no-species-correction']);
  });

  test('the usual scale: exactly the published formula of Pfaff and Garrahan, where there is no curve', () => {
    const { mcPct } = correct({ species: cherry, woodTempC: 5, scale: { kind: 'usual' } });
    // The formula's own neutral temperature is rounded to 0.1 °C: that much apart.
    const { gain, offset } = pfaffGarrahan(5);
    expect(mcPct).toBeCloseTo(gain * 12 + offset, 2);
  });

  test('ohms of a species without a curve: read on the scale’s curve, and it says so', () => {
    const corrected = correct({ value: 120e6, unit: 'ohm', species: cherry });
    // 120 megohm is Douglas-fir of 12 % (James 1988, Table 1, from memory).
    expect(corrected.mcPct).toBeCloseTo(12, 6);
    expect(stepsOf(corrected)).toEqual(['scale-curve', 'temperature']);
    expect(corrected.warnings).toEqual(['no-species-correction']);
  });

  test("the user's own oven-dry checks come before everything published", () => {
    const ownCalibration = { a: 1.1, b: -0.5, standardErrorPct: 0.3 };
    const corrected = correct({ ownCalibration });
    expect(corrected.mcPct).toBeCloseTo((12 + 0.5) / 1.1, 10);
    expect(stepsOf(corrected)).toEqual(['temperature', 'own-calibration']);
    expect(corrected.standardUncertaintyPct).toBeCloseTo(0.3, 10);
  });

  test('a species with a curve needs no coefficients beside it, nor does one that the meter is set to', () => {
    const linear = { a: 0.9, b: 0.6 };
    expect(stepsOf(correct({ species: { ...oak, linear } }))).toEqual(['temperature', 'species-curve']);
    const ofCherry: MeterScale = { kind: 'species', speciesId: cherry.id, curveId: null, tempC: 21 };
    const setTo = { species: { ...cherry, linear }, scale: ofCherry };
    expect(stepsOf(correct(setTo))).toEqual(['temperature']);
    // Its scale is of a %: ohms are ohms.
    expect(stepsOf(correct({ ...setTo, value: 120e6, unit: 'ohm' }))).toEqual([
      'scale-curve',
      'temperature',
      'species-linear',
    ]);
  });

  test('what a check found the meter to be off by is taken off first: points of a %, decades of ohms', () => {
    const off = correct({ value: 13, meterOff: 1 });
    expect(stepsOf(off)).toEqual(['meter-check', 'temperature', 'species-curve']);
    expect(off.steps[0]!.pct).toBe(12);
    expect(off.mcPct).toBeCloseTo(correct({}).mcPct!, 10);
    // 125 megohm is red oak of 12 % at 80 °F (James 1988, Table 1, from memory).
    const ohms = correct({ value: 125e7, unit: 'ohm', meterOff: 1 });
    expect(stepsOf(ohms)).toEqual(['species-curve', 'meter-check', 'temperature']);
    expect(ohms.mcPct).toBeCloseTo(12, 6);
  });

  test('what boards of known moisture content taught comes last, after what is published', () => {
    const learned = {
      a: 1.1,
      b: 0.5,
      variance: { bb: 0.04, ab: 0, aa: 0 },
      boardSdPct: 0.5,
      boards: 8,
    };
    const published = correct({}).mcPct!;
    const taught = correct({ learned, compensatesTemp: false });
    expect(stepsOf(taught)).toEqual(['temperature', 'species-curve', 'own-checks']);
    expect(taught.mcPct).toBeCloseTo((published - 0.5) / 1.1, 10);
    // What the checks leave open of the line, and from board to board: the root of the sum of squares.
    expect(taught.standardUncertaintyPct).toBeCloseTo(Math.hypot(0.2, 0.5), 3);
  });

  test('temperature unknown: not corrected for it, said, and less sure', () => {
    const known = correct({ species: cherry });
    const unknown = correct({ species: cherry, woodTempC: null });
    expect(unknown.mcPct).toBe(12);
    expect(unknown.steps).toEqual([]);
    expect(unknown.warnings).toContain('temperature-unknown');
    expect(unknown.standardUncertaintyPct!).toBeGreaterThan(known.standardUncertaintyPct!);
  });
});

describe('the scale says what a shown % means', () => {
  const walnut = speciesOf('walnut-black');
  const setTo = (speciesId: string): MeterScale => ({
    kind: 'species',
    speciesId,
    curveId: speciesOf(speciesId).curveId,
    tempC: 21,
  });
  const shown = (scale: MeterScale, species: Species) =>
    correct({ value: 14.2, woodTempC: 21, species, scale });

  test('a meter set to walnut shows the MC of walnut: 14.2% stays 14.2%', () => {
    const corrected = shown(setTo('walnut-black'), walnut);
    expect(corrected.mcPct).toBeCloseTo(14.2, 10);
    expect(stepsOf(corrected)).toEqual(['temperature']);
  });

  test('the same 14.2% of a meter on its usual scale is more in walnut', () => {
    const corrected = shown({ kind: 'usual' }, walnut);
    expect(stepsOf(corrected)).toEqual(['temperature', 'species-curve']);
    // By hand from Table 1 (James 1988): 14.2 % in Douglas-fir is 29 MΩ, which is 14.5 % in walnut.
    expect(Math.abs(corrected.mcPct! - 14.5)).toBeLessThan(0.25);
  });

  test('a species without a curve that the meter is set to itself: no species step, and nothing missing', () => {
    const corrected = shown(setTo('cherry-black'), cherry);
    expect(corrected.mcPct).toBeCloseTo(14.2, 10);
    expect(stepsOf(corrected)).toEqual(['temperature']);
    expect(corrected.warnings).toEqual([]);
  });

  test('set to walnut, pushed into oak: back to the resistance of walnut, then the curve of oak', () => {
    const ohms = 10 ** log10OhmsAt(resistanceCurves.get('walnut-black')!, 14.2).log10Ohms;
    const corrected = correct({ value: 14.2, scale: { ...scale, curveId: 'walnut-black' } });
    const { mcPct } = mcAtLog10Ohms(resistanceCurves.get(oak.curveId!)!, Math.log10(ohms));
    expect(corrected.mcPct).toBeCloseTo(mcPct, 6);
    expect(stepsOf(corrected)).toEqual(['temperature', 'species-curve']);
  });

  test('published coefficients are those of the usual scale, so a value of another is brought there first', () => {
    const linear = { ...cherry, linear: { a: 0.9, b: 0.6 } };
    const corrected = shown(setTo('walnut-black'), linear);
    expect(stepsOf(corrected)).toEqual(['temperature', 'usual-scale', 'species-linear']);
    expect(corrected.mcPct).toBeCloseTo((corrected.steps[1]!.pct - 0.6) / 0.9, 10);
  });

  test('an unknown scale is read as the usual one, and less sure; so is one set to a species without a curve', () => {
    const usual = shown({ kind: 'usual' }, walnut);
    for (const unknown of [shown({ kind: 'unknown' }, walnut), shown(setTo('cherry-black'), walnut)]) {
      // Its scale's temperature is 21 °C, the usual one's 22.7 °C: 0.2 points.
      expect(Math.abs(unknown.mcPct! - usual.mcPct!)).toBeLessThan(0.2);
      expect(unknown.standardUncertaintyPct!).toBeGreaterThan(usual.standardUncertaintyPct! + 0.1);
    }
  });

  test('a meter that corrects for temperature itself gets no second correction', () => {
    const itself = correct({
      woodTempC: 5,
      species: walnut,
      scale: setTo('walnut-black'),
      compensatesTemp: true,
    });
    expect(itself).toMatchObject({ mcPct: 12, steps: [] });
  });

  test('each step gives the value after it, and the last one is the MC', () => {
    const { mcPct, steps } = correct({ woodTempC: 5 });
    expect(steps.map(({ step }) => step)).toEqual(['temperature', 'species-curve']);
    expect(steps[0]!.pct).toBeGreaterThan(13);
    expect(steps.at(-1)!.pct).toBe(mcPct);
  });

  test('by how much the meter itself differs from board to board is its profile’s to say', () => {
    const [good, poor] = [0.5, 1.2].map((meterSdPct) => correct({ meterSdPct }).standardUncertaintyPct!);
    expect(good).toBeCloseTo(0.5, 1);
    expect(poor).toBeCloseTo(1.2, 1);
  });
});

describe('how sure a reading is', () => {
  /** Of the species that the meter is set to, with its own correction for temperature: the meter alone is unsure. */
  const own = {
    species: cherry,
    scale: { kind: 'species', speciesId: cherry.id, curveId: null, tempC: 21 },
    woodTempC: 21,
    compensatesTemp: true,
    meterSdPct: 0.5,
  } as const;
  const sd = (changes: Partial<ReadingToCorrect>) => correct({ ...own, ...changes }).standardUncertaintyPct!;

  // Wood Handbook, chapter 13: less sure near both ends of what pins can tell. By how much: our judgment.
  test.each([
    [12, 0.5],
    [20, 0.5],
    [25, 1],
    [35, 4],
    [6, 0.5],
    [4, 1.5],
  ])('the meter alone, at %f %%: %f points', (value, points) => {
    expect(sd({ value })).toBeCloseTo(points, 10);
    const learned = { a: 1, b: 0, variance: { bb: 0, ab: 0, aa: 0 }, boardSdPct: 0.5, boards: 8 };
    expect(sd({ value, learned })).toBeCloseTo(points, 10);
  });

  // The root of the sum of squares of what is independent: JCGM 100 (GUM), 5.1.2, from memory.
  test('a species without a correction adds 7 % of the MC, an unknown scale half of that', () => {
    const usual = { scale: { kind: 'usual' }, woodTempC: 22.7 } as const;
    expect(sd(usual)).toBeCloseTo(Math.hypot(0.5, 0.84), 3);
    expect(sd({ ...usual, scale: { kind: 'unknown' } })).toBeCloseTo(Math.hypot(0.5, 0.84, 0.42), 3);
    expect(sd({ ...usual, species: oak })).toBeCloseTo(0.5, 3);
    const ohms = { value: 125e6, unit: 'ohm', species: oak, woodTempC: 26.7 } as const;
    expect(sd({ ...ohms, scale: { kind: 'unknown' } })).toBeCloseTo(0.5, 3);
  });

  // A width of 30 °C has a standard deviation of 30 / √12: JCGM 100 (GUM), 4.3.7, from memory.
  test('wood of unknown temperature may be anywhere in 30 °C', () => {
    const shown = { compensatesTemp: false, scale: { kind: 'usual' }, species: oak } as const;
    const at = (woodTempC: number | null) => correct({ ...own, ...shown, woodTempC });
    const off = [-1, 1].map((side) => at(22.7 + (side * 30) / Math.sqrt(12)).mcPct! - at(null).mcPct!);
    const rms = Math.sqrt((off[0]! ** 2 + off[1]! ** 2) / 2);
    expect(at(null).standardUncertaintyPct).toBeCloseTo(Math.hypot(0.5, rms), 2);
    expect(rms).toBeGreaterThan(0.5);
  });

  test('that of the air leaves open how warm the wood is, and a measured one nothing', () => {
    const shown = { compensatesTemp: false, woodTempC: null } as const;
    const by = (sdK: number) => sd({ ...shown, airTemp: { tempC: 10, sdK } });
    expect(by(0)).toBeCloseTo(sd({ ...shown, woodTempC: 10 }), 10);
    expect(by(3)).toBeGreaterThan(by(0) + 0.02);
    expect(by(6)).toBeGreaterThan(by(3) + 0.05);
    const measured = { ...shown, woodTempC: -10 };
    expect(sd({ ...measured, airTemp: { tempC: 20, sdK: 6 } })).toBe(sd(measured));
  });

  test('a meter that measures the wood’s temperature knows it, and one of ohms corrects for none', () => {
    expect(sd({ woodTempC: null })).toBeCloseTo(0.5, 10);
    const ohms = { value: 125e6, unit: 'ohm', species: oak, woodTempC: null } as const;
    expect(sd({ ...ohms, compensatesTemp: true })).toBe(sd({ ...ohms, compensatesTemp: false }));
    expect(sd({ ...ohms, compensatesTemp: null })).toBeGreaterThan(0.6);
  });

  test('where nobody knows whether the meter corrects for it, a quarter of that shift may be too much', () => {
    const warm = { woodTempC: 40, species: oak, scale: { kind: 'usual' } } as const;
    const [open, known] = [sd({ ...warm, compensatesTemp: null }), sd({ ...warm, compensatesTemp: false })];
    const shift =
      correct({ ...own, ...warm, compensatesTemp: false }).mcPct! - correct({ ...own, ...warm }).mcPct!;
    expect(open ** 2 - known ** 2).toBeCloseTo((shift / 4) ** 2, 2);
    const ohms = { ...warm, value: 125e6, unit: 'ohm' } as const;
    expect(sd({ ...ohms, compensatesTemp: null })).toBe(sd({ ...ohms, compensatesTemp: false }));
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

  test('outside the curve, of the scale or of the species', () => {
    expect(correct({ value: 28 }).warnings).toContain('outside-curve');
    expect(correct({ value: 25, species: speciesOf('elm-american') }).warnings).toContain('outside-curve');
    expect(correct({ value: 24 }).warnings).not.toContain('outside-curve');
  });

  test('below freezing a value is less exact, and above 22 % not valid', () => {
    const cold = correct({ woodTempC: -5 });
    expect(cold.mcPct).toBeGreaterThan(12);
    expect(cold.warnings).toEqual(['below-freezing']);
    expect(correct({ woodTempC: 0 }).warnings).toEqual(['below-freezing']);
    expect(correct({ woodTempC: 0.1 }).warnings).toEqual([]);
    expect(correct({ value: 22, woodTempC: -5 }).warnings).toContain('frozen');
    expect(correct({ value: 16, woodTempC: -5 }).warnings).toEqual(['below-freezing']);
  });

  test('the colder the wood, the less sure', () => {
    const at = (woodTempC: number) => correct({ woodTempC }).standardUncertaintyPct!;
    expect(at(-10)).toBeGreaterThan(at(-5));
    expect(at(-5)).toBeGreaterThan(at(0));
    expect(at(0)).toBeGreaterThan(at(10));
    // No step at 0 °C.
    expect(at(-0.01) - at(0.01)).toBeLessThan(0.01);
  });

  test('wood hotter than the published range is corrected on, up to 80 °C, and marked', () => {
    expect(correct({ woodTempC: 70 }).warnings).toContain('temperature-out-of-range');
    expect(stepsOf(correct({ woodTempC: 70 }))).toContain('temperature');
    const absurd = correct({ woodTempC: 300 });
    expect(absurd.warnings).toContain('temperature-out-of-range');
    expect(stepsOf(absurd)).not.toContain('temperature');
    expect(absurd.mcPct).toBeCloseTo(correct({ woodTempC: null }).mcPct!, 10);
  });
});

describe('each limit is the last value that still counts', () => {
  test('of the wood’s temperature: −20 to 60 °C is published, −40 to 80 °C is corrected on', () => {
    const markOf = (woodTempC: number) =>
      correct({ woodTempC }).warnings.filter((each) => each === 'temperature-out-of-range').length;
    expect([-20, 60].map(markOf)).toEqual([0, 0]);
    expect([-20.1, 60.1].map(markOf)).toEqual([1, 1]);
    const isCorrected = (woodTempC: number) => stepsOf(correct({ woodTempC })).includes('temperature');
    expect([-40, 80].map(isCorrected)).toEqual([true, true]);
    expect([-40.1, 80.1].map(isCorrected)).toEqual([false, false]);
  });

  test('wood too hot or too cold to be corrected for is as unsure as of unknown temperature; at the limit it is not', () => {
    const sdAt = (woodTempC: number | null) =>
      correct({ species: cherry, compensatesTemp: false, woodTempC }).standardUncertaintyPct!;
    expect(sdAt(80.1)).toBe(sdAt(null));
    expect(sdAt(-40.1)).toBe(sdAt(null));
    for (const atLimit of [80, 70, -30, -40]) expect(sdAt(atLimit)).not.toBe(sdAt(null));
  });

  test('wood that a meter’s own sensor measured is of no unknown temperature; ohms and other meters tell none', () => {
    const warningsOf = (changes: Partial<ReadingToCorrect>) =>
      correct({ woodTempC: null, ...changes }).warnings;
    expect(warningsOf({ compensatesTemp: true })).toEqual([]);
    expect(warningsOf({ compensatesTemp: false })).toEqual(['temperature-unknown']);
    const ohms = { value: 125e6, unit: 'ohm', scale: { kind: 'ohms' } } as const;
    expect(warningsOf({ ...ohms, compensatesTemp: true })).toEqual(['temperature-unknown']);
  });

  test('a measured temperature comes before that of the air', () => {
    const airTemp = { tempC: 5, sdK: 3 };
    expect(correct({ woodTempC: 20, airTemp }).mcPct).toBe(correct({ woodTempC: 20 }).mcPct);
    expect(correct({ woodTempC: null, airTemp }).mcPct).toBe(correct({ woodTempC: 5 }).mcPct);
  });

  test('of a shown %: from 0 to the most that the species can hold', () => {
    const asShown = {
      species: cherry,
      compensatesTemp: true,
      scale: { kind: 'species', speciesId: cherry.id, curveId: null, tempC: 21 },
    } as const;
    expect(correct({ ...asShown, value: 0 }).mcPct).toBe(0);
    // 100 (1.54 - G) / 1.54 G, Wood Handbook (2021) eq. 4-3.
    const most = (100 * (1.54 - cherry.basicSpecificGravity!)) / (1.54 * cherry.basicSpecificGravity!);
    expect(correct({ ...asShown, value: most }).mcPct).toBe(most);
    expect(correct({ ...asShown, value: most + 0.001 }).mcPct).toBeNull();
    // On another scale the shown % may be possible, and what the wood holds by it not.
    expect(correct({ value: most - 1, species: cherry, woodTempC: -20 }).mcPct).toBeNull();
  });

  test('marks begin past their limit: below 6 %, above 30 %, and frozen above 22 %', () => {
    const warningsAt = (value: number, woodTempC = 20) =>
      correct({
        value,
        woodTempC,
        species: cherry,
        compensatesTemp: true,
        scale: { kind: 'species', speciesId: cherry.id, curveId: null, tempC: 21 },
      }).warnings;
    expect(warningsAt(6)).toEqual([]);
    expect(warningsAt(5.9)).toEqual(['below-meter-range']);
    expect(warningsAt(30)).toEqual([]);
    expect(warningsAt(30.1)).toEqual(['above-fiber-saturation']);
    expect(warningsAt(22, -5)).toEqual(['below-freezing']);
    expect(warningsAt(22.1, -5)).toEqual(['frozen']);
  });
});

describe('refused, with no value', () => {
  const refused = { mcPct: null, steps: [], standardUncertaintyPct: null, warnings: ['not-a-reading'] };
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
  test('a scale that names no curve is a fault of the set-up, not of the reading', () => {
    expect(() => correct({ scale: { ...scale, curveId: 'no-such' } })).toThrow(/not known: "no-such"/);
  });
});

describe('for every species, meter and temperature', () => {
  const species = fc.constantFrom(...builtInSpecies);
  const woodTempC = fc.double({ min: -20, max: 60, noNaN: true });
  const shown = fc.double({ min: 6, max: 28, noNaN: true });
  const more = fc.double({ min: 0.05, max: 5, noNaN: true });
  const log10Ohms = fc.double({ min: 5.8, max: 10, noNaN: true });
  const anyScale = fc.record({
    kind: fc.constant('species' as const),
    speciesId: fc.constant(null),
    curveId: fc.constantFrom(...resistanceCurves.keys()),
    tempC: fc.double({ min: 15, max: 30, noNaN: true }),
  });

  test('more shown is more moisture', () => {
    fc.assert(
      fc.property(species, anyScale, woodTempC, shown, more, (aSpecies, aScale, tempC, value, step) => {
        const at = (v: number) =>
          correctReading({ value: v, unit: 'pct', woodTempC: tempC, species: aSpecies, scale: aScale });
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
          correctReading({
            value: 10 ** d,
            unit: 'ohm',
            woodTempC: tempC,
            species: aSpecies,
            scale: { kind: 'ohms' },
          }).mcPct;
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
          fc.pre(tempC - colder >= -20);
          const raw = unit === 'pct' ? value : 10 ** log10OhmsAt(douglasFir, value).log10Ohms;
          const at = (t: number) =>
            correctReading({ value: raw, unit, woodTempC: t, species: aSpecies, scale }).mcPct;
          const [warm, cold] = [at(tempC), at(tempC - colder)];
          fc.pre(warm !== null && cold !== null);
          expect(cold!).toBeGreaterThan(warm!);
        },
      ),
    );
  });

  test('a meter made for this very species at this very temperature is right as it is', () => {
    fc.assert(
      fc.property(anyScale, shown, (aScale, value) => {
        const own = builtInSpecies.find(({ curveId }) => curveId === aScale.curveId)!;
        const { mcPct } = correctReading({
          value,
          unit: 'pct',
          woodTempC: aScale.tempC,
          species: own,
          scale: aScale,
        });
        expect(mcPct!).toBeCloseTo(value, 6);
      }),
    );
  });

  test('% on a scale and the ohms behind that % are the same reading, at the temperature of the curves', () => {
    // Those of Europe are at 20 °C; James's table is at 80 °F.
    const isAt80F = ({ curveId }: Species) => resistanceCurves.get(curveId ?? '')?.tempC === 26.7;
    fc.assert(
      fc.property(fc.constantFrom(...builtInSpecies.filter(isAt80F)), shown, (aSpecies, value) => {
        const ohms = 10 ** log10OhmsAt(douglasFir, value).log10Ohms;
        const byPct = correctReading({ value, unit: 'pct', woodTempC: 26.7, species: aSpecies, scale });
        const byOhms = correctReading({
          value: ohms,
          unit: 'ohm',
          woodTempC: 26.7,
          species: aSpecies,
          scale: { kind: 'ohms' },
        });
        expect(byPct.mcPct!).toBeCloseTo(byOhms.mcPct!, 6);
        expect(byOhms.mcPct!).toBeCloseTo(
          mcAtLog10Ohms(resistanceCurves.get(aSpecies.curveId!)!, Math.log10(ohms)).mcPct,
          6,
        );
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
            scale: { kind: 'unknown' },
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
    const squares = [...resistanceCurves.values()].map(
      (curve) => (mcAtLog10Ohms(curve, Math.log10(ohms)).mcPct - mcPct) ** 2,
    );
    const rms = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
    expect(rms / mcPct).toBeGreaterThan(0.06);
    expect(rms / mcPct).toBeLessThan(0.085);
  }
});
