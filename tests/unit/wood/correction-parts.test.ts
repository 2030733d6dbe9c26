import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MeterScale } from '../../../shared-core/wood/moisture/corrected.ts';
import { correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import { correctionParts } from '../../../shared-core/wood/moisture/correction-parts.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';

const walnut = builtInSpecies.find(({ id }) => id === 'walnut-black')!;
const usual = { kind: 'usual' } as const;
const setToWalnut = {
  kind: 'species',
  speciesId: 'walnut-black',
  curveId: 'walnut-black',
  tempC: 21,
} as const;

function partsOf(raw: number, scale: MeterScale, compensatesTemp: boolean) {
  const corrected = correctReading({
    value: raw,
    unit: 'pct',
    woodTempC: 5,
    species: walnut,
    scale,
    compensatesTemp,
  });
  return { ...correctionParts({ raw, unit: 'pct', corrected }), mcPct: corrected.mcPct! };
}

describe('the parts of a correction', () => {
  test('a meter that is set to the board’s species and corrects for temperature changes nothing', () => {
    expect(partsOf(14.2, setToWalnut, true)).toEqual({
      fromOhmsPct: null,
      meterCheck: null,
      scale: null,
      temperature: null,
      species: null,
      ownChecks: null,
      mcPct: 14.2,
    });
  });

  test('a meter of the usual scale: temperature and species each have their points', () => {
    const { temperature, species, mcPct } = partsOf(14.2, usual, false);
    // Cold wood reads too dry (Wood Handbook, chapter 13).
    expect(temperature).toBeGreaterThan(0);
    expect(14.2 + temperature! + species!).toBeCloseTo(mcPct, 9);
  });

  test('together with the raw value they are the corrected one, for any species, scale and temperature', () => {
    const scales: MeterScale[] = [usual, setToWalnut, { kind: 'unknown' }];
    fc.assert(
      fc.property(
        fc.double({ min: 7, max: 25, noNaN: true }),
        fc.constantFrom(...builtInSpecies),
        fc.constantFrom(...scales),
        fc.option(fc.double({ min: 5, max: 40, noNaN: true })),
        fc.boolean(),
        (raw, species, scale, woodTempC, compensatesTemp) => {
          const reading = { value: raw, unit: 'pct', woodTempC, species, scale, compensatesTemp } as const;
          const corrected = correctReading(reading);
          if (corrected.mcPct === null) return;
          const { fromOhmsPct: _, ...parts } = correctionParts({ raw, unit: 'pct', corrected });
          const sum = Object.values(parts).reduce<number>((total, part) => total + (part ?? 0), raw);
          expect(sum).toBeCloseTo(corrected.mcPct, 9);
        },
      ),
    );
  });

  test('each step is of one part, and steps of one part are taken together', () => {
    const steps = [
      { step: 'meter-check', pct: 12 },
      { step: 'temperature', pct: 13 },
      { step: 'usual-scale', pct: 13.5 },
      { step: 'species-linear', pct: 14.5 },
      { step: 'species-curve', pct: 14.75 },
      { step: 'own-checks', pct: 14.5 },
      { step: 'own-calibration', pct: 14 },
      { step: 'scale-curve', pct: 14.5 },
    ] as const;
    expect(correctionParts({ raw: 14, unit: 'pct', corrected: { steps: [...steps] } })).toEqual({
      fromOhmsPct: null,
      meterCheck: -2,
      temperature: 1,
      scale: 1,
      species: 1.25,
      ownChecks: -0.75,
    });
  });

  test('ohms that were refused have no parts', () => {
    const none = { meterCheck: null, scale: null, temperature: null, species: null, ownChecks: null };
    expect(correctionParts({ raw: 12, unit: 'ohm', corrected: { steps: [] } })).toEqual({
      fromOhmsPct: null,
      ...none,
    });
  });

  test('ohms have a % once they are on a curve, and then what the temperature does', () => {
    const reading = {
      value: 125e6,
      unit: 'ohm',
      woodTempC: 5,
      species: walnut,
      scale: { kind: 'ohms' },
    } as const;
    const corrected = correctReading(reading);
    const { fromOhmsPct, temperature } = correctionParts({ raw: 125e6, unit: 'ohm', corrected });
    expect(fromOhmsPct).toBe(corrected.steps[0]!.pct);
    expect(temperature).not.toBe(0);
    expect(fromOhmsPct! + temperature!).toBeCloseTo(corrected.mcPct!, 9);
  });
});
