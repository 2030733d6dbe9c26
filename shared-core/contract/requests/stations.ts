import { z } from 'zod';
import { monthlyAirSchema } from '../../wood/climate/monthly-air.ts';
import { stationSchema } from '../../wood/climate/station.ts';
import { ofMachine, query } from '../request-kinds.ts';

/** Weather stations are the same in every yard. */
export const stationRequests = {
  /** By name, state, or latitude and longitude; the first is meant where `isClear` (`wood/climate/find-station.ts`). */
  'stations.find': ofMachine(
    query({
      input: z.object({ text: z.string().max(80) }),
      output: z.object({
        years: z.array(z.object({ station: stationSchema, air: monthlyAirSchema })),
        more: z.number().int(),
        isClear: z.boolean(),
        onlyState: z.string().nullable(),
      }),
      topics: () => [],
    }),
  ),
  /** The rough air of a region, for where no station is named. */
  'stations.ofRegion': ofMachine(
    query({
      input: z.object({ timeZone: z.string().max(80) }),
      output: z.object({ air: monthlyAirSchema, stations: z.number().int() }),
      topics: () => [],
    }),
  ),
};
