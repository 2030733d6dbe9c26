import { z } from 'zod';

/** The mean air of one month: temperature in °C, relative humidity as a fraction. */
export const airSchema = z.object({
  tempC: z.number().min(-60).max(60),
  rh: z.number().min(0).max(0.99),
  /** What wood follows in that month's hours, % MC, where those are known: they come to another EMC than their mean. */
  emcPct: z.number().min(0).max(30).optional(),
  /** Standard deviation of the true EMC round this one, % MC, where it is an average over a region. */
  emcSdPct: z.number().min(0).max(10).optional(),
});
export type Air = z.infer<typeof airSchema>;

/** A year of air at one place, January first. A heated room may be twelve times the same. */
export const monthlyAirSchema = z.array(airSchema).length(12);
export type MonthlyAir = z.infer<typeof monthlyAirSchema>;

/** How far a place may be from its months, % MC of EMC, root mean square over the year; 0 where they are its own. */
export const roughnessPct = (air: MonthlyAir): number =>
  Math.sqrt(air.reduce((sum, { emcSdPct = 0 }) => sum + emcSdPct ** 2, 0) / air.length);
