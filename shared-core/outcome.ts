import type { Message } from './words/message.ts';

/** It worked: its result. */
export interface Ok<T> {
  ok: true;
  value: T;
}

/** It did not work: why, for a person. */
export interface Failure {
  ok: false;
  problem: Message;
}

/** What may fail without a fault in the code: bytes from the air that make no sense, a form half filled in, too few data. */
export type Outcome<T> = Ok<T> | Failure;
