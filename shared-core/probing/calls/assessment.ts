import { z } from 'zod';
import { judgedReadingSchema } from '../readings/reading.ts';

/** The state of a board as one round found it, % MC. */
export const estimateSchema = z.object({
  averagePct: z.number(),
  shellPct: z.number().nullable(),
  corePct: z.number().nullable(),
  /** Core less shell. */
  differencePct: z.number().nullable(),
  /** Standard uncertainty of `averagePct`: meter, species correction and scatter between spots. */
  standardUncertaintyPct: z.number(),
  /** The average lies in here with 90 % probability. */
  lowPct: z.number(),
  highPct: z.number(),
  countedShell: z.number().int(),
  countedCore: z.number().int(),
});
export type Estimate = z.infer<typeof estimateSchema>;

export const callSchema = z.enum(['ready', 'bring-in', 'keep-drying', 'probe-again']);
export type Call = z.infer<typeof callSchema>;

/** The verdict on a board with its reasons; the first reason is the one that decides. */
export const reasonedCallSchema = z.object({
  call: callSchema,
  reasons: z.array(z.string()).min(1),
});
export type ReasonedCall = z.infer<typeof reasonedCallSchema>;

/** Everything made of one board's readings in one round. */
export const assessmentSchema = z.object({
  readings: z.array(judgedReadingSchema),
  estimate: estimateSchema.nullable(),
  call: reasonedCallSchema,
});
export type Assessment = z.infer<typeof assessmentSchema>;
