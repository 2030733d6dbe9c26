import { Conflict, Refusal } from '../../shared-core/contract/answer.ts';
import type { EventData, EventName } from '../../shared-core/contract/events.ts';
import type { Topic } from '../../shared-core/contract/topics.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import type { Yard, YardReader } from '../store/yard.ts';
import type { DoAct } from './acting.ts';
import type { Delays } from './delays.ts';

/** What a query is answered with: the open yard over a connection that cannot write, and the clock. */
export interface QueryContext {
  /** @throws Refusal while no yard is open, that says why */
  yard(): YardReader;
  /** Now, UTC, ISO 8601. */
  now(): string;
}

/** What commands and background work are given. */
export interface AppContext extends QueryContext {
  yard(): Yard;
  /** Milliseconds on a clock that only runs forward. */
  monotonicMs(): number;
  /** Whether the yard can be written to by whoever cannot wait; a command that cannot write waits until it can. */
  mayWrite(): boolean;
  /** Writes an error that answers no request to the fault log. */
  reportFault(error: unknown): void;
  /** Says what background work changed. What a command changed follows from the contract. Never throws. */
  changed(topics: Iterable<Topic>): void;
  /** Does an act, whether a window asked for it or nobody. */
  act: DoAct;
  /** Does what follows from the act under way once that is on disk; at once where none is. */
  afterwards(work: () => void): void;
  /** Does what nobody waits for once the request under way is answered, and before the next is. */
  onceAnswered(work: () => void): void;
  /** Work in the background that cannot run now. */
  delays: Delays;
  /** After how long such work is tried again, ms. */
  retryAfterMs: number;
  /** Tells one window. */
  emitTo<N extends EventName>(window: string, name: N, data: EventData<N>): void;
  /** Tells all windows but one. */
  emitToOthers<N extends EventName>(window: string, name: N, data: EventData<N>): void;
}

/**
 * The record that a request named.
 * @param what  what it is, as the sentence chooses by it
 * @throws Refusal where the yard has no such record
 */
export function orRefuse<T>(found: T | undefined, what: string): T {
  if (found === undefined) throw new Refusal(message('refusal.not-found', { what }));
  return found;
}

/**
 * What a store's `edit` answers with: nothing where it was done.
 * @throws Conflict where the record is at another version than the edit was based on
 */
export function orConflict(current: object | null): void {
  if (current !== null) throw new Conflict(current);
}

/** Runs a write and refuses it where the store knows the name already. */
export function refusingDuplicates<T>(problem: Message, write: () => T): T {
  try {
    return write();
  } catch (error) {
    const code = String((error as { code?: unknown }).code ?? '');
    if (/^SQLITE_CONSTRAINT_(UNIQUE|PRIMARYKEY)$/.test(code)) throw new Refusal(problem);
    throw error;
  }
}
