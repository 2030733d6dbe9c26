import { z } from 'zod';

/** The mean air of one month: temperature in °C, relative humidity as a fraction. */
export const airSchema = z.object({
  tempC: z.number().min(-60).max(60),
  rh: z.number().min(0).max(0.99),
});
export type Air = z.infer<typeof airSchema>;

/** A year of air at one place, January first. A heated room may be twelve times the same. */
export const monthlyAirSchema = z.array(airSchema).length(12);
export type MonthlyAir = z.infer<typeof monthlyAirSchema>;
