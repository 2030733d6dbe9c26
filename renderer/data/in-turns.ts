/** Drawing and live values wait no longer than this. */
const TURN_MS = 8;

/**
 * Does long work of the window in short turns, between which it draws and hears what comes. The first is at once.
 * @param isOver  whether nobody waits for it any more
 * @returns       null where nobody did
 */
export async function inTurns<T>(work: Iterator<void, T>, isOver: () => boolean): Promise<T | null> {
  for (;;) {
    const untilMs = performance.now() + TURN_MS;
    do {
      const came = work.next();
      if (came.done) return came.value;
    } while (performance.now() < untilMs);
    await new Promise((resolve) => setTimeout(resolve));
    if (isOver()) return null;
  }
}
