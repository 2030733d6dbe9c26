import type { ColumnUnit, DayOrder } from '../contract/import.ts';
import { asEntered } from '../exchange/csv.ts';
import { MM_PER_FOOT, MM_PER_INCH } from '../measures.ts';
import { withoutAbove } from '../probing/readings/beyond-scale.ts';
import { LEAST_QUARTERS, typedLengthMm } from '../units/typed-length.ts';

/** A number in a cell, the unit behind it, and what else a person wrote there. */
export interface NumberInCell {
  value: number;
  unit: ColumnUnit | null;
  /** More than that: ">28", "30+". */
  isAbove: boolean;
  note: string;
}

/** What stands in a cell that has no value. Common practice, no source. */
const BLANK = /^(|-+|–|—|\.|\?|n\/?a|nan|none|null|#n\/a|k\.?\s?a\.?|x)$/i;
export const isBlank = (text: string): boolean => BLANK.test(text.trim());

/**
 * A cell as it is read: without a no-break space, and without the apostrophe that keeps a spreadsheet from taking the text
 * for a formula.
 */
export const cellText = (raw: string): string => asEntered(raw.replaceAll(/\s+/g, ' ').trim());

const UNITS: readonly [RegExp, ColumnUnit][] = [
  [/^(%|percent|pct|prozent|vol\.?-?%)/i, 'pct'],
  [/^(°|º|deg(rees)?\s*)\s*f\b/i, 'f'],
  [/^(°|º|deg(rees)?\s*)\s*c\b/i, 'c'],
  [/^k(Ω|Ω|ohms?)/i, 'kohm'],
  [/^g(Ω|Ω|ohms?)/i, 'gigohm'],
  [/^m(Ω|Ω|ohms?)/i, 'megohm'],
  [/^(Ω|Ω|ohms?\b)/i, 'ohm'],
  [/^mm\b/i, 'mm'],
  [/^cm\b/i, 'cm'],
  [/^m\b/i, 'm'],
  [/^(inch(es)?|in|zoll)\b|^(["″”]|'')/i, 'in'],
  [/^(feet|foot|ft|fuß)\b|^['′’]/i, 'ft'],
  [/^(kg|kilos?)\b/i, 'kg'],
  [/^(grams?|gr?)\b/i, 'g'],
  [/^(ounces?|oz)\b/i, 'oz'],
  [/^(pounds?|lbs?)\b/i, 'lb'],
];

/** The unit that a text begins with, and how long it is written; null for none. */
export function unitAt(text: string): { unit: ColumnUnit; letters: number } | null {
  if (/^[FC]\b/.test(text)) return { unit: text[0] === 'F' ? 'f' : 'c', letters: 1 };
  for (const [pattern, unit] of UNITS) {
    const found = pattern.exec(text);
    if (found) return { unit, letters: found[0].length };
  }
  return null;
}

const NUMBER = /^[~≈+]?\s*(?<number>[-−]?(?:\d[\d.,]*|[.,]\d+))\s*/;
/** One mark for the decimals at most, and before it groups of three digits, parted alike. */
const WELL_FORMED = /^[-−]?(?:\d*(?:[.,]\d+)?|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d{1,3}(?:\.\d{3})+(?:,\d+)?)$/;
/** What changes the number before it: a range, an exponent, a second number, the minutes of a time. */
const CHANGES_NUMBER = /^(?::\d|(?:[-−–—]|to|bis|x|e|\+)?\s*[+-]?\d|e[+-]?\d)/i;

/**
 * The number that a cell begins with: "12.4", "12,4 %", "~13", "14.5 wet end", "30+".
 *
 * @param decimalMark  of the table; the other one parts thousands where three digits follow
 * @returns            null where the cell begins with no number, with one that is mistyped ("14.2.3"), or with two
 *                     ("14-16", "14 15", "12:30"): nobody knows which of them was meant
 */
export function numberIn(written: string, decimalMark: '.' | ','): NumberInCell | null {
  const { text, isAbove } = withoutAbove(written);
  const found = NUMBER.exec(text);
  const digits = found?.groups?.number?.replace(/[.,]$/, '');
  if (!found || digits === undefined || !WELL_FORMED.test(digits)) return null;
  const value = valueIn(digits, decimalMark);
  if (value === null) return null;
  const after = text.slice(found[0].length);
  const unit = unitAt(after);
  const rest = after.slice(unit?.letters ?? 0).trim();
  if (CHANGES_NUMBER.test(rest)) return null;
  const note = rest.replace(/^[\s,;:()[\]*-]+|[\s)\]]+$/g, '');
  return { value, unit: unit?.unit ?? null, isAbove, note };
}

function valueIn(digits: string, decimalMark: '.' | ','): number | null {
  const marks = digits.match(/[.,]/g) ?? [];
  const last = marks.at(-1);
  let decimal = last;
  const isOneKind = new Set(marks).size === 1;
  if (isOneKind && marks.length > 1) decimal = undefined;
  else if (isOneKind && last !== decimalMark && /^[-−]?[1-9]\d{0,2}[.,]\d{3}$/.test(digits)) {
    decimal = undefined;
  }
  const plain = [...digits]
    .map((letter, at) => {
      if (letter !== '.' && letter !== ',') return letter === '−' ? '-' : letter;
      return letter === decimal && at === digits.lastIndexOf(letter) ? '.' : '';
    })
    .join('');
  const value = Number(plain);
  return Number.isFinite(value) ? value : null;
}

/** What parts readings in a cell; within brackets it is part of what a person noted. */
const NOT_IN_BRACKETS = /\s*[/;|]\s*(?![^(]*\))/;

/**
 * Readings in one cell: "12.4", "12.4 / 13.1", "12,4; 13,1", and "12.4, 13.1" where points part decimals.
 *
 * @returns null where something in it is no number
 */
export function numbersIn(text: string, decimalMark: '.' | ','): NumberInCell[] | null {
  const parted = decimalMark === '.' ? text.replaceAll(/(\d), +(?=\d)/g, '$1; ') : text;
  const parts = parted.split(NOT_IN_BRACKETS).filter((part) => part !== '');
  const numbers = parts.map((part) => numberIn(part, decimalMark));
  return numbers.every((number) => number !== null) ? numbers : null;
}

const MM: Partial<Record<ColumnUnit, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: MM_PER_FOOT,
  quarters: MM_PER_INCH / 4,
};

/** A length in a cell, and the quarters of an inch where it was given by them. */
export interface LengthInCell {
  mm: number;
  quarters: number | null;
}

/**
 * A length in a cell: "27", "27 mm", "1 3/4\"", "8/4", "2.4 m", "7 ft 3 in".
 *
 * @param unit  of a bare number; a fraction is of an inch all the same
 * @returns     null for what is no length
 */
export function lengthIn(text: string, unit: ColumnUnit, decimalMark: '.' | ','): LengthInCell | null {
  const quarters = Number(/^(\d+)\s*\/\s*4$/.exec(text)?.[1] ?? 0);
  if (quarters >= LEAST_QUARTERS) return { mm: (quarters * MM_PER_INCH) / 4, quarters };
  const dated = quartersOfDate(text);
  if (dated !== null) return { mm: (dated * MM_PER_INCH) / 4, quarters: dated };
  const bare = numberIn(text, decimalMark);
  if (bare && bare.note === '' && !bare.isAbove && !text.includes('/')) {
    const mm = bare.value * (MM[bare.unit ?? unit] ?? 1);
    const named = unit === 'quarters' && bare.unit === null && Number.isInteger(bare.value);
    return { mm, quarters: named && bare.value >= LEAST_QUARTERS ? bare.value : null };
  }
  const mm = typedLengthMm(text, unit === 'in' || unit === 'ft' ? 'imperial' : 'metric');
  return mm === null || Number.isNaN(mm) ? null : { mm, quarters: null };
}

/**
 * The quarters that a spreadsheet took for a date: "4-Aug" and "8-Apr" for 8/4, by the order of day and month. Common
 * practice, no source.
 */
function quartersOfDate(text: string): number | null {
  const [, first, name] = /^(\d{1,2})\.?[-. ](\p{L}{3,})\.?$/u.exec(text) ?? [];
  const [, nameFirst, second] = /^(\p{L}{3,})\.?[-. ](\d{1,2})$/u.exec(text) ?? [];
  const day = Number(first ?? second);
  const month = monthIn(name ?? nameFirst ?? '');
  if (month === null || !(day === 4 || month === 4)) return null;
  const quarters = day === 4 ? month : day;
  return quarters >= LEAST_QUARTERS ? quarters : null;
}

/** The languages whose names of months are understood. */
const LANGUAGES = ['en', 'de', 'fr', 'es', 'it', 'nl', 'pt', 'pl', 'sv', 'da', 'nb', 'fi'];
const plainLetters = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

let months: ReadonlyMap<string, number> | null = null;
function monthNames(): ReadonlyMap<string, number> {
  if (months) return months;
  const names = new Map<string, number>();
  for (const language of LANGUAGES) {
    for (const style of ['long', 'short'] as const) {
      // Some have another form within a date: "toukokuu", but "3. toukokuuta".
      const formats = [{}, { day: 'numeric' } as const].map(
        (day) => new Intl.DateTimeFormat(language, { ...day, month: style, timeZone: 'UTC' }),
      );
      for (let month = 1; month <= 12; month++) {
        for (const format of formats) {
          const parts = format.formatToParts(new Date(Date.UTC(2024, month - 1, 15)));
          const written = parts.find(({ type }) => type === 'month')?.value ?? '';
          const name = plainLetters(written).replace('.', '');
          if (name !== '' && !names.has(name)) names.set(name, month);
        }
      }
    }
  }
  names.set('sept', 9);
  months = names;
  return names;
}

/** The month that a text names: "May", "Mai", "5"; null for none. */
export function monthIn(text: string): number | null {
  if (/^(0?[1-9]|1[0-2])$/.test(text)) return Number(text);
  return monthNames().get(plainLetters(text).replace(/\.$/, '')) ?? null;
}

const pad = (number: number): string => String(number).padStart(2, '0');

/** @returns null where the calendar has no such day */
function isoDay(year: number, month: number, day: number): string | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  const isReal =
    date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return isReal ? `${year}-${pad(month)}-${pad(day)}` : null;
}

/** Two digits are of this century, or of the last where that is still to come. */
function fullYear(text: string, today: string): number {
  if (text.length > 2) return Number(text);
  const year = 2000 + Number(text);
  return year > Number(today.slice(0, 4)) ? year - 100 : year;
}

/** Day 1 of a spreadsheet's serial numbers is December 31, 1899; it counts a February 29, 1900. */
const SERIAL_START_MS = Date.UTC(1899, 11, 30);
const DAY_MS = 86_400_000;
/** Serial numbers of 1954 to 2119. */
export const isSerialDay = (value: number): boolean => value >= 20_000 && value <= 80_000;

const FIGURES =
  /^(?:(\d{4})\s?[./-]\s?(\d{1,2})\s?[./-]\s?(\d{1,2})|(\d{1,3})\s?[./-]\s?(\d{1,2})\s?[./-]\s?(\d{4}|\d{2}))(?!\d)/;

/** "Sat 5/3/2025" and "la 3.5.2025" without the day of the week. */
function withoutWeekday(text: string): string {
  const [before, word] = /^(\p{L}{2,})\.?,?\s*(?=\d)/u.exec(text) ?? [];
  return before === undefined || monthIn(word!) !== null ? text : text.slice(before.length);
}

/** The three numbers of a date in figures, as they are written; null for another text. */
export const figuresOf = (text: string): readonly [string, string, string] | null => {
  const [, ...parts] = FIGURES.exec(withoutWeekday(text)) ?? [];
  const [one, two, three] = parts.filter((part) => part !== undefined);
  return one === undefined || two === undefined || three === undefined ? null : [one, two, three];
};

/** What is written behind a date: a time, or nothing. */
const AFTER_DATE =
  /^[T ,]*(?:(?:klo|kl|um|at|às|à)\.?\s+)?(?<time>\d{1,2}[:.h]\d{2}(:\d{2}(\.\d+)?)?\s*([ap]\.?m\.?)?)?(?<offset>Z|[+-]\d{2}:?\d{2})?$/i;

/** A date in a cell, with the time that may follow it as minutes since midnight. */
export interface DayInCell {
  day: string;
  minutes: number | null;
  /** How far ahead of UTC that time is, min; null where it is a time of the place. */
  aheadMinutes: number | null;
}

/**
 * The date that a cell holds, in figures or with the name of a month, with a time or without: "2024-05-03", "5/3/24",
 * "3. Mai 2024", "03.05.2024 14:20".
 *
 * @param order  of figures
 * @param today  tells the century of a year with two digits
 * @returns      null for what is no date of the calendar
 */
export function dayIn(text: string, order: DayOrder, today: string): DayInCell | null {
  if (order === 'serial') {
    const serial = Number(text.replace(',', '.'));
    if (text === '' || !isSerialDay(serial)) return null;
    const minutes = Math.round((serial % 1) * 1440);
    const day = new Date(SERIAL_START_MS + Math.floor(serial) * DAY_MS).toISOString().slice(0, 10);
    return { day, minutes: minutes === 0 ? null : Math.min(1439, minutes), aheadMinutes: null };
  }
  const bare = withoutWeekday(text);
  const compact = /^(\d{4})(\d{2})(\d{2})$/.exec(bare);
  const figures = compact ? ([compact[1]!, compact[2]!, compact[3]!] as const) : figuresOf(bare);
  if (figures) {
    const written = compact?.[0] ?? FIGURES.exec(bare)![0];
    return withTime(dayOfFigures(figures, order, today), bare.slice(written.length));
  }
  return dayByName(bare, today);
}

function dayOfFigures(
  [one, two, three]: readonly [string, string, string],
  order: DayOrder,
  today: string,
): string | null {
  if (one.length > 2) return isoDay(Number(one), Number(two), Number(three));
  const year = fullYear(three, today);
  if (order === 'ymd')
    return three.length > 2 ? null : isoDay(fullYear(one, today), Number(two), Number(three));
  const [month, day] = order === 'mdy' ? [one, two] : [two, one];
  return isoDay(year, Number(month), Number(day));
}

function dayByName(text: string, today: string): DayInCell | null {
  // A weekday may stand before the name of a month as well: "Saturday, May 3, 2025".
  const words = text.replace(/^\p{L}{2,}\.?,\s*(?=\p{L})/u, '');
  const first =
    /^(?<day>\d{1,2})(?:st|nd|rd|th|º|\.)?[\s/-]*(?:de\s)?(?<month>\p{L}+)\.?,?[\s/-]*(?:de\s)?['’]?(?<year>\d{4}|\d{2})(?!\d|:)/u.exec(
      words,
    );
  const second =
    /^(?<month>\p{L}+)\.?[\s-]*(?<day>\d{1,2})(?:st|nd|rd|th)?,?[\s-]+['’]?(?<year>\d{4}|\d{2})(?!\d|:)/u.exec(
      words,
    );
  const found = first ?? second;
  const { day, month, year } = found?.groups ?? {};
  const number = month === undefined ? null : monthIn(month);
  if (!found || number === null || day === undefined || year === undefined) return null;
  return withTime(isoDay(fullYear(year, today), number, Number(day)), words.slice(found[0].length));
}

function withTime(day: string | null, after: string): DayInCell | null {
  const found = AFTER_DATE.exec(after.trim());
  if (day === null || !found) return null;
  const { time, offset } = found.groups ?? {};
  if (time === undefined) return { day, minutes: null, aheadMinutes: null };
  const minutes = timeIn(time);
  return minutes === null ? null : { day, minutes, aheadMinutes: offset ? aheadIn(offset) : null };
}

function aheadIn(offset: string): number {
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})$/.exec(offset) ?? [];
  return (sign === '-' ? -1 : 1) * (Number(hours ?? 0) * 60 + Number(minutes ?? 0));
}

