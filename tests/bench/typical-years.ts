/** Air of the weather stations for benches: the months of a typical year, and its hours. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import seeds from '../../seeds/weather-stations.json' with { type: 'json' };
import { emcPct } from '../../shared-core/wood/climate/emc.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import { regionalAir } from '../../shared-core/wood/climate/regional-air.ts';
import { type StationYear, stationListOf } from '../../shared-core/wood/climate/station.ts';

const list = stationListOf(seeds);
const { years } = list;

/** @param wmo  the station's number with the World Meteorological Organization */
export function stationYear(wmo: string): StationYear {
  const found = years.find(({ station }) => station.wmo === wmo);
  if (found === undefined) throw new RangeError(`No station ${wmo}.`);
  return found;
}

/** The air of the states on Central time, with how far its places differ. */
export const middleWest: MonthlyAir = regionalAir('America/Chicago', list).air;

/** Air that is a guess, as the usual air of a room is (`room-air.ts`). */
export const unsure = (air: MonthlyAir): MonthlyAir => air.map((month) => ({ ...month, emcSdPct: 1.5 }));

/** The same air all year. */
export const steadyAir = (tempC: number, rh: number): MonthlyAir =>
  Array.from({ length: 12 }, () => ({ tempC, rh }));

/** Stations whose hours are beside this file, or beside the reference tests. */
export const hourlyStations = [
  { wmo: '726410', file: 'data/tmy3-madison-wi-hours.csv' },
  { wmo: '726980', file: 'data/tmy3-portland-or-hours.csv' },
  { wmo: '722310', file: 'data/tmy3-new-orleans-la-hours.csv' },
  { wmo: '725650', file: 'data/tmy3-denver-co-hours.csv' },
  { wmo: '723150', file: '../reference/tmy3-asheville-hours.csv' },
] as const;

/** Temperature and EMC of each hour of a typical year. */
export function hoursOf(file: string): { tempC: number; emcPct: number }[] {
  return readFileSync(join(import.meta.dirname, file), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => {
      const [tempC = Number.NaN, rhPct = Number.NaN] = line.split(',').slice(-2).map(Number);
      return { tempC, emcPct: emcPct(Math.max(-20, tempC), Math.min(0.99, rhPct / 100)) };
    });
}
