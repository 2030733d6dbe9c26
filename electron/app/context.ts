import { Refusal } from '../../shared-core/contract/answer.ts';
import type { EventData, EventName } from '../../shared-core/contract/events.ts';
import type { Yard } from '../store/yard.ts';

/** What every use case is given: the open yard, the clock and a way to tell the window. */
export interface AppContext {
  /** @throws Refusal while no yard is open, with the sentence that says why */
  yard(): Yard;
  /** Whether the yard can be written to by whoever cannot wait; a call that cannot be is made again when it can. */
  mayWrite(): boolean;
  /** Now, UTC, ISO 8601. */
  now(): string;
  /** Writes an error that no call can answer for to the log. */
  reportFault(error: unknown): void;
  emit<N extends EventName>(name: N, data: EventData<N>): void;
}

/**
 * The thing that a call named, or a sentence saying that it is not there.
 * @throws Refusal
 */
export function orRefuse<T>(found: T | undefined, what: string): T {
  if (found === undefined) {
    throw new Refusal(
      `There is no such ${what} in this yard. Nothing was changed. Go back to the list and choose again.`,
    );
  }
  return found;
}

/** Runs a write and turns a clash of names, which the store refuses, into a sentence. */
export function refusingDuplicates<T>(sentence: string, write: () => T): T {
  try {
    return write();
  } catch (error) {
    if ((error as { code?: unknown }).code === 'SQLITE_CONSTRAINT_UNIQUE') throw new Refusal(sentence);
    throw error;
  }
}
