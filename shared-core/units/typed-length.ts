import { MM_PER_FOOT, MM_PER_INCH } from '../measures.ts';
import { type DisplayUnits, shortLengthFromMm } from './length.ts';
import { LEAST_TAPE_MM, tapeInches } from './tape.ts';

const MM_PER_UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: MM_PER_FOOT,
};

/** A number, with a fraction or without, and the unit that may follow it: "7 ft", "1 1/16 in", "3/4", "2.2m". */
const PART =
  /(?:(?:(?<whole>\d+)(?:\s+|-))?(?<over>\d+)\/(?<under>[1-9]\d*)|(?<number>\d+\.?\d*|\.\d+))\s*(?<unit>mm|cm|m|inches|inch|in|zoll|feet|foot|ft|fuß|["″”]|''|['′’])?\s*/y;

const unitOf = (written: string): string => {
  if (/^(in|zoll|["″”]|'')/.test(written)) return 'in';
  return /^(f|['′’])/.test(written) ? 'ft' : written;
};

type Bare = 'mm' | 'm' | 'in' | 'ft';

/**
 * A length as it is typed, in mm.
 *
 * @param bareUnit      of a number without a unit
 * @param fractionUnit  of one with a fraction: "5/4", "1 1/16"
 * @returns             null for an empty text, NaN for what is not a length
 */
function typedMm(text: string, bareUnit: Bare, fractionUnit: Bare = bareUnit): number | null {
  const typed = text
    // "1½" is 1 1/2.
    .replaceAll(/[¼-¾⅐-⅞]/g, (fraction) => ` ${fraction.normalize('NFKD')}`)
    .replaceAll('⁄', '/')
    .trim()
    .toLowerCase()
    // A thin space or a no-break space is a space, and a comma parts decimals.
    .replaceAll(/\s/g, ' ')
    .replace(',', '.');
  if (typed === '') return null;
  let mm = 0;
  let at = 0;
  let before = Number.POSITIVE_INFINITY;
  while (at < typed.length) {
    PART.lastIndex = at;
    const found = PART.exec(typed)?.groups;
    if (!found) return Number.NaN;
    const { whole = 0, over, under, number, unit = '' } = found;
    // After feet, a bare number is inches: 7' 3.
    const bare = before === MM_PER_FOOT ? 'in' : over === undefined ? bareUnit : fractionUnit;
    const mmPerUnit = MM_PER_UNIT[unit === '' ? bare : unitOf(unit)] as number;
    // Nothing follows a bare number.
    if (unit === '' && PART.lastIndex < typed.length) return Number.NaN;
    const count = over === undefined ? Number(number) : Number(whole) + Number(over) / Number(under);
    // "7 ft 3 in" goes from large to small; "7 ft 99 in" is a slip of the hand.
    if (mmPerUnit >= before || count * mmPerUnit >= before) return Number.NaN;
    mm += count * mmPerUnit;
    before = mmPerUnit;
    at = PART.lastIndex;
  }
  return Number.isFinite(mm) ? mm : Number.NaN;
}

/**
 * A thickness or width as a person types it, in mm: "27" in their own units, "27 mm", "2.7 cm", "1.25 in", "1 1/16".
 * A fraction is of an inch whatever the units, so that a rough board's quarter name is understood: "5/4" is 1 1/4 in.
 *
 * @returns null for an empty text, NaN for what is not a length
 * @example typedLengthMm('5/4', 'metric') // 31.75
 */
export const typedLengthMm = (text: string, units: DisplayUnits): number | null =>
  typedMm(text, units === 'metric' ? 'mm' : 'in', 'in');

/**
 * A length along a board as a person types it, in mm: "2.4" or "8 1/2" in meters or feet, "7 ft 3 in", "7'3\"", "220 cm".
 *
 * @returns null for an empty text, NaN for what is not a length
 * @example typedLongLengthMm("7'3\"", 'metric') // 2209.8
 */
export const typedLongLengthMm = (text: string, units: DisplayUnits): number | null =>
  typedMm(text, units === 'metric' ? 'm' : 'ft');

/** Nearer than this to a mark of a tape, a length is one of the tape's. */
const ON_THE_MARK_MM = 0.005;

/**
 * A board's thickness or width as a field shows it, for `typedLengthMm` to read again: to a tenth of a millimeter, or to
 * the mark of a tape.
 *
 * @example typedLengthText(54, 'imperial') // '2 1/8'
 */
export function typedLengthText(mm: number, units: DisplayUnits): string {
  if (units === 'metric') return String(Math.round(mm * 10) / 10);
  return mm < LEAST_TAPE_MM / 2 ? exactLengthText(mm, units) : tapeInches(mm);
}

/**
 * The same to a thousandth: "2 1/8", and "2.126" between a tape's marks.
 *
 * @example exactLengthText(54, 'imperial') // '2.126'
 */
export function exactLengthText(mm: number, units: DisplayUnits): string {
  const nearestMm = Math.round(mm / LEAST_TAPE_MM) * LEAST_TAPE_MM;
  if (units === 'imperial' && Math.abs(mm - nearestMm) < ON_THE_MARK_MM) return tapeInches(mm);
  return String(Number(shortLengthFromMm(mm, units).toFixed(3)));
}

/**
 * A length along a board as a field shows it, for `typedLongLengthMm` to read again: to a centimeter or an inch.
 *
 * @example typedLongLengthText(2209.8, 'imperial') // '7 ft 3 in'
 */
export function typedLongLengthText(mm: number, units: DisplayUnits): string {
  if (units === 'metric') return String(Math.round(mm / 10) / 100);
  const inches = Math.round(mm / MM_PER_INCH);
  if (inches < 36) return `${inches} in`;
  return inches % 12 === 0 ? String(inches / 12) : `${Math.floor(inches / 12)} ft ${inches % 12} in`;
}

/** 4/4 is the thinnest that the trade names in quarters; 3/4 is a size in inches (NHLA rules, from memory). */
export const LEAST_QUARTERS = 4;

/**
 * The quarters of an inch in a thickness that was typed by its name in the trade: 8 for "8/4".
 *
 * @returns null for every other text, as "54", "2 1/8", "3/4"
 */
export function typedQuarters(text: string): number | null {
  const quarters = Number(/^\s*(\d+)\/4\s*$/.exec(text)?.[1] ?? 0);
  return quarters >= LEAST_QUARTERS ? quarters : null;
}

/** Thinner than this is veneer more often than a board, mm. Common practice, no source. */
const THIN_MM = 8;

/** The thickness in quarters of an inch that was probably meant where so few millimeters were typed: 3 for 3 mm. */
export const quartersMeant = (mm: number): number | null =>
  Number.isInteger(mm) && mm >= 3 && mm < THIN_MM ? mm : null;
