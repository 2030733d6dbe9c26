import { z } from 'zod';
import { exclusionSchema } from '../probing/readings/exclusion.ts';
import { isOnAMeter, MOST_TYPED } from '../probing/readings/reading.ts';
import { instantSchema } from '../time.ts';
import { readingUnitSchema } from '../wood/moisture/corrected.ts';
import { type ConstantMassRule, constantMassRules } from '../wood/moisture/oven-dry.ts';
import { messageSchema } from '../words/message.ts';
import { woodTempSchema } from './round.ts';
import { says } from './validation.ts';
import { noteSchema, rowIdSchema } from './yard.ts';

export const MOST_PIECE_LETTERS = 20;

/** A mass on the balance, g. A file may hold one that is refused now. */
export const gramsSchema = z.number();
/** The same as a person gives it: a splinter weighs more than the least. */
export const givenGramsSchema = z.number().min(0.01, says('validation.weight-not-above-zero')).max(100_000);
/** What a meter shows, in % or ohms. */
const givenReadingSchema = z
  .number(says('oven.readings-not-numbers'))
  .min(-MOST_TYPED.pct, says('validation.no-meter-shows'))
  .max(MOST_TYPED.ohm, says('validation.no-meter-shows'))
  .refine(isOnAMeter, says('validation.zero-reading'));
/** Null: typed, from a meter that is not connected. */
const meterIdSchema = rowIdSchema.nullable();

const ruleSchema = z.enum(Object.keys(constantMassRules) as [ConstantMassRule, ...ConstantMassRule[]]);

/** A piece that is read with the meter, weighed, and then dried in the oven. */
export const newOvenCheckSchema = z.object({
  speciesId: z.string().max(60),
  meterId: meterIdSchema,
  /** What the person wrote on it. */
  piece: z.string().trim().min(1, says('validation.piece-missing')).max(MOST_PIECE_LETTERS),
  /** What the meter showed on it, raw. */
  readings: z.array(givenReadingSchema).min(1, says('validation.readings-missing')).max(40),
  unit: readingUnitSchema,
  woodTempC: woodTempSchema,
  wetGrams: givenGramsSchema,
  /** The smallest step of the balance, g. */
  balanceGrams: z.number().min(0.0001).max(100),
  /** The standard whose end condition says when it is dry. */
  rule: ruleSchema,
  note: noteSchema.trim(),
});
export type NewOvenCheck = z.infer<typeof newOvenCheckSchema>;

/** A mass in the course of drying. */
export const ovenWeightSchema = z.object({
  id: rowIdSchema,
  grams: gramsSchema,
  at: instantSchema,
  /** Why it was excluded; null where it counts. */
  excluded: exclusionSchema.nullable(),
});
export type OvenWeight = z.infer<typeof ovenWeightSchema>;

/** A check as it was measured. A file may hold figures that are refused now. */
export const ovenCheckSchema = newOvenCheckSchema.extend({
  readings: z.array(z.number()),
  wetGrams: gramsSchema,
  id: rowIdSchema,
  at: instantSchema,
  /** What the meter's values were corrected by then after a check of it, points or decades of ohms. */
  meterOff: z.number(),
  /** In the order weighed. */
  weights: z.array(ovenWeightSchema),
  excluded: exclusionSchema.nullable(),
});
export type OvenCheck = z.infer<typeof ovenCheckSchema>;

/** A check with what was made of it. */
export const judgedOvenCheckSchema = ovenCheckSchema.extend({
  /** By the newest mass that counts, % MC; null before there is one. */
  ovenDryMcPct: z.number().nullable(),
  /** Whether the standard's end condition is met, so that `ovenDryMcPct` is final. */
  dry: z.boolean(),
  /** How far it is, for a person. */
  status: messageSchema,
  /** The mean of its readings on the meter's own scale at that scale's temperature, %; null where refused. */
  readingPct: z.number().nullable(),
  /** What the readings are corrected to without the checks, % MC; null where refused. */
  publishedMcPct: z.number().nullable(),
});
export type JudgedOvenCheck = z.infer<typeof judgedOvenCheckSchema>;

/** The checks of one wood with one meter, and the line through them. */
export const ownFitSchema = z.object({
  meterId: meterIdSchema,
  /** Null where the readings were typed. */
  meterName: z.string().nullable(),
  checks: z.array(judgedOvenCheckSchema),
  /** Null while too few checks are dry. */
  fit: z
    .object({
      /** reading = a MC + b */
      a: z.number(),
      b: z.number(),
      model: z.enum(['line', 'offset']),
      /** Error of a piece that the fit has not seen, % MC, one sigma. */
      standardErrorPct: z.number(),
      /** What the published correction is wrong by on the same pieces, % MC; null where it has none. */
      publishedErrorPct: z.number().nullable(),
      worthUsing: z.boolean(),
      /** By check: what the fit without it says of it, less its oven-dry MC, % MC. */
      leftOut: z.array(z.object({ checkId: rowIdSchema, errorPct: z.number() })),
    })
    .nullable(),
  /** Whether the fit is worth using and why, or what is missing for one. */
  status: messageSchema,
  /** What the person chose. */
  inUse: z.boolean(),
  /** Whether readings are corrected by it: chosen, and worth using. */
  applied: z.boolean(),
  /** The correction without the checks, over the readings seen, to draw: on the meter's scale, and % MC. */
  published: z.array(z.object({ readingPct: z.number(), mcPct: z.number() })),
});
export type OwnFit = z.infer<typeof ownFitSchema>;
