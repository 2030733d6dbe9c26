import type { ServerResponse } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';

/** Scripts that a page asks for beside its first one come within this. */
const FURTHER_SCRIPTS_MS = 25;

/**
 * Tells when the first page has its scripts. A process that is busy serves none, and a browser that has them is busy
 * itself: so the two are busy at once, and not one after the other.
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
    /** @returns  once the page has its scripts; or where it was not asked for, or did not take them, within so long */
    async taken(within: { askedMs: number; takenMs: number }): Promise<void> {
      const isAsked = await Promise.race([asked.promise.then(() => true), pause(within.askedMs, false)]);
      if (!isAsked) return;
      await Promise.race([scriptTaken.promise, pause(within.takenMs)]);
      await pause(FURTHER_SCRIPTS_MS);
    },
  };
}
