import { isOnAMeter } from '../probing/readings/reading.ts';
import { isOrdinaryByNature } from '../probing/readings/typing-slip.ts';
import { parseDecimal } from '../units/decimal.ts';
import { type Message, message } from '../words/message.ts';

/** What was meant by what stood in the value field: a reading, %, or the ID of a board; or why it is neither. */
export type Typed = { raw: number } | { boardCode: string } | { problem: Message };

/** A reading as a meter shows it. */
const EXAMPLE_PCT = 12.4;

/**
 * Reads the value field. A slow label scanner types a board's ID into it as a hand would, so an ID of the round that
 * is no likely reading is that board. No meter shows thousandths, so "1,200" is not guessed at: it may be 1200 or 1.2.
 *
 * @param text       what was typed, not blank
 * @param boardCodes IDs of the boards in the round
 */
export function readTyped(text: string, boardCodes: readonly string[]): Typed {
  const typedText = text.trim();
  const raw = parseDecimal(typedText) ?? Number.NaN;
  const boardCode = boardCodes.find((code) => code.toLowerCase() === typedText.toLowerCase());
  if (boardCode !== undefined && !isOrdinaryByNature(raw)) return { boardCode };
  if (/^\D?\d{1,3}([.,]\d{3})+$/.test(typedText)) {
    return { problem: message('round.two-numbers', { typedText, rawExample: EXAMPLE_PCT }) };
  }
  if (Number.isNaN(raw))
    return { problem: message('round.not-a-number', { typedText, rawExample: EXAMPLE_PCT }) };
  if (raw < 0) {
    return { problem: message('refusal.nothing-saved', { why: message('validation.negative-reading') }) };
  }
  if (!isOnAMeter(raw)) {
    return { problem: message('refusal.nothing-saved', { why: message('validation.zero-reading') }) };
  }
  return { raw };
}
