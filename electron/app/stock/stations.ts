import { findStations } from '../../../shared-core/wood/climate/find-station.ts';
import { regionalAir } from '../../../shared-core/wood/climate/regional-air.ts';
import { type StationList, stationListOf } from '../../../shared-core/wood/climate/station.ts';
import type { Queries } from '../handlers.ts';

let list: Promise<StationList> | null = null;

/** Read when first asked for: nobody waits for it at the start. */
function stationList(): Promise<StationList> {
  list ??= import('../../../seeds/weather-stations.json', { with: { type: 'json' } }).then(
    ({ default: seeds }) => stationListOf(seeds),
  );
  return list;
}

export const stationQueries = {
  'stations.find': async ({ text }) => findStations(text, await stationList()),
  'stations.ofRegion': async ({ timeZone }) => regionalAir(timeZone, await stationList()),
} satisfies Partial<Queries>;
