/**
 * How far a moisture content is above another as both are shown, to a tenth, in points: what a person reads adds up.
 * @example shownPoints(13.34, 12.66) // 0.6, between 13.3% and 12.7%
 */
export const shownPoints = (pct: number, fromPct: number): number =>
  (Math.round(10 * pct) - Math.round(10 * fromPct)) / 10;

/**
 * Whether a moisture content is above a limit as both are shown, so that no 8.0% is too wet for 6 to 8%.
 * @example isShownAbove(8.04, 8) // false
 */
export const isShownAbove = (pct: number, limitPct: number): boolean => shownPoints(pct, limitPct) > 0;
