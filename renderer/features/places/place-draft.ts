import type { Place } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { celsiusFromTemperature } from '../../../shared-core/units/temperature.ts';
import { type Air, airSchema, type MonthlyAir } from '../../../shared-core/wood/climate/monthly-air.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { stationText } from './air-source-text.ts';
import type { AirOfPlace } from './StationField.tsx';

/** The air of a month as typed. */
export interface AirDraft {
  tempC: number | null;
  rhPct: number | null;
}

/** Where a place's air comes from, with what was entered for each of the ways. */
export interface PlaceAirDraft {
  way: 'station' | 'file' | 'own';
  station: string;
  file: AirOfPlace | null;
  sameAllYear: boolean;
  /** January first; where it is the same all year, January's is used. */
  months: AirDraft[];
}

export const emptyAirDraft: PlaceAirDraft = {
  way: 'station',
  station: '',
  file: null,
  sameAllYear: false,
  months: Array.from({ length: 12 }, () => ({ tempC: null, rhPct: null })),
};

export function airDraftOf({ air, airSource }: Pick<Place, 'air' | 'airSource'>): PlaceAirDraft {
  const first = air[0];
  return {
    way: airSource === null ? 'own' : airSource.kind === 'file' ? 'file' : 'station',
    station: airSource?.kind === 'station' ? stationText(airSource.station) : '',
    file: airSource?.kind === 'file' ? { air, airSource } : null,
    sameAllYear: air.every(({ tempC, rh }) => tempC === first?.tempC && rh === first.rh),
    months: air.map(({ tempC, rh }) => ({ tempC, rhPct: Math.round(rh * 1000) / 10 })),
  };
}

const LEAST_C = airSchema.shape.tempC.minValue ?? 0;
const MOST_C = airSchema.shape.tempC.maxValue ?? 0;
const MOST_RH_PCT = 100 * (airSchema.shape.rh.maxValue ?? 0);

function problemOf({ tempC, rhPct }: AirDraft): Message | null {
  if (tempC === null || rhPct === null) return message('places.air-missing');
  if (!(tempC >= LEAST_C && tempC <= MOST_C)) {
    return message('places.temperature-outside', { coldestTempC: LEAST_C, warmestTempC: MOST_C });
  }
  if (!(rhPct >= 0 && rhPct <= MOST_RH_PCT)) {
    return message('places.humidity-outside', { driestRhPct: 0, dampestRhPct: MOST_RH_PCT });
  }
  return null;
}

/** Twelve months of air as they were typed, or what is wrong with the first wrong one. */
export function ownYear({
  sameAllYear,
  months,
}: PlaceAirDraft): { air: MonthlyAir } | { problem: Message; wrongMonth: number } {
  const year = sameAllYear ? months.map(() => months[0] as AirDraft) : months;
  const wrongMonth = year.findIndex((month) => problemOf(month) !== null);
  if (wrongMonth < 0)
    return { air: year.map(({ tempC, rhPct }): Air => ({ tempC: tempC ?? 0, rh: (rhPct ?? 0) / 100 })) };
  return { problem: problemOf(year[wrongMonth] as AirDraft) as Message, wrongMonth };
}

/**
 * Twelve months as pasted from a spreadsheet: twelve lines of temperature and humidity, or one line of each with
 * twelve numbers. Numbers are separated by tabs, semicolons or spaces, and may have a decimal comma.
 *
 * @param units  of the temperatures
 * @returns      null where the text is not that
 */
export function monthsFromText(text: string, units: DisplayUnits): AirDraft[] | null {
  const lines = text
    .trim()
    .split(/\r?\n/)
    .map((line) =>
      line
        .trim()
        .split(/[\t; ]+/)
        .map((cell) =>
          Number(
            cell
              .replace(',', '.')
              .replace('−', '-')
              .replace(/(%|°[cf]?)$/i, ''),
          ),
        ),
    );
  if (lines.flat().some(Number.isNaN)) return null;
  const month = (temp = 0, rhPct = 0): AirDraft => ({ tempC: celsiusFromTemperature(temp, units), rhPct });
  if (lines.length === 12 && lines.every((line) => line.length === 2)) {
    return lines.map(([temp, rhPct]) => month(temp, rhPct));
  }
  const [temps, humidities] = lines;
  if (lines.length === 2 && temps?.length === 12 && humidities?.length === 12) {
    return temps.map((temp, at) => month(temp, humidities[at]));
  }
  return null;
}
