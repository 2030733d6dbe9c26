import { z } from 'zod';
import type { MonthlyAir } from './monthly-air.ts';
import { smoothedMonths } from './smoothed-months.ts';

/** How the EMC of single days swings round its month: standard deviation in % MC, and correlation with the day before. */
export const dayToDaySchema = z.object({ sdPct: z.number().min(0).max(30), lag: z.number().min(-1).max(1) });
export type DayToDay = z.infer<typeof dayToDaySchema>;

/** A weather station with a typical year. */
export const stationSchema = z.object({
  /** Its number with the World Meteorological Organization. */
  wmo: z.string().max(20),
  name: z.string().max(80),
  /** "NC". */
  state: z.string().max(20),
  /** Degrees north and east. */
  latitude: z.number().min(-90).max(90),
  longitude: z.number().min(-180).max(180),
  /** From the Dead Sea to the highest summits. */
  elevationM: z.number().min(-500).max(9000),
  days: dayToDaySchema,
});
export type Station = z.infer<typeof stationSchema>;

/** A station and its typical year of air. */
export interface StationYear {
  station: Station;
  air: MonthlyAir;
}

/** All stations, as `seeds/weather-stations.json` lists them. */
export interface StationList {
  /** Names by code: "NC" is "North Carolina". */
  states: Readonly<Record<string, string>>;
  years: readonly StationYear[];
}

/**
 * Reads the list of stations. Their EMC is halfway between two, both weighted by saturation vapor pressure: the mean of the
 * hours' EMC, and the EMC of the hours' mean air. A 28 mm board that the drying model runs through the hours of 12 stations is
 * 0.1 points damper than one in these months, 0.4 root mean square. In months of the first EMC it is 0.5 points drier, of
 * the second 0.7 points damper. The second needs every hour. In the 144 months of those 12 stations it lies below the first by
 * 1.04 times what the plain mean of hourly EMC is above the EMC of the mean temperature and humidity, less 0.17 times
 * what it is above the first, give or take 0.1: so it is taken at all stations. Then they are smoothed.
 *
 * @throws RangeError for a line that is none
 */
export function stationListOf({
  states,
  stations,
}: {
  states: Record<string, string>;
  stations: readonly string[];
}): StationList {
  return { states, years: stations.map(stationYearOf) };
}

function stationYearOf(line: string): StationYear {
  const [wmo, state, name, latitude, longitude, elevationM, temps, humidities, emcs, sdPct, lag] =
    line.split('|');
  const [tempC, rhPct, emcPct] = [temps, humidities, emcs].map((text) => text?.split(' ').map(Number) ?? []);
  if (!wmo || !state || !name || !tempC || rhPct?.length !== 12 || emcPct?.length !== 12) {
    throw new RangeError(`No weather station: ${line}`);
  }
  return {
    station: {
      wmo,
      name,
      state,
      latitude: Number(latitude),
      longitude: Number(longitude),
      elevationM: Number(elevationM),
      days: { sdPct: Number(sdPct), lag: Number(lag) },
    },
    air: smoothedMonths(
      tempC.map((temp, month) => ({
        tempC: temp,
        rh: (rhPct[month] as number) / 100,
        emcPct: emcPct[month] as number,
      })),
    ),
  };
}
