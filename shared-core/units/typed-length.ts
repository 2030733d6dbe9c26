import { MM_PER_INCH } from '../measures.ts';
import { type DisplayUnits, shortLengthFromMm } from './length.ts';
import { LEAST_TAPE_MM, tapeInches } from './tape.ts';

/**
 * A thickness or width as a person types it, in mm: "27" in their own units, "27 mm", "2.7 cm", "1.25 in", "1 1/16".
 * A fraction is of an inch whatever the units, so that a rough board's quarter name is understood: "5/4" is 1 1/4 in.
 *
 * @returns null for an empty text, NaN for what is not a length
 * @example typedLengthMm('5/4', 'metric') // 31.75
 */
export function typedLengthMm(text: string, units: DisplayUnits): number | null {
  const typed = text.trim().toLowerCase().replace(',', '.');
  if (typed === '') return null;
  const parts = /^(?:(?<whole>\d+)[ -]+)?(?<over>\d+)\/(?<under>[1-9]\d*)\s*(?:in|inch|inches|"|″|)$/.exec(
    typed,
  )?.groups;
  if (parts) {
    return (Number(parts.whole ?? 0) + Number(parts.over) / Number(parts.under)) * MM_PER_INCH;
  }
  const plain = /^(?<number>\d+\.?\d*|\.\d+)\s*(?<unit>mm|cm|in|inch|inches|"|″|)$/.exec(typed)?.groups;
  if (!plain) return Number.NaN;
  const unit = plain.unit || (units === 'metric' ? 'mm' : 'in');
  const mmPerUnit = unit === 'mm' ? 1 : unit === 'cm' ? 10 : MM_PER_INCH;
  return Number(plain.number) * mmPerUnit;
}

/** Nearer than this to a mark of a tape, a length is one of the tape's. */
const ON_THE_MARK_MM = 0.005;

/**
 * A length as a field shows it, for `typedLengthMm` to read again: "27"; "2 1/8", and "2.126" between a tape's marks.
 *
 * @example typedLengthText(53.975, 'imperial') // '2 1/8'
 */
export function typedLengthText(mm: number, units: DisplayUnits): string {
  const nearestMm = Math.round(mm / LEAST_TAPE_MM) * LEAST_TAPE_MM;
  if (units === 'imperial' && Math.abs(mm - nearestMm) < ON_THE_MARK_MM) return tapeInches(mm);
  return String(Number(shortLengthFromMm(mm, units).toFixed(3)));
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
