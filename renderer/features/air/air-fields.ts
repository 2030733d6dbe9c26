import { z } from 'zod';

/** A room as most are, to begin with. */
export const USUAL_C = 20;

// The EMC formula's range (see `emcPct`); perfectly dry air has no dew point, and is nowhere.
export const airTempSchema = z.number().min(-60).max(60);
export const humidityPctSchema = z.number().min(1).max(99);

export const airSchema = z.object({
  tempC: airTempSchema,
  rhPct: humidityPctSchema,
  targetPct: z.number().min(0),
});

/** What was typed into a field; null where it is missing or out of range. */
export const valid = (field: keyof typeof airSchema.shape, typed: number | null): number | null =>
  airSchema.shape[field].safeParse(typed).data ?? null;
