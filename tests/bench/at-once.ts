/** How often the thread's working time is sampled, ms; a result is too long by that at most. */
const TICK_MS = 2;

/**
 * Does it, and finds how long this thread worked at most before others had their turn. That is the thread's own time, so
 * that a busy computer makes it no longer.
 */
export async function workedAtOnce<T>(
  work: () => Promise<T>,
): Promise<{ output: T; atOnceMs: number; workedMs: number; tookMs: number }> {
  const ownMs = () => (({ user, system }) => (user + system) / 1000)(process.threadCpuUsage());
  const atFirst = ownMs();
  let before = atFirst;
  let atOnceMs = 0;
  const tick = () => {
    const now = ownMs();
    atOnceMs = Math.max(atOnceMs, now - before);
    before = now;
  };
  const ticking = setInterval(tick, TICK_MS);
  const beganMs = performance.now();
  try {
    const output = await work();
    await new Promise(setImmediate);
    tick();
    return { output, atOnceMs, workedMs: ownMs() - atFirst, tookMs: performance.now() - beganMs };
  } finally {
    clearInterval(ticking);
  }
}
