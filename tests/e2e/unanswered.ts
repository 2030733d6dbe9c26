import type { Page } from '@playwright/test';

const unanswered = new WeakMap<Page, Set<number>>();

const idIn = (payload: string | Buffer): number | undefined =>
  (JSON.parse(String(payload)) as { id?: number }).id;

/** Counts what the window asks of its host. Begins before the window opens. */
export function watchRequests(page: Page): void {
  page.on('websocket', (socket) => {
    // A page that is loaded again has a socket of its own. Nobody waits for the answers of the one before.
    const asked = new Set<number>();
    unanswered.set(page, asked);
    socket.on('framesent', ({ payload }) => {
      const id = idIn(payload);
      if (id !== undefined) asked.add(id);
    });
    socket.on('framereceived', ({ payload }) => {
      const id = idIn(payload);
      if (id !== undefined) asked.delete(id);
    });
  });
}

/** How many requests of the window wait for an answer. */
export const unansweredOf = (page: Page): number => unanswered.get(page)?.size ?? 0;
