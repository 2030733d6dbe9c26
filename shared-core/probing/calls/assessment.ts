import { z } from 'zod';
import { messageSchema } from '../../words/message.ts';
import { estimateSchema } from '../readings/estimate.ts';
import { judgedReadingSchema } from '../readings/reading.ts';

export const callSchema = z.enum(['ready', 'bring-in', 'keep-drying', 'too-dry', 'probe-again']);
export type Call = z.infer<typeof callSchema>;

/** How many spots of a board's plan are read. */
export const spotsReadSchema = z.object({ read: z.number().int(), planned: z.number().int() });
export type SpotsRead = z.infer<typeof spotsReadSchema>;

/** The call on a board; the first reason is the one that decides. */
export const reasonedCallSchema = z.object({
  /** Null where too few spots are read for one. */
  call: callSchema.nullable(),
  reasons: z.tuple([messageSchema], messageSchema),
});
export type ReasonedCall = z.infer<typeof reasonedCallSchema>;
/** One that is made. */
export type MadeCall = ReasonedCall & { call: Call };

/** Everything made of one board's readings in one round. */
export const assessmentSchema = reasonedCallSchema.extend({
  readings: z.array(judgedReadingSchema),
  /** Null where there is a call. */
  spotsRead: spotsReadSchema.nullable(),
  /** Of all readings that count; null where none does. */
  estimate: estimateSchema.nullable(),
  /** Of those that are not questionable; null where there are none, or the others would change the call. */
  reliable: estimateSchema.nullable(),
});
export type Assessment = z.infer<typeof assessmentSchema>;
