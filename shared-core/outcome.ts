import type { Message } from './words/message.ts';

/** It worked: here is what came of it. */
export interface Ok<T> {
  ok: true;
  value: T;
}

/** It did not: why, for a person. */
export interface Failure {
  ok: false;
  problem: Message;
}

/** What may not work, and is nobody's mistake in the code: bytes from the air, a form half filled in, data too few. */
export type Outcome<T> = Ok<T> | Failure;
