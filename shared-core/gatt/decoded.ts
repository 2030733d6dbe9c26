import type { Failure, Ok } from '../outcome.ts';
import type { Message } from '../words/message.ts';

export interface NoValue extends Failure {
  /** Valid bytes that mean the meter has no reading now, as with its pins in the air. */
  noReading: boolean;
}
/** An `Outcome` that also tells bytes that mean "no reading" from bytes that cannot be read. */
export type DecodedValue = Ok<number> | NoValue;

export const refused = (problem: Message): NoValue => ({ ok: false, noReading: false, problem });
export const none = (problem: Message): NoValue => ({ ok: false, noReading: true, problem });
