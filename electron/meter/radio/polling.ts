import { monotonicMs } from '../../monotonic.ts';

export interface Polled {
  everyMs: number;
  /** Reads it once. */
  read(): Promise<void>;
}

/**
 * Reads values again and again, one at a time: a meter is never asked for the next before it answered. One that is
 * slow is read less often, and nothing is made up for.
 */
export async function poll(values: readonly Polled[], isWanted: () => boolean): Promise<void> {
  const due = values.map((value) => ({ value, atMs: monotonicMs() }));
  while (isWanted()) {
    const next = due.toSorted((a, b) => a.atMs - b.atMs)[0];
    if (next === undefined) return;
    const waitMs = next.atMs - monotonicMs();
    if (waitMs > 0) {
      await new Promise((resolve) => setTimeout(resolve, waitMs));
      continue;
    }
    await next.value.read();
    next.atMs = monotonicMs() + next.value.everyMs;
  }
}
