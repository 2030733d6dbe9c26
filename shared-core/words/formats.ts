import {
  FAHRENHEIT_AT_ZERO_CELSIUS,
  FAHRENHEIT_PER_CELSIUS,
  KG_PER_POUND,
  M3_PER_BOARD_FOOT,
  MM_PER_INCH,
} from '../measures.ts';
import { DAY_MS, MONTH_DAYS, YEAR_DAYS } from '../time.ts';
import type { DisplayUnits } from '../units/length.ts';
import { LEAST_TAPE_MM, tapeInches } from '../units/tape.ts';
import { megohmsOf } from '../units/typed-ohms.ts';
import type { DayRange, PctRange, Thickness, When } from './message.ts';
import type { Say } from './words.ts';

/** For whom something is shown. */
export interface Display {
  /** Whose marks numbers and dates have, BCP 47: "en-US". */
  locale: string;
  /** IANA: "America/Chicago". */
  timeZone: string;
  units: DisplayUnits;
  /** The local ISO day; a year is shown only where it is not this one's. Null shows it always. */
  today: string | null;
  /** For a voice: units are words, "13.4 percent". */
  isSpoken?: boolean;
}

/** Days promise more than is known where a date is less certain than this; months do. */
const MOST_DAYS_BY_DAY = 120;

export type Formats = ReturnType<typeof createFormats>;

/**
 * Every quantity as people read it, in sentences, tables, axes, labels and reports alike.
 * Arguments are SI, local ISO days ("2027-05-12") and UTC instants.
 *
 * @param say    makes the few words that go with a number, as in "4.2 points"
 * @param named  what the person calls a species, a group of them or a use
 */
