import { describe, expect, test } from 'vitest';
import { dewPointC } from '../../shared-core/wood/climate/moist-air.ts';

describe('Dew point from the steam table (saturation pressure of water, IAPWS, from memory)', () => {
  // °C and kPa. Air whose vapor pressure is the saturation pressure at t has its dew point at t.
  const saturationKPa: [number, number][] = [
    [0.01, 0.61166],
    [5, 0.87257],
    [10, 1.2282],
    [15, 1.7058],
    [20, 2.3393],
    [25, 3.1699],
    [30, 4.247],
    [40, 7.3849],
    [50, 12.352],
  ];
  for (const [airTempC, airKPa] of saturationKPa) {
    for (const [wantedC, wantedKPa] of saturationKPa.filter(([tempC]) => tempC <= airTempC)) {
      test(`air at ${airTempC} °C with the vapor of ${wantedC} °C`, () => {
        // The Magnus form is good to 0.4 % in pressure: 0.06 °C.
        expect(Math.abs(dewPointC(airTempC, wantedKPa / airKPa) - wantedC)).toBeLessThan(0.06);
      });
    }
  }
});
