import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import { log10OhmsAt } from '../../../shared-core/wood/moisture/resistance.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import {
  log10OhmsShift,
  pfaffGarrahanPct,
  shownAtBasisTempPct,
} from '../../../shared-core/wood/moisture/temperature.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';

const douglasFir = resistanceCurves.get('douglas-fir-coast')!;
const species = builtInSpecies.find(({ id }) => id === 'douglas-fir-coast')!;

/** MC by each route of Douglas-fir whose resistance is that of `shownPct` at 26.7 °C. */
function bothRoutes(shownPct: number, woodTempC: number): { byFormula: number; byResistance: number } {
  const ohms = 10 ** log10OhmsAt(douglasFir, shownPct).log10Ohms;
  const corrected = correctReading({ value: ohms, unit: 'ohm', woodTempC, species, scale: { kind: 'ohms' } });
  return {
    byFormula: shownAtBasisTempPct(shownPct, woodTempC, douglasFir.tempC),
    byResistance: corrected.mcPct!,
  };
}

describe('the two temperature routes', () => {
  const differences: number[] = [];
  for (let woodTempC = 0; woodTempC <= 45; woodTempC += 5) {
    for (let shownPct = 8; shownPct <= 22; shownPct++) {
      const { byFormula, byResistance } = bothRoutes(shownPct, woodTempC);
      differences.push(byResistance - byFormula);
    }
  }

  test('differ by 0.1 % MC on average and 1.1 at most, at 0 to 45 °C and 8 to 22 % shown', () => {
    const sizes = differences.map(Math.abs);
    expect(Math.max(...sizes)).toBeLessThan(1.15);
    expect(sizes.reduce((sum, size) => sum + size, 0) / sizes.length).toBeLessThan(0.15);
  });

  test('differ most in cold wet wood, where the resistance route gives less', () => {
    const { byFormula, byResistance } = bothRoutes(22, 0);
    expect(byFormula - byResistance).toBeGreaterThan(0.9);
  });
});

describe('the shift of resistance with temperature', () => {
  test('doubles the conductance of 10 % wood from 20 to 30 °C (Wood Handbook, chapter 4, from memory)', () => {
    expect(10 ** log10OhmsShift(10, 20, 30)).toBeCloseTo(2, 10);
  });

  test('triples that of green sapwood along the grain from 23 to 90 °C (radiata pine, 2017): so 1.71 fold to 50 °C', () => {
    // By hand: 3 ^ ((1/296.15 - 1/323.15) / (1/296.15 - 1/363.15)) = 3 ^ 0.45287
    expect(10 ** log10OhmsShift(100, 23, 50)).toBeCloseTo(1.6447, 3);
  });

  const mcPct = fc.double({ min: 3, max: 40, noNaN: true });
  const tempC = fc.double({ min: -20, max: 60, noNaN: true });

  test('is nothing at one temperature, and reversed the other way', () => {
    fc.assert(
      fc.property(mcPct, tempC, tempC, (mc, a, b) => {
        expect(log10OhmsShift(mc, a, a)).toBe(0);
        expect(log10OhmsShift(mc, a, b)).toBeCloseTo(-log10OhmsShift(mc, b, a), 12);
      }),
    );
  });

  test('makes colder wood more resistive', () => {
    fc.assert(
      fc.property(mcPct, tempC, fc.double({ min: 0.1, max: 10, noNaN: true }), (mc, at, colder) => {
        fc.pre(at - colder >= -20);
        expect(log10OhmsShift(mc, at - colder, 20)).toBeGreaterThan(log10OhmsShift(mc, at, 20));
      }),
    );
  });
});

describe('the formula for a shown %', () => {
  test('gives more in colder wood, and more for more shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 40, noNaN: true }),
        fc.double({ min: -20, max: 60, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (shownPct, woodTempC, more) => {
          expect(pfaffGarrahanPct(shownPct + more, woodTempC)).toBeGreaterThan(
            pfaffGarrahanPct(shownPct, woodTempC),
          );
          expect(pfaffGarrahanPct(shownPct, woodTempC - more)).toBeGreaterThan(
            pfaffGarrahanPct(shownPct, woodTempC),
          );
        },
      ),
    );
  });

  test.each([-41, 81, Number.NaN])('is refused at %f °C', (woodTempC) => {
    expect(() => pfaffGarrahanPct(12, woodTempC)).toThrow(RangeError);
    expect(() => log10OhmsShift(12, woodTempC, 20)).toThrow(RangeError);
  });
});
