import { MM_PER_INCH, tapeInches } from './tape.ts';

/** How lengths and temperatures are shown and typed. Inside, everything is SI. */
export type DisplayUnits = 'metric' | 'imperial';

/** A thickness, width or depth: "27 mm", "1 1/16 in". A metric one under 10 mm keeps half millimetres. */
export function shortLengthText(mm: number, units: DisplayUnits): string {
  if (units === 'imperial') return `${tapeInches(mm)} in`;
  return mm < 10 ? `${Math.round(mm * 2) / 2} mm` : `${Math.round(mm)} mm`;
}

/** A length along a board: "60 cm", "2.4 m"; "24 in", "7 ft 10 in". */
export function longLengthText(mm: number, units: DisplayUnits): string {
  if (units === 'metric') return mm < 1000 ? `${Math.round(mm / 10)} cm` : `${(mm / 1000).toFixed(1)} m`;
  const inches = Math.round(mm / MM_PER_INCH);
  if (inches < 36) return `${inches} in`;
  const rest = inches % 12;
  return rest === 0 ? `${inches / 12} ft` : `${Math.floor(inches / 12)} ft ${rest} in`;
}

/** A thickness, width or depth as a person types it in a field: mm, or inches with decimals. */
export const shortLengthUnit = (units: DisplayUnits): string => (units === 'metric' ? 'mm' : 'in');
export const shortLengthFromMm = (mm: number, units: DisplayUnits): number =>
  units === 'metric' ? mm : Math.round((mm / MM_PER_INCH) * 1000) / 1000;
export const mmFromShortLength = (typed: number, units: DisplayUnits): number =>
  units === 'metric' ? typed : typed * MM_PER_INCH;

/** A length along a board as a person types it in a field: metres, or feet with decimals. */
export const longLengthUnit = (units: DisplayUnits): string => (units === 'metric' ? 'm' : 'ft');
export const longLengthFromMm = (mm: number, units: DisplayUnits): number =>
  units === 'metric' ? mm / 1000 : Math.round((mm / MM_PER_INCH / 12) * 100) / 100;
export const mmFromLongLength = (typed: number, units: DisplayUnits): number =>
  units === 'metric' ? typed * 1000 : typed * 12 * MM_PER_INCH;

/** A change of a thickness or width, finer than a tape shows: "−3.2 mm", "+0.04 in". */
export function changeText(mm: number, units: DisplayUnits): string {
  const size = Math.abs(mm);
  const shown = units === 'metric' ? `${size.toFixed(1)} mm` : `${(size / MM_PER_INCH).toFixed(2)} in`;
  return `${mm < 0 ? '−' : '+'}${shown}`;
}
