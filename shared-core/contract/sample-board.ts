import { z } from 'zod';
import { exclusionSchema } from '../probing/readings/exclusion.ts';
import { instantSchema } from '../time.ts';
import { messageSchema } from '../words/message.ts';
import { givenGramsSchema, gramsSchema } from './oven-checks.ts';
import { says } from './validation.ts';
import { rowIdSchema } from './yard.ts';

/** A board's mass, kg. A file may hold one that is refused now. */
const boardKgSchema = z.number();
/** The same as a person gives it. */
export const givenBoardKgSchema = z.number().min(0.01, says('validation.weight-not-above-zero')).max(5000);

/** A cut with its sections, or one mass of the board. */
export const sampleRecordSchema = z.object({ what: z.enum(['cut', 'weight']), id: rowIdSchema });
export type SampleRecord = z.infer<typeof sampleRecordSchema>;

export const newSampleCutSchema = z.object({
  boardId: rowIdSchema,
  /** The board's mass when the sections were cut beside it, kg. */
  boardKg: givenBoardKgSchema,
  /** Each section's mass at once, g. */
  wetGrams: z.array(givenGramsSchema).min(1, says('validation.section-weight-missing')).max(10),
  at: instantSchema,
});
export type NewSampleCut = z.infer<typeof newSampleCutSchema>;

/** A section across the board, and what it weighed out of the oven; null while it is drying. */
export const sampleSectionSchema = z.object({
  id: rowIdSchema,
  wetGrams: gramsSchema,
  dryGrams: gramsSchema.nullable(),
});
export type SampleSection = z.infer<typeof sampleSectionSchema>;

export const sampleCutSchema = z.object({
  id: rowIdSchema,
  boardKg: boardKgSchema,
  at: instantSchema,
  sections: z.array(sampleSectionSchema),
  excluded: exclusionSchema.nullable(),
});
export type SampleCut = z.infer<typeof sampleCutSchema>;

export const sampleWeightSchema = z.object({
  id: rowIdSchema,
  kg: boardKgSchema,
  at: instantSchema,
  excluded: exclusionSchema.nullable(),
});
export type SampleWeight = z.infer<typeof sampleWeightSchema>;

/** A board followed by its mass: what was weighed, and the moisture content that this tells. */
export const sampleBoardStateSchema = z.object({
  boardId: rowIdSchema,
  /** Oldest first. */
  cuts: z.array(
    sampleCutSchema.extend({
      /** Null while a section is drying, or where it is excluded. */
      estimate: z
        .object({
          ovenDryKg: z.number(),
          mcWhenCutPct: z.number(),
          /** From the scatter of the sections, % MC, one sigma; null for a single one. */
          standardErrorPct: z.number().nullable(),
        })
        .nullable(),
    }),
  ),
  /** Oldest first. */
  weights: z.array(
    sampleWeightSchema.extend({
      /** By the newest cut before it; null where none tells the oven-dry mass. */
      mcPct: z.number().nullable(),
    }),
  ),
  /** What the board may weigh at the target of its use; null before its oven-dry weight is known. */
  target: z.object({ endUseName: z.string(), minKg: z.number(), maxKg: z.number() }).nullable(),
  /** Its MC by weight, or what to do next. */
  status: messageSchema,
});
export type SampleBoardState = z.infer<typeof sampleBoardStateSchema>;
