import type { ServerResponse } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';

/** After a page has its first script, it has the others within this. */
const FURTHER_SCRIPTS_MS = 25;

/**
 * Tells when the first page has its scripts. A busy process serves none, and a browser that has them is busy with them: a
 * process that waits for this is busy at the same time as the browser, and not before it.
 */
export function createPageWatch() {
  const asked = Promise.withResolvers<void>();
  const scriptTaken = Promise.withResolvers<void>();
  return {
    /** A file of the window is about to be sent; '' for the page itself. */
    sending(path: string, response: ServerResponse): void {
      if (path === '') asked.resolve();
      if (path.endsWith('.js')) response.once('finish', scriptTaken.resolve);
    },
    /** Waits until the page has its scripts, but no longer than this for the page to be asked for and its scripts taken. */
    async taken(within: { askedMs: number; takenMs: number }): Promise<void> {
      const isAsked = await Promise.race([asked.promise.then(() => true), pause(within.askedMs, false)]);
      if (!isAsked) return;
      await Promise.race([scriptTaken.promise, pause(within.takenMs)]);
      await pause(FURTHER_SCRIPTS_MS);
    },
  };
}
