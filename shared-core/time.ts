import { z } from 'zod';

/** Lengths of time, in the units that code counts in. */
export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;
export const DAY_S = DAY_MS / 1000;
/** Mean month and year of the Gregorian calendar, days. */
export const MONTH_DAYS = 30.44;
export const YEAR_DAYS = 365.25;

/** An instant in UTC ms as `formats` and facts have it. */
export const isoOf = (atMs: number): string => new Date(atMs).toISOString();

/**
 * An instant as every request and file has it: UTC with milliseconds, of a year with four digits, so that a list sorted by
 * the texts is in the order of time. Other ways to write one ("08:00:00Z", "10:00:00+02:00") are made into that. Code
 * compares `Date.parse` of two all the same.
 */
export const instantSchema = z.iso
  .datetime({ offset: true })
  .transform((written) => new Date(written).toISOString())
  .refine((instant) => /^(19|[2-9]\d)\d\d-/.test(instant));
