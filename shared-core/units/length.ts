import { MM_PER_INCH } from '../measures.ts';

/** How lengths and temperatures are shown and typed. Inside, everything is SI. */
export type DisplayUnits = 'metric' | 'imperial';

/** A thickness, width or depth as a person types it in a field: mm, or inches with decimals. */
export const shortLengthUnit = (units: DisplayUnits): string => (units === 'metric' ? 'mm' : 'in');
export const shortLengthFromMm = (mm: number, units: DisplayUnits): number =>
  units === 'metric' ? mm : Math.round((mm / MM_PER_INCH) * 1000) / 1000;
export const mmFromShortLength = (typed: number, units: DisplayUnits): number =>
  units === 'metric' ? typed : typed * MM_PER_INCH;

/** A length along a board as a person types it in a field: meters, or feet with decimals. */
export const longLengthUnit = (units: DisplayUnits): string => (units === 'metric' ? 'm' : 'ft');
