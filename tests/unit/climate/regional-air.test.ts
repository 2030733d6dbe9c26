import { describe, expect, test } from 'vitest';
import seeds from '../../../seeds/weather-stations.json' with { type: 'json' };
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { monthlyAirSchema, roughnessPct } from '../../../shared-core/wood/climate/monthly-air.ts';
import { regionalAir } from '../../../shared-core/wood/climate/regional-air.ts';
import { stationListOf } from '../../../shared-core/wood/climate/station.ts';

const list = stationListOf(seeds);
const zones = [
  'America/New_York',
  'America/Phoenix',
  'Pacific/Honolulu',
  'Europe/Oslo',
  'Australia/Hobart',
  'UTC',
  '',
];

describe('The air of a region', () => {
  test.each(zones)('of the time zone "%s" is a year of air with its spread', (zone) => {
    const { air, stations } = regionalAir(zone, list);
    expect(monthlyAirSchema.safeParse(air).success).toBe(true);
    expect(stations).toBeGreaterThan(1);
    expect(roughnessPct(air)).toBeGreaterThan(0.5);
  });

  test('in Arizona is drier than in the east', () => {
    const emc = (zone: string) => emcOfYear(regionalAir(zone, list).air).driestEmcPct;
    expect(emc('America/Phoenix')).toBeLessThan(emc('America/New_York') - 5);
  });

  test('where the zone tells nothing is rougher than in a region of the east', () => {
    const rough = (zone: string) => roughnessPct(regionalAir(zone, list).air);
    expect(rough('UTC')).toBeGreaterThan(rough('America/New_York') + 0.5);
  });

  test('in the south has its summer in January', () => {
    const { air } = regionalAir('Australia/Hobart', list);
    expect(air[0]!.tempC).toBeGreaterThan(air[6]!.tempC + 10);
  });
});
