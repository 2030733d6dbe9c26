import { z } from 'zod';
import { assessmentSchema, verdictSchema } from '../probing/assessment.ts';
import { spotSchema } from '../probing/reading.ts';
import { correctedSchema, readingUnitSchema } from '../wood/corrected.ts';
import { rowIdSchema } from './yard.ts';

/** Wood temperature, °C, as a person would measure it; null when not known. */
export const woodTempSchema = z.number().min(-40).max(80).nullable();

export const plannedSpotSchema = z.object({ label: z.string(), spot: spotSchema });
export type PlannedSpot = z.infer<typeof plannedSpotSchema>;

/** One board within a round: its plan of spots, what was read so far and what it amounts to. */
export const roundBoardSchema = z.object({
  boardId: rowIdSchema,
  code: z.string(),
  woodName: z.string(),
  thicknessMm: z.number(),
  lengthMm: z.number().nullable(),
  /** What the plan could not do, for a person; null when it is as it should be. */
  planRemark: z.string().nullable(),
  plan: z.array(plannedSpotSchema),
  woodTempC: woodTempSchema,
  /** Whether this board has a temperature of its own in this round. */
  ownTemp: z.boolean(),
  /** Null until something was read. */
  assessment: assessmentSchema.nullable(),
});
export type RoundBoard = z.infer<typeof roundBoardSchema>;

/** The spot that the next reading will belong to; `spotIndex` null when the board's plan is filled. */
export const aimSchema = z.object({
  boardIndex: z.number().int().min(0),
  spotIndex: z.number().int().min(0).nullable(),
});
export type Aim = z.infer<typeof aimSchema>;

export const roundSummarySchema = z.object({
  boards: z.number().int(),
  probed: z.number().int(),
  verdicts: z.record(verdictSchema, z.number().int()),
  sentence: z.string(),
});
export type RoundSummary = z.infer<typeof roundSummarySchema>;

export const roundStateSchema = z.object({
  id: rowIdSchema,
  stackId: rowIdSchema,
  stackName: z.string(),
  placeName: z.string(),
  useName: z.string(),
  startedAt: z.iso.datetime(),
  finishedAt: z.iso.datetime().nullable(),
  woodTempC: woodTempSchema,
  boards: z.array(roundBoardSchema),
  aim: aimSchema,
  summary: roundSummarySchema,
});
export type RoundState = z.infer<typeof roundStateSchema>;

/** What the window needs to redraw after something happened in a round. */
export const roundChangeSchema = z.object({
  roundId: rowIdSchema,
  aim: aimSchema,
  /** The one board that changed, or null when only the aim did. */
  board: roundBoardSchema.nullable(),
  summary: roundSummarySchema,
  /** The reading that was just kept, for the sound and the flash; null otherwise. */
  keptReadingId: rowIdSchema.nullable(),
});
export type RoundChange = z.infer<typeof roundChangeSchema>;

/** A value that settled and was to be kept by itself could not be: what was wrong, what was kept, what to do. */
export const valueNotKeptSchema = z.object({ roundId: rowIdSchema, sentence: z.string() });
export type ValueNotKept = z.infer<typeof valueNotKeptSchema>;

/** The live value, at most some 20 times a second whatever the meter's rate. */
export const liveSchema = z.object({
  /** Milliseconds since the epoch of the newest sample. */
  atMs: z.number(),
  raw: z.number().nullable(),
  unit: readingUnitSchema,
  /** The newest value corrected for the board aimed at; null outside a round or with pins out. */
  corrected: correctedSchema.nullable(),
  phase: z.enum(['pins-out', 'drifting', 'settled']),
  /** Spread of the values in the settling window, in the meter's unit; null with pins out. */
  spread: z.number().nullable(),
  /** Every value since the last event, oldest first, for the trace. */
  trace: z.array(z.number().nullable()),
});
export type Live = z.infer<typeof liveSchema>;
