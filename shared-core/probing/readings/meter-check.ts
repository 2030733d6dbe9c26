import type { MeterScale, ReadingUnit } from '../../wood/moisture/corrected.ts';
import { mcAtLog10Ohms } from '../../wood/moisture/resistance.ts';
import { resistanceCurves } from '../../wood/moisture/resistance-curves.ts';
import { basisOfScale } from '../../wood/moisture/scale.ts';
import { atWoodTempPct, james } from '../../wood/moisture/temperature.ts';

/**
 * Whether a meter is right, by a test block or a resistor between its pins. How far it is off is in points of a meter
 * that shows %, and in decades of one that shows ohms, where a decade is about 3 points: the same factor at any value.
 */

/** What a meter is checked against. */
export interface TestValue {
  /** % as the block's label says at the meter's setting, or Ω. */
  expected: number;
  unit: ReadingUnit;
}

/** A meter further off than this is not corrected: its battery, pins or setting are wrong. Common practice, no source. */
export const MOST_OFF = { pct: 3, ohm: 1 } as const;

/**
 * What a meter shows there if it is right, in its unit.
 *
 * @returns null where nobody can say: of a % in ohms, of ohms on a scale without a curve, and beyond the ends of the curve
 */
export function rightValue(
  { expected, unit }: TestValue,
  meter: { unit: ReadingUnit; scale: MeterScale },
): number | null {
  if (unit === meter.unit) return expected;
  const { curveId, tempC } = basisOfScale(meter.scale);
  const curve = curveId === null ? undefined : resistanceCurves.get(curveId);
  if (meter.unit === 'ohm' || meter.scale.kind === 'unknown' || curve === undefined) return null;
  const { mcPct, outsideCurve } = mcAtLog10Ohms(curve, Math.log10(expected));
  // The scale is right at one wood temperature, and the curve was measured at another.
  return outsideCurve ? null : atWoodTempPct(james, mcPct, tempC, curve.tempC);
}

/** How far off a shown value is: above 0 where the meter shows more, points or decades. */
export const offBy = (unit: ReadingUnit, { right, shown }: { right: number; shown: number }): number =>
  // The ratio of two extremes may be beyond what a number can be.
  unit === 'pct' ? shown - right : Math.log10(shown) - Math.log10(right);

/** How far off is as a person reads it: points, or a share of the ohms, both above 0 where the meter shows more. */
export const offShown = (unit: ReadingUnit, off: number): number => (unit === 'pct' ? off : 10 ** off - 1);

/** What a meter that is off by so much (points or decades) would show if it were right. */
export const withoutOff = (unit: ReadingUnit, shown: number, off: number): number =>
  unit === 'pct' ? shown - off : shown / 10 ** off;

/** How far off is still right, points or decades. @param tolerance  points, or a share of the ohms (0.01 is 1 %) */
export const allowedOff = (unit: ReadingUnit, tolerance: number): number =>
  unit === 'pct' ? tolerance : Math.log10(1 + tolerance);

/** Values that are still right, in the meter's unit. */
export function rightRange(
  unit: ReadingUnit,
  right: number,
  tolerance: number,
): { from: number; to: number } {
  const allowed = allowedOff(unit, tolerance);
  return { from: withoutOff(unit, right, allowed), to: withoutOff(unit, right, -allowed) };
}

/** `too-far`: too far off to be corrected. */
export type CheckState = 'right' | 'off' | 'too-far';

/** Half a unit of the tenth digit: 12.6 − 12.1 is no more than 0.5. */
const ROUNDING = 1e-9;

/**
 * What a check says of the meter.
 *
 * @param by  what its values are corrected by already, points or decades
 */
export function checkState(
  unit: ReadingUnit,
  check: { right: number; shown: number; tolerance: number },
  by: number,
): CheckState {
  const off = offBy(unit, check);
  if (Math.abs(off - by) <= allowedOff(unit, check.tolerance) + ROUNDING) return 'right';
  return Math.abs(off) > MOST_OFF[unit] ? 'too-far' : 'off';
}
