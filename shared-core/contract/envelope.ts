import { z } from 'zod';

/** What every request says beside its input, checked once for all. */
export const envelopeSchema = z.object({
  /** The yard that the window shows; null while it knows of none. */
  yard: z.uuid().nullable(),
  /** Of a command, the act it performs: sent again, it has the same. Null of a query. */
  act: z.uuid().nullable(),
});
export type Envelope = z.infer<typeof envelopeSchema>;
