import { MM_PER_INCH } from '../measures.ts';

/** How lengths and temperatures are shown and typed. Inside, everything is SI. */
export type DisplayUnits = 'metric' | 'imperial';

/** The United States with its territories, Liberia and Myanmar (from memory). */
const IMPERIAL_REGIONS = ['US', 'PR', 'GU', 'VI', 'AS', 'MP', 'UM', 'LR', 'MM'];

/** What people measure in where a locale is from: "en-US". */
export const unitsOfRegion = (locale: string): DisplayUnits =>
  IMPERIAL_REGIONS.includes(new Intl.Locale(locale).maximize().region ?? '') ? 'imperial' : 'metric';

/** A thickness, width or depth as a person types it in a field: mm, or inches with decimals. */
export const shortLengthUnit = (units: DisplayUnits): string => (units === 'metric' ? 'mm' : 'in');
export const shortLengthFromMm = (mm: number, units: DisplayUnits): number =>
  units === 'metric' ? mm : Math.round((mm / MM_PER_INCH) * 1000) / 1000;

/** A length along a board as a person types it in a field: meters, or feet with decimals. */
export const longLengthUnit = (units: DisplayUnits): string => (units === 'metric' ? 'm' : 'ft');
