/** Lengths of time, in the units that code counts in. */
export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;
export const DAY_S = DAY_MS / 1000;
/** Mean month and year of the Gregorian calendar, days. */
export const MONTH_DAYS = 30.44;
export const YEAR_DAYS = 365.25;

/** An instant in UTC ms as `formats` and facts have it. */
export const isoOf = (atMs: number): string => new Date(atMs).toISOString();
