import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emcPct, rhForEmc } from '../../../shared-core/wood/climate/emc.ts';
import { dewPointC } from '../../../shared-core/wood/climate/moist-air.ts';

const airTempC = fc.double({ min: -20, max: 60, noNaN: true });
const rh = fc.double({ min: 0.001, max: 0.99, noNaN: true });
const step = fc.double({ min: 0.001, max: 0.2, noNaN: true });

describe('the moisture that air brings wood to', () => {
  test('rises with humidity', () => {
    fc.assert(
      fc.property(airTempC, rh, step, (tempC, h, more) => {
        fc.pre(h + more <= 0.99);
        expect(emcPct(tempC, h + more)).toBeGreaterThan(emcPct(tempC, h));
      }),
    );
  });

  test('falls as air of the same humidity gets warmer, from 10 °C on', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 55, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (t, h) => {
          expect(emcPct(t + 5, h)).toBeLessThan(emcPct(t, h));
        },
      ),
    );
  });

  test('gives back the humidity it came from', () => {
    fc.assert(
      fc.property(airTempC, rh, (tempC, h) => {
        expect(Math.abs(rhForEmc(tempC, emcPct(tempC, h)) - h)).toBeLessThan(1e-9);
      }),
    );
  });

  test('is nothing in bone-dry air', () => {
    expect(emcPct(20, 0)).toBe(0);
    expect(rhForEmc(20, 0)).toBe(0);
  });

  test.each([
    [-61, 0.5],
    [61, 0.5],
    [20, -0.01],
    [20, 1],
    [20, 50],
    [Number.NaN, 0.5],
    [20, Number.NaN],
  ])('is refused at %f °C and humidity %f', (tempC, h) => {
    expect(() => emcPct(tempC, h)).toThrow(RangeError);
  });

  test('colder than -20 °C, where the formula ends, is that of -20 °C', () => {
    expect(emcPct(-45, 0.7)).toBe(emcPct(-20, 0.7));
    expect(rhForEmc(-45, 12)).toBe(rhForEmc(-20, 12));
  });

  test('a moisture that no air brings wood to is refused in words', () => {
    expect(() => rhForEmc(20, 35)).toThrow('At 20 °C air brings wood to 0 to');
  });
});

describe('the dew point', () => {
  test('is the air temperature in saturated air, and below it else', () => {
    fc.assert(
      fc.property(airTempC, rh, (tempC, h) => {
        expect(dewPointC(tempC, 1)).toBeCloseTo(tempC, 10);
        expect(dewPointC(tempC, h)).toBeLessThan(tempC);
      }),
    );
  });

  test.each([
    [20, 0],
    [20, 1.01],
    [-61, 0.5],
    [61, 0.5],
  ])('is refused at %f °C and humidity %f', (tempC, h) => {
    expect(() => dewPointC(tempC, h)).toThrow(RangeError);
  });
});
