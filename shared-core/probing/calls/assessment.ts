import { z } from 'zod';
import { messageSchema } from '../../words/message.ts';
import { estimateSchema } from '../readings/estimate.ts';
import { judgedReadingSchema } from '../readings/reading.ts';

export const callSchema = z.enum(['ready', 'bring-in', 'keep-drying', 'too-dry', 'probe-again']);
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
  /** Of all readings that count; null where none does. */
  estimate: estimateSchema.nullable(),
  /** Of those that are not questionable; null where there are none, or the others would change the call. */
  reliable: estimateSchema.nullable(),
});
export type Assessment = z.infer<typeof assessmentSchema>;
