import { type Message, message } from '../words/message.ts';

/**
 * The number a person typed, with a point or a comma before the decimals: "12.4", "12,4", " -3 ".
 *
 * @returns null for an empty field, NaN for what is not a number ("1.2.3", "twelve", "1e3"), or has more digits than any measure
 */
export function parseDecimal(text: string): number | null {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (!/^[-+−]?(\d+([.,]\d*)?|[.,]\d+)$/.test(trimmed)) return Number.NaN;
  const typed = Number(trimmed.replace(',', '.').replace('−', '-'));
  return Number.isFinite(typed) ? typed : Number.NaN;
}

/**
 * What is wrong with "1,200", which may have thousands or decimals. With the person's own decimal mark it has decimals.
 *
 * @param text  may have words around the number: "1,200 mm"
 * @returns     null where no number in it could mean two
 */
export function twoNumbersIn(text: string, decimalMark: string): Message | null {
  const [, before = '', mark, after = ''] = /(?<![\d.,])([1-9]\d{0,2})([.,])(\d{3})(?!\d)/.exec(text) ?? [];
  if (mark === undefined || mark === decimalMark) return null;
  return message('validation.two-numbers', {
    typedText: text.trim(),
    rawWhole: Number(before + after),
    rawDecimal: Number(`${before}.${after}`),
  });
}

/**
 * Numbers that a person typed in a row: "12.4 12,6; 13".
 *
 * @returns NaN for a word that is not a number
 */
export const parseDecimals = (text: string): number[] =>
  text
    .split(/[\s;]+/)
    .map((word) => word.replace(/,$/, ''))
    .filter((word) => word !== '')
    .map((word) => parseDecimal(word) ?? Number.NaN);
