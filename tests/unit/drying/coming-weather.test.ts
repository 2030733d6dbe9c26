import { describe, expect, test } from 'vitest';
import { comingAirSdPct, responseDays } from '../../../shared-core/wood/drying/coming-weather.ts';
import { stationYear, steadyAir } from '../../bench/typical-years.ts';

describe('the weather to come', () => {
  const { air, station } = stationYear('726410');

  test('is felt less by a board that follows its air more slowly', () => {
    const thin = comingAirSdPct(air, station.days, responseDays(12, 0.5, 0.5));
    const thick = comingAirSdPct(air, station.days, responseDays(54, 0.5, 0.5));
    expect(thin).toBeGreaterThan(1.5 * thick);
    // Never more than the days themselves and the seasons.
    expect(thin).toBeLessThan(Math.hypot(station.days.sdPct, 1));
  });

  test('is felt less where one day says little of the next', () => {
    const { sdPct } = station.days;
    expect(comingAirSdPct(air, { sdPct, lag: 0.8 }, 20)).toBeGreaterThan(
      1.5 * comingAirSdPct(air, { sdPct, lag: 0.2 }, 20),
    );
    expect(comingAirSdPct(air, { sdPct, lag: 0 }, 20)).toBe(comingAirSdPct(air, null, 20));
  });

  test('hardly reaches a dry room', () => {
    expect(comingAirSdPct(steadyAir(21, 0.35), null, 20)).toBeLessThan(0.3);
  });

  // J. Crank, The Mathematics of Diffusion (1975), chapter 4, from memory: thickness squared over pi squared and D.
  test('a board twice as thick follows four times as slowly', () => {
    expect(responseDays(50, 0.5, 0.5) / responseDays(25, 0.5, 0.5)).toBeCloseTo(4, 9);
  });
});
