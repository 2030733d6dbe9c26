import { z } from 'zod';
import { type Message, message, messageSchema } from '../words/message.ts';

/** What comes back over the wire for one request. */
export const answerSchema = z.discriminatedUnion('ok', [
  z.object({ ok: z.literal(true), output: z.unknown() }),
  z.object({
    ok: z.literal(false),
    problem: messageSchema,
    /** Of an edit that another one came before: the record as it is now; of several, those that changed. */
    current: z.unknown().optional(),
    /** Of an act that may have been done all the same: sent again with the same id, it is not done twice. */
    mayBeDone: z.literal(true).optional(),
  }),
]);
export type Answer = z.infer<typeof answerSchema>;

/**
 * An error for a person: what was wrong, what was saved, what to do next. The sentence is made where it is shown.
 * Anything else that is thrown is a fault of ours: it goes to the log, and the person reads only that something failed.
 */
export class Refusal extends Error {
  override name = 'Refusal';
  readonly problem: Message;
  constructor(problem: Message) {
    super(problem.code);
    this.problem = problem;
  }
}

/** An edit that was based on another version than the record, or some of the records, has now. Nothing was changed. */
export class Conflict extends Refusal {
  override name = 'Conflict';
  readonly current: unknown;
  /** @param current  the record, or the records, as they are now */
  constructor(current: unknown, problem = message('conflict.edited-meanwhile')) {
    super(problem);
    this.current = current;
  }
}
