import { isWithoutNumber, withoutAbove } from '../probing/readings/beyond-scale.ts';
import { isOnAMeter } from '../probing/readings/reading.ts';
import { isOrdinaryByNature } from '../probing/readings/typing-slip.ts';
import { parseDecimal } from '../units/decimal.ts';
import { parseOhms, partsOfOhms } from '../units/typed-ohms.ts';
import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import { type Message, message } from '../words/message.ts';

/** A reading, % or Ω; `isAbove` where the meter showed only that it is more. */
export interface TypedReading {
  raw: number;
  isAbove?: true;
}
/** What was meant by what stood in the value field: a reading, or the ID of a board; or why it is neither. */
export type Typed = TypedReading | { boardCode: string } | { problem: Message };

/** A reading as a meter shows it, % or MΩ. */
export const RAW_EXAMPLE = { pct: 12.4, ohm: 350 } as const;

/** A value as it is written, without its %. */
export const withoutPercent = (text: string, unit: ReadingUnit): string =>
  unit === 'pct' ? text.replace(/\s*%$/, '') : text;

/** Resistances of lumber between these are ordinary: what the published curves hold, and as much again, Ω. */
const ORDINARY_OHMS = { min: 1e5, max: 5e10 } as const;

/** The number in the value field, in the meter's unit; null for an empty field, NaN for none. */
export const parseTyped = (text: string, unit: ReadingUnit): number | null =>
  unit === 'pct' ? parseDecimal(text) : parseOhms(text);

const isLikely = (raw: number, unit: ReadingUnit): boolean =>
  unit === 'pct' ? isOrdinaryByNature(raw) : raw >= ORDINARY_OHMS.min && raw <= ORDINARY_OHMS.max;

/** Whether a number may be meant with thousands or with decimals; 0.125 MΩ is one that can be read in one way only. */
function isTwoNumbers(text: string, unit: ReadingUnit): boolean {
  const number = unit === 'pct' ? text : partsOfOhms(text).number;
  return /^\D?\d{1,3}([.,]\d{3})+$/.test(number) && !(unit === 'ohm' && /^0[.,]\d+$/.test(number));
}

/**
 * Reads a cell of a notebook's page, as written there: "24%" is 24 where the meter shows percent, and ">28" is more than that.
 *
 * @param text  not blank
 * @param unit  of the meter; a plain number in ohms is megohms
 */
export function readCell(text: string, unit: ReadingUnit): TypedReading | { problem: Message } {
  const typedText = text.trim();
  const { text: value, isAbove } = withoutAbove(typedText);
  const number = withoutPercent(value, unit);
  const raw = parseTyped(number, unit) ?? Number.NaN;
  const rawExample = RAW_EXAMPLE[unit];
  if (isTwoNumbers(number, unit))
    return { problem: message('past-round.two-numbers', { typedText, rawExample }) };
  if (isWithoutNumber(typedText)) return { problem: message('past-round.without-number', { typedText }) };
  if (Number.isNaN(raw)) return { problem: message('past-round.not-a-number', { typedText, rawExample }) };
  if (raw < 0) return { problem: message('validation.negative-reading') };
  if (!isOnAMeter(raw)) return { problem: message('validation.zero-reading') };
  return { raw, ...(isAbove && { isAbove }) };
}

/**
 * Reads the value field. A slow label scanner types a board's ID into it as a hand would, so an ID of the round that
 * is no likely reading is that board. No meter shows thousandths, so "1,200" is not guessed at: it may be 1200 or 1.2.
 *
 * @param text       what was typed, not blank
 * @param boardCodes IDs of the boards in the round
 * @param unit       of the meter; a plain number in ohms is megohms
 */
export function readTyped(text: string, boardCodes: readonly string[], unit: ReadingUnit): Typed {
  const typedText = text.trim();
  const { text: value, isAbove } = withoutAbove(typedText);
  const raw = parseTyped(value, unit) ?? Number.NaN;
  const boardCode = boardCodes.find((code) => code.toLowerCase() === typedText.toLowerCase());
  if (boardCode !== undefined && !isLikely(raw, unit)) return { boardCode };
  const rawExample = RAW_EXAMPLE[unit];
  if (isTwoNumbers(value, unit)) return { problem: message('round.two-numbers', { typedText, rawExample }) };
  if (isWithoutNumber(typedText)) return { problem: message('round.without-number', { typedText }) };
  if (Number.isNaN(raw)) return { problem: message('round.not-a-number', { typedText, rawExample }) };
  if (raw < 0) {
    return { problem: message('refusal.nothing-saved', { why: message('validation.negative-reading') }) };
  }
  if (!isOnAMeter(raw)) {
    return { problem: message('refusal.nothing-saved', { why: message('validation.zero-reading') }) };
  }
  return { raw, ...(isAbove && { isAbove }) };
}
