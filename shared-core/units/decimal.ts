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
