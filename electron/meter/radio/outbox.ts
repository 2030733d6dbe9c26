import { type FromRadio, longestValueBytes } from '../radio-messages.ts';

/** Sends one message to the app's process; `sent` is called when it has left this one. */
export function send(message: FromRadio, sent?: () => void): void {
  if (process.connected) process.send!(message, undefined, undefined, sent);
}

/** An error's text, for the log. */
export const messageOf = (error: unknown) => (error instanceof Error ? error.message : String(error));

/** A name from the air, safe to show and no longer than a message may hold. */
export const printable = (text: string) => text.replace(/\p{C}/gu, '').slice(0, 248);

/** A copy, as noble may go on using its buffer; null where there is none or the standard allows none so long. */
export const sendable = (bytes: Buffer | undefined) =>
  bytes === undefined || bytes.length > longestValueBytes ? null : Uint8Array.from(bytes);