/** Three whole numbers between slashes, with what may follow; of other marks `numberIn` takes none. */
const IN_FIGURES = /^\d{1,4}\s?\/\s?\d{1,2}\s?\/\s?\d{1,4}(?![\d.,])/;
/** A day with the name of its month. */
const DAY_AND_MONTH = /^\d{1,2}(?:st|nd|rd|th)?[\s./-]+(\p{L}{3,})\.?$/u;

/** Whether a cell can be meant for a date, with a year or without: "7/1/2025", "12/13/14", "3 May". */
export function isDateLike(text: string, today: string): boolean {
  const bare = withoutWeekday(text);
  const month = DAY_AND_MONTH.exec(bare)?.[1];
  return (
    IN_FIGURES.test(bare) ||
    dayByName(bare, today) !== null ||
    (month !== undefined && monthIn(month) !== null)
  );
}

/** Whether a text is a day of some year: "3/15", "Mar 15", "15. März". */
export function isWithoutYear(text: string): boolean {
  const bare = withoutWeekday(text);
  const month =
    /^\d{1,2}(?:st|nd|rd|th)?[\s./-]+(\p{L}{3,})\.?$|^(\p{L}{3,})\.?[\s./-]+\d{1,2}(?:st|nd|rd|th)?$/u.exec(
      bare,
    );
  if (month) return monthIn(month[1] ?? month[2] ?? '') !== null;
  return /^\d{1,2}[./-]\d{1,2}\.?$/.test(bare);
}

/** A time of day in a cell, in minutes since midnight: "14:20", "2:20 pm"; null for none. */
export function timeIn(text: string): number | null {
  const found =
    /^(?:(?:klo|kl|um|at|às|à)\.?\s+)?(\d{1,2})[:.h](\d{2})(?::\d{2}(?:\.\d+)?)?\s*([ap])?\.?(?:m\.?)?$/i.exec(
      text.trim(),
    );
  if (!found) return null;
  const [, hours, minutes, half] = found;
  const hour = half ? (Number(hours) % 12) + (half.toLowerCase() === 'p' ? 12 : 0) : Number(hours);
  return hour < 24 && Number(minutes) < 60 ? hour * 60 + Number(minutes) : null;
}
