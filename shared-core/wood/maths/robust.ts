/**
 * Middle value; the mean of the two middle ones of an even number.
 *
 * @throws RangeError when there are no values
 */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('The median of no values does not exist.');
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/**
 * Median absolute deviation from the median, scaled to the standard deviation of normally distributed values
 * (1 / Φ⁻¹(3/4) = 1.4826): a spread that one or two wild readings cannot move.
 *
 * Source: B. Iglewicz and D. C. Hoaglin, How to Detect and Handle Outliers (ASQC, 1993), from memory; theirs too is
 * the usual limit of 3.5 on the score made with it.
 * @throws RangeError when there are no values
 */
export function robustSpread(values: readonly number[]): number {
  const center = median(values);
  return 1.4826 * median(values.map((value) => Math.abs(value - center)));
}
