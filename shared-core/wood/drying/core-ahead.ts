import { z } from 'zod';

/** How much wetter the core is than the shell on a day to come. */
export const coreAheadSchema = z.object({
  /** UTC, ms. */
  atMs: z.number(),
  /** Core less shell, likeliest, with one standard deviation, points of MC. */
  differencePct: z.number(),
  sdPct: z.number(),
});
export type CoreAhead = z.infer<typeof coreAheadSchema>;

/** Days ahead that are saved: between them it is nearly a line. */
const DAYS_AHEAD = [0, 7, 14, 30, 60, 90, 120, 180, 270, 365, 545, 730];

/** Of the days of a forecast, which has one step a day, those that are saved. */
export const coreAheadSteps = (steps: number): number[] => DAYS_AHEAD.filter((day) => day < steps);
