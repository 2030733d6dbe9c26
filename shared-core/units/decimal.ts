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
