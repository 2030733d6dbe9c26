import { z } from 'zod';

/** What comes back over the wire for one call. */
export const answerSchema = z.discriminatedUnion('ok', [
  z.object({ ok: z.literal(true), output: z.unknown() }),
  z.object({ ok: z.literal(false), sentence: z.string() }),
]);
export type Answer = z.infer<typeof answerSchema>;

/**
 * An error whose message is a sentence for a person: what was wrong, what was kept, what to do next.
 * Anything else that is thrown is a fault of ours and is shown as such.
 */
export class Refusal extends Error {
  override name = 'Refusal';
}
