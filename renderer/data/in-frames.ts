/**
 * Draws what comes at once, and what comes before the next frame together with it, so that a backlog is drawn once. A
 * window that nobody sees has no frames: there everything is drawn as it comes.
 * @param draw  given what came since it was called last, oldest first
 */
export function inFrames<T>(draw: (came: readonly T[]) => void) {
  let waiting: T[] = [];
  /** The frame to come; null where nothing was drawn since the last one. */
  let frame: number | null = null;

  function drawAll(): void {
    const came = waiting;
    waiting = [];
    if (came.length > 0) draw(came);
  }

  return {
    take: (came: T): void => {
      waiting.push(came);
      if (frame !== null && !document.hidden) return;
      drawAll();
      frame ??= requestAnimationFrame(() => {
        frame = null;
        drawAll();
      });
    },
    /** What waits for its frame is no longer so. */
    drop: (): void => {
      waiting = [];
      if (frame !== null) cancelAnimationFrame(frame);
      frame = null;
    },
  };
}
