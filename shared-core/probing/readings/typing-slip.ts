import { median } from '../../wood/maths/robust.ts';
import type { JudgedReading } from './reading.ts';

/** Below and above these no pin reading of lumber is ordinary, so that a slip is likelier, % MC. */
export const SLIP_BELOW_PCT = 5;
export const SLIP_ABOVE_PCT = 60;
/** Where no other reading tells, the intended value is looked for in here, % MC. */
const ORDINARY = { min: 5, max: 40 };

/**
 * The value that a person meant who typed `raw` with the decimal point lost or misplaced (126, 1.26 or 1260 for
 * 12.6), in the meter's %; null where it does not look like that.
 *
 * @param raw    the typed value, %
 * @param others raw % values of the board's other readings in use, or what the last round found; may be empty
 */
export function intendedValue(raw: number, others: readonly number[]): number | null {
  if (isOrdinaryByNature(raw)) return null;
  // A board that is wet through may truly read above 60 %: then no tenth of it is like its others.
  const meant = [raw / 10, raw / 100, raw * 10, raw * 100].find((value) =>
    others.length > 0 ? isOrdinaryByNature(value) && isLike(value, median(others)) : isOrdinary(value),
  );
  return meant === undefined ? null : Math.round(meant * 100) / 100;
}

/** Whether a pin reading of lumber, %, may well be that by nature. */
export const isOrdinaryByNature = (raw: number): boolean => raw >= SLIP_BELOW_PCT && raw <= SLIP_ABOVE_PCT;

const isLike = (value: number, other: number): boolean => value > 0.6 * other && value < 1.67 * other;
const isOrdinary = (value: number): boolean => value >= ORDINARY.min && value <= ORDINARY.max;

/** The value that was meant where a reading is a typing slip, in its unit; null where it is none, or excluded. */
export function meantBy({
  excluded,
  suspicions,
}: Pick<JudgedReading, 'excluded' | 'suspicions'>): number | null {
  const facts = suspicions.find(({ rule }) => rule === 'typing-slip')?.why.facts;
  const meant = facts?.rawMeantPct ?? facts?.rawMeantOhm;
  return excluded === null && typeof meant === 'number' ? meant : null;
}
