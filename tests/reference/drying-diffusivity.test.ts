/**
 * Moisture movement in wood: J. F. Siau, Transport Processes in Wood (1984), and W. T. Simpson, Wood and Fiber 5
 * (1973), against the handbook's EMC, steam tables and measured diffusivities.
 */
import { describe, expect, test } from 'vitest';
import { DAY_S } from '../../shared-core/time.ts';
import { emcPct } from '../../shared-core/wood/climate/emc.ts';
import { saturationPressurePa } from '../../shared-core/wood/climate/moist-air.ts';
import {
  surfaceEmission,
  surfaceHumidity,
  transverseDiffusivityM2S,
} from '../../shared-core/wood/drying/diffusivity.ts';

// Steam tables (CRC Handbook, from memory), Pa. The form's authors give 0.384 % at most from -40 to 50 °C.
test.each([
  [0, 611],
  [10, 1228],
  [20, 2339],
  [30, 4247],
  [40, 7385],
])('water vapor at %f °C saturates at %f Pa', (tempC, tablePa) => {
  expect(Math.abs(saturationPressurePa(tempC) / tablePa - 1)).toBeLessThan(0.00384);
});

// Simpson fitted both isotherms, this one (Bradley) and the handbook's, to the same data; he reports standard errors
// of some tenths of a percent. 1 % MC is allowed, for the driest air and for the wettest.
test.each([
  [5, 0.3],
  [5, 0.65],
  [5, 0.85],
  [21.1, 0.3],
  [21.1, 0.5],
  [21.1, 0.65],
  [21.1, 0.8],
  [21.1, 0.9],
  [38, 0.4],
  [38, 0.7],
])('at %f °C wood at the EMC of air of humidity %f is in balance with that air', (tempC, rh) => {
  const emc = emcPct(tempC, rh);
  expect(surfaceHumidity(emc - 1, tempC)).toBeLessThan(rh);
  expect(surfaceHumidity(emc + 1, tempC)).toBeGreaterThan(rh);
});

describe('diffusivity across the grain', () => {
  // Orders of magnitude measured by sorption near 25 °C, 1e-11 to 1e-9 m²/s (Wood Handbook, chapter 4, and
  // Siau's chapter 6; from memory): no more than that is claimed for the formula.
  test.each([[0.35], [0.45], [0.56], [0.65]])(
    'of wood of gravity %f lies among the measured ones',
    (gravity) => {
      for (const mc of [6, 10, 15, 20, 25]) {
        const d = transverseDiffusivityM2S(mc, 25, gravity);
        expect(d).toBeGreaterThan(5e-12);
        expect(d).toBeLessThan(1e-9);
      }
    },
  );

  // Aspen at 110 °F rose eightfold between 2.5 and 18 % MC (abstract looked at: "Measuring Dependence of
  // Diffusion Coefficient of Wood on Moisture Concentration by Adsorption Experiments", Wood and Fiber Science;
  // gravity 0.35, from memory). The formula rises half as much; the fit does not change that, only the level.
  test('of aspen at 43 °C rises several times between 2.5 and 18 % MC', () => {
    const rise = transverseDiffusivityM2S(18, 43.3, 0.35) / transverseDiffusivityM2S(2.5, 43.3, 0.35);
    expect(rise).toBeGreaterThan(8 / 2.5);
    expect(rise).toBeLessThan(8 * 2.5);
  });

  // Simpson's drying simulations use exp(-5280 / T) for red oak (from memory): a factor of 1.8 from 20 to 30 °C.
  test('rises with temperature like that of red oak in drying simulations', () => {
    const rise = transverseDiffusivityM2S(20, 30, 0.56) / transverseDiffusivityM2S(20, 20, 0.56);
    const published = Math.exp(5280 / 293.15 - 5280 / 303.15);
    expect(Math.abs(rise / published - 1)).toBeLessThan(0.01);
  });

  test('is that at fiber saturation for wetter wood', () => {
    expect(transverseDiffusivityM2S(80, 20, 0.5)).toBe(transverseDiffusivityM2S(30, 20, 0.5));
  });

  test('is refused for what is no wood and no air', () => {
    expect(() => transverseDiffusivityM2S(-1, 20, 0.5)).toThrow(RangeError);
    expect(() => transverseDiffusivityM2S(12, 200, 0.5)).toThrow(RangeError);
    expect(() => transverseDiffusivityM2S(12, 20, 1.5)).toThrow(RangeError);
    expect(() => surfaceEmission(20, 0)).toThrow(RangeError);
    expect(() => saturationPressurePa(Number.NaN)).toThrow(RangeError);
  });
});

// Evaporation from still water at 20 °C into air of 50 %: some 1 to 6 kg a day and m² in rooms and mild air (pool and
// drying practice, from memory). A wet face without its stack's drawback must lie there.
test('a wet face in room air loses some kilograms a day and square meter', () => {
  const gravity = 0.5;
  const rate = surfaceEmission(20, gravity) * (surfaceHumidity(80, 20) - 0.5);
  const kgPerDay = (rate / 100) * (1000 * gravity) * DAY_S;
  expect(kgPerDay).toBeGreaterThan(1);
  expect(kgPerDay).toBeLessThan(6);
});
