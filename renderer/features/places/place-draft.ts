import type { NewPlace, Place, PlaceKind } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { celsiusFromTemperature, temperatureFromC } from '../../../shared-core/units/temperature.ts';
import type { Air } from '../../../shared-core/wood/climate/monthly-air.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** The air of a month as typed: temperature in the person's units, humidity in %. */
export interface AirDraft {
  temp: number | null;
  rhPct: number | null;
}

/** A place as typed. */
export interface PlaceDraft {
  name: string;
  kind: PlaceKind;
  sameAllYear: boolean;
  /** January first; where it is the same all year, January's is used. */
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
const WARMEST_C = 60;
const DAMPEST_PCT = 99;

function airProblem(air: AirDraft, units: DisplayUnits): Message | null {
  if (air.temp === null || air.rhPct === null) return message('places.air-missing');
  const tempC = celsiusFromTemperature(air.temp, units);
  if (!(tempC >= COLDEST_C && tempC <= WARMEST_C)) {
    return message('places.temperature-outside', { coldestTempC: COLDEST_C, warmestTempC: WARMEST_C });
  }
  if (!(air.rhPct >= 0 && air.rhPct <= DAMPEST_PCT)) {
    return message('places.humidity-outside', { driestRhPct: 0, dampestRhPct: DAMPEST_PCT });
  }
  return null;
}

/** What is wrong with the draft, by field; all null when it can be saved. */
export interface PlaceProblems {
  name: Message | null;
  /** Of the first wrong month. */
  air: Message | null;
  /** Its index. */
  wrongMonth: number | null;
}

export function placeProblems(draft: PlaceDraft, units: DisplayUnits): PlaceProblems {
  const months = draft.sameAllYear ? draft.months.slice(0, 1) : draft.months;
  const wrongMonth = months.findIndex((air) => airProblem(air, units) !== null);
  const wrong = months[wrongMonth];
  return {
    name: draft.name.trim() === '' ? message('places.name-missing') : null,
    air: wrong ? airProblem(wrong, units) : null,
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
 * twelve numbers. Numbers are separated by tabs, semicolons or spaces, and may have a decimal comma.
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
