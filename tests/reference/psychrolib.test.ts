import psychrolib from 'psychrolib';
import { beforeAll, describe, expect, test } from 'vitest';
import { airFromOutdoors } from '../../shared-core/wood/climate/air-from-outdoors.ts';
import { dewPointC, saturationPressurePa, vaporPa } from '../../shared-core/wood/climate/moist-air.ts';

// PsychroLib 1.1.1 (D. Meyer and D. Thevenard, JOSS 4 (33), 2019): the formulas of the ASHRAE Handbook, Fundamentals
// (2017), chapter 1. Ours are other, shorter ones, good to 0.4 % in pressure.
const SEA_LEVEL_PA = 101_325;
beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

describe('Moist air, by PsychroLib', () => {
  const tempsC = [0.5, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50];
  test.each(tempsC)('saturation pressure over water at %f °C', (tempC) => {
    expect(Math.abs(saturationPressurePa(tempC) / psychrolib.GetSatVapPres(tempC) - 1)).toBeLessThan(0.004);
  });

  // Stations give humidity over water; PsychroLib's is over ice below freezing. The ratio of the two is that of supercooled
  // water to ice, which rises by about 1 % a degree: latent heat of fusion over R T² (333.5 kJ/kg, from memory).
  test.each([-5, -10, -20, -30])(
    'over water at %f °C it is above that over ice, by the heat of fusion',
    (tempC) => {
      const ratio = saturationPressurePa(tempC) / psychrolib.GetSatVapPres(tempC);
      const melting = (333_500 / 461.5) * (1 / (273.15 + tempC) - 1 / 273.16);
      expect(Math.abs(Math.log(ratio) / melting - 1)).toBeLessThan(0.12);
    },
  );

  test.each(tempsC.flatMap((tempC) => [0.2, 0.5, 0.9].map((rh) => [tempC, rh] as const)))(
    'dew point at %f °C and humidity %f, where it is above freezing',
    (tempC, rh) => {
      const dewC = psychrolib.GetTDewPointFromRelHum(tempC, rh);
      if (dewC < 0.1) return;
      expect(Math.abs(dewPointC(tempC, rh) - dewC)).toBeLessThan(0.06);
    },
  );

  test.each([5, 15, 25])('a gram in a cubic meter at %f °C has the pressure of the ideal gas', (tempC) => {
    const ratio = psychrolib.GetHumRatioFromVapPres(vaporPa(1, tempC), SEA_LEVEL_PA);
    const grams = (1000 * ratio) / psychrolib.GetMoistAirVolume(tempC, ratio, SEA_LEVEL_PA);
    expect(grams).toBeCloseTo(1, 2);
  });
});

describe('A heated room, by PsychroLib', () => {
  // Outdoors above freezing, where both mean humidity over water. The gain of `air-from-outdoors.ts`: 2 g/m³ up to 5 °C.
  test('has the humidity ratio of the outdoor air, and 2 g a cubic meter more', () => {
    const outdoors = Array.from({ length: 12 }, () => ({ tempC: 4, rh: 0.8 }));
    const { tempC, rh } = airFromOutdoors('heated', outdoors)[0]!;
    const within = psychrolib.GetHumRatioFromRelHum(tempC, rh, SEA_LEVEL_PA);
    const without = psychrolib.GetHumRatioFromRelHum(4, 0.8, SEA_LEVEL_PA);
    const volume = psychrolib.GetMoistAirVolume(tempC, within, SEA_LEVEL_PA);
    expect((1000 * (within - without)) / volume).toBeCloseTo(2, 1);
  });
});
