import type { NewPlace, Place, PlaceKind } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { monthNames } from '../../../shared-core/units/month-names.ts';
import {
  celsiusFromTemperature,
  temperatureFromC,
  temperatureUnit,
} from '../../../shared-core/units/temperature.ts';
import type { Air } from '../../../shared-core/wood/climate/monthly-air.ts';

/** The air of a month as it stands in the form's fields: temperature in the person's units, humidity in %. */
export interface AirDraft {
  temp: number | null;
  rhPct: number | null;
}

/** A place as it stands in the form. */
export interface PlaceDraft {
  name: string;
  kind: PlaceKind;
  sameAllYear: boolean;
  /** January first; where it is the same all year, January's holds. */
  months: AirDraft[];
}

export const emptyPlaceDraft: PlaceDraft = {
  name: '',
  kind: 'open-shed',
  sameAllYear: false,
  months: Array.from({ length: 12 }, () => ({ temp: null, rhPct: null })),
};

export function draftOfPlace(place: NewPlace, units: DisplayUnits): PlaceDraft {
  const first = place.air[0];
  return {
    name: place.name,
    kind: place.kind,
    sameAllYear: place.air.every((air) => air.tempC === first?.tempC && air.rh === first.rh),
    months: place.air.map((air) => ({
      temp: temperatureFromC(air.tempC, units),
      rhPct: Math.round(air.rh * 1000) / 10,
    })),
  };
}

/** The range that the EMC formula covers. */
const COLDEST_C = -20;
const HOTTEST_C = 60;
const MOST_RH_PCT = 99;

function airProblem(air: AirDraft, units: DisplayUnits): string | null {
  if (air.temp === null || air.rhPct === null) return 'Give both the temperature and the humidity.';
  const tempC = celsiusFromTemperature(air.temp, units);
  if (!(tempC >= COLDEST_C && tempC <= HOTTEST_C)) {
    const from = temperatureFromC(COLDEST_C, units);
    return `The temperature must be ${from} to ${temperatureFromC(HOTTEST_C, units)} ${temperatureUnit(units)}.`.replace(
      '-',
      '−',
    );
  }
  if (!(air.rhPct >= 0 && air.rhPct <= MOST_RH_PCT)) return `The humidity must be 0 to ${MOST_RH_PCT} %.`;
  return null;
}

/** What is wrong with the draft, by field; all null when it can be saved. */
export interface PlaceProblems {
  name: string | null;
  air: string | null;
  /** Index of the first wrong month. */
  wrongMonth: number | null;
}

export function placeProblems(draft: PlaceDraft, units: DisplayUnits): PlaceProblems {
  const months = draft.sameAllYear ? draft.months.slice(0, 1) : draft.months;
  const wrongMonth = months.findIndex((air) => airProblem(air, units) !== null);
  const wrong = months[wrongMonth];
  return {
    name: draft.name.trim() === '' ? 'Give the place a name.' : null,
    air: wrong
      ? `${draft.sameAllYear ? '' : `${monthNames[wrongMonth]}: `}${airProblem(wrong, units)}`
      : null,
    wrongMonth: wrong ? wrongMonth : null,
  };
}

function airOf(air: AirDraft | undefined, units: DisplayUnits): Air | null {
  if (!air || airProblem(air, units) !== null || air.temp === null || air.rhPct === null) return null;
  return { tempC: celsiusFromTemperature(air.temp, units), rh: air.rhPct / 100 };
}

/** Twelve months of air, or null while something is missing or wrong. */
export function yearOf(draft: PlaceDraft, units: DisplayUnits): Place['air'] | null {
  const year = draft.months.map((air) => airOf(draft.sameAllYear ? draft.months[0] : air, units));
  return year.every((air) => air !== null) ? year : null;
}

/**
 * Twelve months as pasted from a spreadsheet: twelve lines of temperature and humidity, or one line of each with
 * twelve numbers. Numbers are parted by tabs, semicolons or spaces, and may have a decimal comma.
 *
 * @returns null where the text is not that
 */
export function monthsFromText(text: string): AirDraft[] | null {
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
  if (lines.length === 12 && lines.every((line) => line.length === 2)) {
    return lines.map(([temp = 0, rhPct = 0]) => ({ temp, rhPct }));
  }
  const [temps, humidities] = lines;
  if (lines.length === 2 && temps?.length === 12 && humidities?.length === 12) {
    return temps.map((temp, month) => ({ temp, rhPct: humidities[month] ?? 0 }));
  }
  return null;
}
