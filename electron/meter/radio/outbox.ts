import { type FromRadio, longestValueBytes } from '../radio-messages.ts';

/** Electron's side of a utility process; a child of Node's has none. */
interface ParentPort {
  postMessage(message: unknown): void;
  on(event: 'message', listener: (event: { data: unknown }) => void): void;
}
const parentPort = (process as { parentPort?: ParentPort }).parentPort;

/** Sends one message to the app's process; `sent` is called when it has left this one. */
export function send(message: FromRadio, sent?: () => void): void {
  if (parentPort) {
    parentPort.postMessage(message);
    sent?.();
  } else if (process.connected) process.send!(message, undefined, undefined, sent);
}

/** Hears what the app's process orders, as it came, and that it is gone. Electron ends a utility process with the app. */
export function followOrders(order: (raw: unknown) => void, gone: () => void): void {
  if (parentPort) parentPort.on('message', ({ data }) => order(data));
  else process.on('message', order).on('disconnect', gone);
}

/** An error's text, for the fault log. */
export const messageOf = (error: unknown) => (error instanceof Error ? error.message : String(error));

/** A name from the air, safe to show and no longer than a message may hold. */
export const printable = (text: string) => text.replace(/\p{C}/gu, '').slice(0, 248);

/** A copy, as noble may go on using its buffer; null where there is none or the standard allows none so long. */
export const sendable = (bytes: Buffer | undefined) =>
  bytes === undefined || bytes.length > longestValueBytes ? null : Uint8Array.from(bytes);
