import { z } from 'zod';
import { judgementSchema } from '../probing/calls/judgement.ts';
import { readySchema } from '../probing/calls/ready-in.ts';
import { depthSchema } from '../probing/readings/reading.ts';
import { forecastSchema } from '../wood/drying/forecast.ts';
import { fitReadingSchema } from '../wood/drying/history-fit.ts';
import { warpSchema } from '../wood/movement/warp.ts';
import { endUseSchema } from '../wood/species/end-use.ts';
import { messageSchema } from '../words/message.ts';
import { placeKindSchema, rowIdSchema } from './yard.ts';

/** What a board's history and the air to come make likely, with everything that a plot of it needs. */
export const forecastDetailsSchema = z.object({
  forecast: forecastSchema.omit({ information: true }),
  /** UTC, ms: the instant that the forecast calls today. */
  nowMs: z.number(),
  endUse: endUseSchema.pick({ name: true, minPct: true, maxPct: true, maxShellCorePct: true }),
  thicknessMm: z.number(),
  /** Where it was, oldest first. */
  stays: z.array(z.object({ fromMs: z.number(), placeName: z.string() })).min(1),
  /** In the order of `forecast.places`: where it is, then every other place of the yard. */
  places: z
    .array(
      z.object({
        placeId: rowIdSchema,
        name: z.string(),
        kind: placeKindSchema,
        /** Where it is, as its forecast has it; elsewhere by the readings of all boards there, as the list of places has it, % MC. */
        lowestEmcPct: z.number(),
        /** 1 to 12; null where it is the same all year. */
        lowestEmcMonth: z.number().int().nullable(),
        /** As its judgement has it; null where no day is stated. */
        ready: readySchema.nullable(),
      }),
    )
    .min(1),
  /** EMC of this month's air where it is, as its forecast has it, % MC. */
  emcNowPct: z.number(),
  /** The corrected readings that the forecast is based on. */
  readings: z.array(fitReadingSchema.extend({ depth: depthSchema })),
  /** How many other boards of its stack and log it learned from. */
  learnedFrom: z.number().int().min(0),
  /** Whether it has nothing better than readings that are all questionable: nothing is likely by it. */
  isByQuestionable: z.boolean(),
  /** What was assumed for want of knowing. */
  assumptions: z.array(messageSchema),
  /** Null where the board's sawing, width or shrinkage is not known; `whyNoWarp` then says which. */
  warp: warpSchema.nullable(),
  whyNoWarp: messageSchema.nullable(),
});
export type ForecastDetails = z.infer<typeof forecastDetailsSchema>;

export const boardForecastSchema = z.object({
  /** Null where no forecast can be made. */
  details: forecastDetailsSchema.nullable(),
  /** Then: what is missing, and what to do. */
  whyNot: messageSchema.nullable(),
  judgement: judgementSchema,
});
export type BoardForecast = z.infer<typeof boardForecastSchema>;
