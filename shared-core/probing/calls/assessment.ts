import { z } from 'zod';
import { messageSchema } from '../../words/message.ts';
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
  /** The average lies in here with a probability of 90 %. */
  lowPct: z.number(),
  highPct: z.number(),
  countedShell: z.number().int(),
  countedCore: z.number().int(),
});
export type Estimate = z.infer<typeof estimateSchema>;

export const callSchema = z.enum(['ready', 'bring-in', 'keep-drying', 'probe-again']);
export type Call = z.infer<typeof callSchema>;

/** The call on a board or a stack; the first reason is the one that decides. */
export const reasonedCallSchema = z.object({
  call: callSchema,
  reasons: z.tuple([messageSchema], messageSchema),
});
export type ReasonedCall = z.infer<typeof reasonedCallSchema>;

/** Everything made of one board's readings in one round. */
export const assessmentSchema = reasonedCallSchema.extend({
  readings: z.array(judgedReadingSchema),
  /** Null where no reading counts. */
  estimate: estimateSchema.nullable(),
});
export type Assessment = z.infer<typeof assessmentSchema>;
