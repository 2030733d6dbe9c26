import { answerFor, type ImportChoices, nameKey } from '../contract/import.ts';
import { celsiusFromTemperature } from '../units/temperature.ts';
import { DAMPEST_RH, emcPct } from '../wood/climate/emc.ts';
import type { Air } from '../wood/climate/monthly-air.ts';
import { mean } from '../wood/maths/mean.ts';
import { message } from '../words/message.ts';
import type { KnownYard } from './boards-of-table.ts';
import { dayIn, isBlank, monthIn, numberIn, timeIn } from './cells.ts';
import type { Rows } from './rows.ts';

/** The air of an hour, or of a day where the table has no time of day. */
export interface DatedAir {
  /** Local ISO day. */
  day: string;
  /** Since midnight, by the local clock; null where only the day is known. */
  minutes: number | null;
  tempC: number;
  /** Fraction, 0 to 1. */
  rh: number;
}

/** The air of one place. */
export interface AirOfTable {
  /** As the table names it; null where it names none. */
  placeName: string | null;
  /** January first; null for a month that the table does not have. */
  months: (Air | null)[];
  /** Rising in time; none where the table is by month. */
  dated: DatedAir[];
  /** Months of which the table has too few days. */
  thin: number[];
}

interface Value {
  month: number;
  day: string | null;
  minutes: number | null;
  tempC: number;
  rh: number;
}

/** A month with fewer days says little of the month, as for weather files. */
const LEAST_DAYS = 20;
/** Sensors in fog show a little more than 100. Common practice, no source. */
const MOST_SHOWN = 1.05;

/** A table of places' air, a row a month or a row a dated value: what goes in, and of each row that does not, why. */
export function checkAir(rows: Rows, choices: ImportChoices, yard: KnownYard): AirOfTable[] {
  const byPlace = new Map<string, { placeName: string | null; values: Value[]; last: number }>();
  const column = (role: 'place' | 'month' | 'day' | 'time' | 'air-temp' | 'humidity') => rows.columnOf(role);
  for (const row of rows.used) {
    const place = column('place') < 0 ? '' : rows.text(row, column('place'));
    const placeName = isBlank(place) ? null : place;
    if (
      placeName !== null &&
      !yard.places.has(nameKey(placeName)) &&
      answerFor(choices.placesOfNames, placeName) === undefined
    ) {
      rows.missPlace(placeName);
      rows.refuse(row, column('place'), message('import.place-unknown', { placeName }));
      continue;
    }
    const value = valueIn(row);
    if (value === null) continue;
    const key = placeName === null ? '' : nameKey(placeName);
    const known = byPlace.get(key);
    if (known) known.values.push(value);
    else byPlace.set(key, { placeName, values: [value], last: row });
  }

  function valueIn(row: number): Value | null {
    const text = (role: Parameters<typeof column>[0]) => rows.text(row, column(role));
    const refuse = (role: Parameters<typeof column>[0], problem: Parameters<Rows['refuse']>[2]): null => {
      rows.refuse(row, column(role), problem);
      return null;
    };
    const isMonthly = column('month') >= 0;
    const date = isMonthly
      ? null
      : dayIn(text('day'), choices.columns[column('day')]?.order ?? 'ymd', yard.today);
    const month = isMonthly ? monthIn(text('month')) : date && Number(date.day.slice(5, 7));
    if (month === null) {
      const role = isMonthly ? 'month' : 'day';
      const code = isMonthly ? 'import.no-month' : 'import.no-date';
      return refuse(role, message(code, { cellTypedText: text(role) }));
    }
    const time = date === null || column('time') < 0 ? '' : text('time');
    const minutes = isBlank(time) ? (date?.minutes ?? null) : timeIn(time);
    if (minutes === null && !isBlank(time))
      return refuse('time', message('import.no-time', { cellTypedText: time }));
    const ahead = date?.aheadMinutes ?? null;
    const at =
      date && (minutes === null || ahead === null)
        ? { day: date.day, minutes }
        : date && yard.localOf({ day: date.day, minutes: minutes as number, aheadMinutes: ahead as number });
    if (at && (at.day > yard.today || at.day < '1900-01-01'))
      return refuse('day', message('import.date-impossible', { givenOn: at.day }));
    if (at && at.day === yard.today && (at.minutes ?? 0) > yard.minutesNow)
      return refuse(column('time') < 0 ? 'day' : 'time', message('import.later-today'));
    const temp = numberIn(text('air-temp'), choices.decimalMark);
    if (temp === null)
      return refuse('air-temp', message('import.no-temperature', { cellTypedText: text('air-temp') }));
    const tempUnit =
      temp.unit === 'c' || temp.unit === 'f' ? temp.unit : choices.columns[column('air-temp')]?.unit;
    const tempC = celsiusFromTemperature(temp.value, tempUnit === 'f' ? 'imperial' : 'metric');
    if (tempC < -60 || tempC > 60)
      return refuse('air-temp', message('import.air-impossible', { airTempC: tempC }));
    const humidity = numberIn(text('humidity'), choices.decimalMark);
    const isShare = choices.columns[column('humidity')]?.unit === 'share' && humidity?.unit !== 'pct';
    const rh = humidity && (isShare ? humidity.value : humidity.value / 100);
    if (rh === null || rh < 0 || rh > MOST_SHOWN) {
      return refuse('humidity', message('import.no-humidity', { cellTypedText: text('humidity') }));
    }
    return { month, day: at?.day ?? null, minutes: at?.minutes ?? null, tempC, rh: Math.min(1, rh) };
  }

  return [...byPlace.values()].map(({ placeName, values }) => ({
    placeName,
    ...monthsOf(values.map((value) => ({ ...value, rh: Math.min(DAMPEST_RH, value.rh) }))),
    dated: datedOf(values),
  }));
}

function monthsOf(values: readonly Value[]): Pick<AirOfTable, 'months' | 'thin'> {
  const thin: number[] = [];
  const months = Array.from({ length: 12 }, (_, index): Air | null => {
    const month = index + 1;
    const here = values.filter((value) => value.month === month);
    if (here.length === 0) return null;
    const air = { tempC: mean(here.map(({ tempC }) => tempC)), rh: mean(here.map(({ rh }) => rh)) };
    if (here.some(({ day }) => day === null)) return air;
    if (new Set(here.map(({ day }) => day?.slice(8))).size < LEAST_DAYS) {
      thin.push(month);
      return null;
    }
    // What wood follows is the mean of its EMC, and not the EMC of the means.
    return { ...air, emcPct: mean(here.map(({ tempC, rh }) => emcPct(tempC, rh))) };
  });
  return { months, thin };
}

/** Of several values of one hour the mean: wood does not follow faster, and a log of minutes stays small. */
function datedOf(values: readonly Value[]): DatedAir[] {
  const byHour = new Map<string, DatedAir[]>();
  for (const { day, minutes, tempC, rh } of values) {
    if (day === null) continue;
    const hour = minutes === null ? '' : String(Math.floor(minutes / 60)).padStart(2, '0');
    const key = `${day} ${hour}`;
    byHour.set(key, [...(byHour.get(key) ?? []), { day, minutes, tempC, rh }]);
  }
  return [...byHour]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([, [first, ...others]]) => {
      const all = [first as DatedAir, ...others];
      const rounded = (value: number, to: number): number => Math.round(value * to) / to;
      return {
        ...(first as DatedAir),
        tempC: rounded(mean(all.map(({ tempC }) => tempC)), 100),
        rh: rounded(mean(all.map(({ rh }) => rh)), 10_000),
      };
    });
}