export function createFormats(
  { locale, timeZone, units, today, isSpoken }: Display,
  say: Say,
  named: (name: string) => string,
) {
  const isEnglish = new Intl.Locale(locale).language === 'en';
  /** Outside English, the short "in" is read as a word of the sentence. */
  const unitDisplayOf = (unit: string): 'long' | 'short' =>
    isSpoken || (!isEnglish && ['inch', 'foot'].includes(unit)) ? 'long' : 'short';
  const metric = units === 'metric';
  const numbers = new Map<string, Intl.NumberFormat>();
  const dates = new Map<string, Intl.DateTimeFormat>();

  function numberFormat(options: Intl.NumberFormatOptions): Intl.NumberFormat {
    const key = JSON.stringify(options);
    const format = numbers.get(key) ?? new Intl.NumberFormat(locale, options);
    numbers.set(key, format);
    return format;
  }
  const shown = (value: number, options: Intl.NumberFormatOptions): string =>
    // Nothing is shown as "−0".
    tidy(numberFormat({ ...options, signDisplay: options.signDisplay ?? 'negative' }).format(value));
  const inUnit = (value: number, unit: string, options: Intl.NumberFormatOptions = {}): string =>
    shown(value, { style: 'unit', unit, unitDisplay: unitDisplayOf(unit), ...options });

  function dateFormat(options: Intl.DateTimeFormatOptions, writtenIn = locale): Intl.DateTimeFormat {
    const key = `${writtenIn} ${JSON.stringify(options)}`;
    const format = dates.get(key) ?? new Intl.DateTimeFormat(writtenIn, options);
    dates.set(key, format);
    return format;
  }
  const yearOf = (isoDays: readonly string[]): { year?: 'numeric' } =>
    today !== null && isoDays.every((isoDay) => isoDay.slice(0, 4) === today.slice(0, 4))
      ? {}
      : { year: 'numeric' };

  /** The local ISO day of an instant: "2027-05-12". */
  function localDay(instant: string | Date): string {
    const parts = dateFormat({ timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }, 'en-US')
      .formatToParts(new Date(instant))
      .map(({ type, value }) => [type, value]);
    const { year, month, day } = Object.fromEntries(parts) as Record<'year' | 'month' | 'day', string>;
    return `${year}-${month}-${day}`;
  }
  const dayIn = (instantOrDay: string): string =>
    instantOrDay.includes('T') ? localDay(instantOrDay) : instantOrDay;

  /** A number with the unit's own words around it where Intl cannot write the number, as for fractions. */
  const textInUnit = (text: string, unit: string): string =>
    tidy(
      numberFormat({ style: 'unit', unit, unitDisplay: unitDisplayOf(unit) })
        .formatToParts(2)
        .map((part) => (part.type === 'integer' ? text : part.value))
        .join(''),
    );

  const number = (value: number, maximumFractionDigits = 2): string =>
    shown(value, { maximumFractionDigits });

  const shortLength = (mm: number): string => {
    const least = metric ? 0.5 : LEAST_TAPE_MM;
    if (mm > 0 && mm < least / 2) return say('unit.under', { amount: shortLength(least) });
    if (!metric) return textInUnit(tapeInches(mm, number), 'inch');
    // Without marks for thousands: a field would read those as decimals.
    return inUnit(mm < 10 ? Math.round(mm * 2) / 2 : Math.round(mm), 'millimeter', { useGrouping: false });
  };

  /** In the prefix that keeps it short. */
  const ohmsTo = (ohm: number, options: Intl.NumberFormatOptions): string => {
    const [size, unit] =
      ohm >= 1e9 ? [1e9, 'GΩ'] : ohm >= 1e6 ? [1e6, 'MΩ'] : ohm >= 1e3 ? [1e3, 'kΩ'] : [1, 'Ω'];
    return `${shown(ohm / size, options)} ${unit}`;
  };

  const ofMonth = { month: 'short', year: 'numeric', timeZone: 'UTC' } as const;
  const ofDay = { month: 'short', day: 'numeric', timeZone: 'UTC' } as const;
  function day(instantOrDay: string, year: 'year' | null = null): string {
    const isoDay = dayIn(instantOrDay);
    const format = dateFormat({ ...ofDay, ...(year ? { year: 'numeric' } : yearOf([isoDay])) });
    return tidy(format.format(new Date(isoDay)));
  }
  function dayRange({ from, to }: DayRange): string {
    const [first, last] = [dayIn(from), dayIn(to)];
    const format = dateFormat({ ...ofDay, ...yearOf([first, last]) });
    return tidy(format.formatRange(new Date(first), new Date(last)));
  }
  const monthOfYear = (instantOrDay: string): string =>
    dateFormat(ofMonth).format(new Date(dayIn(instantOrDay)));
  const monthRange = ({ from, to }: DayRange): string =>
    tidy(dateFormat(ofMonth).formatRange(new Date(dayIn(from)), new Date(dayIn(to))));

  /** Where the end is open, no day is certain enough. */
  const isByDay = ({ from, to }: When): boolean =>
    to !== null && (Date.parse(dayIn(to)) - Date.parse(dayIn(from))) / DAY_MS <= MOST_DAYS_BY_DAY;
  /** The likely day alone: "May 12"; where it is less certain, "Sep 2027". */
  const likely = (when: When): string => (isByDay(when) ? day : monthOfYear)(when.likely);

  const mc = (pct: number): string =>
    inUnit(pct, 'percent', { minimumFractionDigits: 1, maximumFractionDigits: 1 });
  const percent = (pct: number): string => inUnit(pct, 'percent', { maximumFractionDigits: 1 });

  const cubicMeters = (m3: number): string => number(m3, m3 < 0.1 ? 4 : 3);
  const inWeightUnit = (kg: number): number => (metric ? kg : kg / KG_PER_POUND);

  return {
    /** A species, a group of them or a use that comes with the program, in the person's language; else its own name. */
    named,
    /** Whether lengths, volumes and weights are shown in metric units. */
    isMetric: metric,
    /** A moisture content: "13.0%". */
    mc,
    /** The target of a use: "6–8%", "20% or less". */
    mcRange({ minPct, maxPct }: PctRange): string {
      if (minPct === 0) return say('unit.or-less', { amount: percent(maxPct) });
      return `${shown(minPct, { maximumFractionDigits: 1 })}–${percent(maxPct)}`;
    },
    /** Where a moisture content likely lies: "11.6–13.0%"; "13.0%" where both ends show the same. */
    mcInterval: ({ minPct, maxPct }: PctRange): string =>
      mc(minPct) === mc(maxPct)
        ? mc(maxPct)
        : `${shown(minPct, { minimumFractionDigits: 1, maximumFractionDigits: 1 })}–${mc(maxPct)}`,
    /** A difference between two moisture contents: "4.2 points". */
    points: (points: number): string =>
      say('unit.points', { amount: shown(points, { minimumFractionDigits: 1, maximumFractionDigits: 1 }) }),
    /** Where such a difference likely lies: "1.1–2.3 points". */
    pointsInterval({ minPct, maxPct }: PctRange): string {
      const digits = { minimumFractionDigits: 1, maximumFractionDigits: 1 };
      return say('unit.points', { amount: `${shown(minPct, digits)}–${shown(maxPct, digits)}` });
    },
    /** An error, with its sign: "+0.2 points". */
    signedPoints: (points: number): string =>
      say('unit.points', {
        amount: shown(points, {
          minimumFractionDigits: 1,
          maximumFractionDigits: 1,
          signDisplay: 'exceptZero',
        }),
      }),
    /** Any other percentage, to a tenth where it has one: "90%", "99.9%". */
    percent,
    /** A share with its sign: "+12%". */
    signedPercent: (pct: number): string =>
      inUnit(pct, 'percent', { maximumFractionDigits: 0, signDisplay: 'exceptZero' }),
    /** Humidities, chances: "65%". */
    wholePercent: (pct: number): string => inUnit(pct, 'percent', { maximumFractionDigits: 0 }),
    /** A percentage as it was typed or sent: "14.25%". */
    rawPercent: (pct: number): string => inUnit(pct, 'percent', { maximumFractionDigits: 20 }),

    /** A thickness, width or depth: "27 mm", "9.5 mm", "1 1/16 in". */
    shortLength,
    /** A length along a board: "60 cm", "2.4 m"; "24 in", "7 ft 10 in". */
    longLength(mm: number): string {
      if (metric) {
        // What rounds to a full meter is shown as one.
        if (Math.round(mm / 10) < 100) return inUnit(Math.round(mm / 10), 'centimeter');
        return inUnit(mm / 1000, 'meter', { minimumFractionDigits: 1, maximumFractionDigits: 1 });
      }
      const inches = Math.round(mm / MM_PER_INCH);
      if (inches < 36) return inUnit(inches, 'inch');
      const feet = inUnit(Math.floor(inches / 12), 'foot');
      return inches % 12 === 0 ? feet : `${feet} ${inUnit(inches % 12, 'inch')}`;
    },
    /** A change of a thickness or width, finer than a tape shows in metric: "−3.2 mm", "−1/8 in". */
    lengthChange(mm: number): string {
      if (metric)
        return inUnit(mm, 'millimeter', {
          signDisplay: 'exceptZero',
          minimumFractionDigits: 1,
          maximumFractionDigits: 1,
        });
      const size = shortLength(Math.abs(mm));
      return Math.abs(mm) < LEAST_TAPE_MM / 2 ? size : `${mm < 0 ? '−' : '+'}${size}`;
    },
    /** A thickness, by its name in quarters where the person uses those: "8/4", "2 in", "27 mm". */
    thickness: ({ thicknessMm, quarters }: Thickness): string =>
      quarters === null ? shortLength(thicknessMm) : `${quarters}/4`,

    /** To whole degrees: "18°C", "64°F". */
    temperature: (tempC: number): string =>
      metric
        ? inUnit(tempC, 'celsius', { maximumFractionDigits: 0 })
        : inUnit(tempC * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_ZERO_CELSIUS, 'fahrenheit', {
            maximumFractionDigits: 0,
          }),
    /** A difference between two temperatures: "10°C", "18°F". */
    temperatureStep: (kelvin: number): string =>
      metric
        ? inUnit(kelvin, 'celsius', { maximumFractionDigits: 0 })
        : inUnit(kelvin * FAHRENHEIT_PER_CELSIUS, 'fahrenheit', { maximumFractionDigits: 0 }),

    /** To three figures, or to the gram where it was weighed as finely: "12.4 kg", "0.835 kg", "27.3 lb". */
    weight(kg: number): string {
      const value = inWeightUnit(kg);
      return inUnit(value, metric ? 'kilogram' : 'pound', weightDecimals(value));
    },
    /** The same without its unit, for a column: "12.4". */
    weightNumber(kg: number): string {
      const value = inWeightUnit(kg);
      return shown(value, weightDecimals(value));
    },
    /** For the head of such a column. */
    weightUnit: metric ? 'kg' : 'lb',
    /** As a fine balance shows it, which is in grams whatever else a person measures in: "38.42 g", "38.40 g" in steps of 0.01 g. */
    smallWeight(grams: number, stepGrams = 1): string {
      const stepDigits = Math.max(0, Math.ceil(-Math.log10(stepGrams)));
      return inUnit(grams, 'gram', { minimumFractionDigits: stepDigits, maximumFractionDigits: 5 });
    },
    /** "0.236 m³", and of a single board "0.0126 m³"; "100 board feet". */
    volume: (m3: number): string =>
      metric ? `${cubicMeters(m3)} m³` : boardFeetText(Math.round((m3 / M3_PER_BOARD_FOOT) * 10) / 10),
    /** Without its unit, for a column: "0.236". */
    cubicMeters,
    /** As tallied: "12 board feet". */
    boardFeet: (boardFeet: number): string => boardFeetText(boardFeet),
    /** Of a file: "12.3 MB". */
    fileSize: (bytes: number): string => inUnit(bytes / 1e6, 'megabyte', { maximumFractionDigits: 1 }),
    /** To three figures: "820 Ω", "1.2 MΩ". */
    ohms: (ohm: number): string => ohmsTo(ohm, { maximumSignificantDigits: 3 }),
    /** A resistance as it was typed or sent: "1.2345 MΩ". */
    rawOhms: (ohm: number): string => `${shown(megohmsOf(ohm), { maximumFractionDigits: 20 })} MΩ`,

    localDay,
    /** From a local day or an instant: "May 12", "May 12, 2028". `year` shows it always. */
    day,
    /** Where the year is beside it: "May 12". */
    dayOfYear: (instantOrDay: string): string =>
      tidy(dateFormat(ofDay).format(new Date(dayIn(instantOrDay)))),
    /** "Apr 20 – Jun 15". */
    dayRange,
    likely,
    /** "May 12 (Apr 20 – Jun 15)"; where it is less certain, "Sep 2027 (Jul 2027 – May 2028)", or with an open end. */
    when(when: When): string {
      const { from, to } = when;
      const date = likely(when);
      if (to === null) {
        const first = monthOfYear(from);
        return say('unit.when-open', { date, first, isFirst: date === first ? 'yes' : 'no' });
      }
      const range = (isByDay(when) ? dayRange : monthRange)({ from, to });
      return range === date ? date : say('unit.when', { date, dates: range });
    },
    /** An instant in local time: "May 12, 2:05 PM"; with seconds where two would look the same. */
    dateTime: (instant: string, withSeconds = false): string =>
      tidy(
        dateFormat({
          month: 'short',
          day: 'numeric',
          hour: 'numeric',
          minute: '2-digit',
          ...(withSeconds ? { second: '2-digit' } : {}),
          timeZone,
          ...yearOf([localDay(instant)]),
        }).format(new Date(instant)),
      ),
    /** "2:05 PM". */
    time: (instant: string): string =>
      tidy(dateFormat({ hour: 'numeric', minute: '2-digit', timeZone }).format(new Date(instant))),
    /** January is 1: "January", "Jan", "J". */
    month: (month: number, length: 'long' | 'short' | 'narrow' = 'long'): string =>
      dateFormat({ month: length, timeZone: 'UTC' }).format(new Date(Date.UTC(2000, month - 1, 1))),
    /** The month of a day or instant: "May 2028". */
    monthOfYear,
    /** "Jan – Mar 2027". */
    monthRange,
    /** How long before today, or another day, in local days: "today", "yesterday", "12 days ago", "4 months ago". */
    ago(instantOrDay: string, before = today): string {
      if (before === null) throw new RangeError('How long ago a day was needs to know today');
      const days = Math.max(
        0,
        Math.round((Date.parse(dayIn(before)) - Date.parse(dayIn(instantOrDay))) / DAY_MS),
      );
      const [count, unit] =
        days < 60
          ? ([days, 'day'] as const)
          : days / MONTH_DAYS < 24
            ? ([Math.round(days / MONTH_DAYS), 'month'] as const)
            : ([Math.round(days / YEAR_DAYS), 'year'] as const);
      return new Intl.RelativeTimeFormat(locale, { numeric: unit === 'day' ? 'auto' : 'always' }).format(
        -count,
        unit,
      );
    },

    /** "1,234", "0.25". */
    number,
    /** With so many decimals, as in a column: "0.20". */
    decimal: (value: number, digits: number): string =>
      shown(value, { minimumFractionDigits: digits, maximumFractionDigits: digits }),
    /** Between a whole number and its decimals: ".". */
    decimalMark: shown(1.5, {}).charAt(1),
    /** As it was typed or sent: 1.45 stays "1.45". */
    raw: (value: number): string => shown(value, { maximumFractionDigits: 20, useGrouping: false }),
    /** "a, b, and c". */
    list: (parts: readonly string[]): string => new Intl.ListFormat(locale).format(parts),
    /** "a, b, or c". */
    choices: (parts: readonly string[]): string =>
      new Intl.ListFormat(locale, { type: 'disjunction' }).format(parts),
  };

  function boardFeetText(boardFeet: number): string {
    return say('unit.board-feet', { count: boardFeet, amount: number(boardFeet) });
  }
}

/** To three figures, or to the gram where it was weighed as finely. */
function weightDecimals(value: number): Intl.NumberFormatOptions {
  const size = Math.abs(value);
  const digits = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
  return { minimumFractionDigits: digits, maximumFractionDigits: digits };
}

/** A true minus sign, and plain spaces where Intl has thin ones. */
const tidy = (text: string): string => text.replace(/[\u2009\u202f]/gu, ' ').replace(/^-/, '−');
