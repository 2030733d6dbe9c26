/** What comes faster than this is merged, ms: half a frame of a 60 Hz screen, so that no frame misses the newest. */
export const MERGED_WITHIN_MS = 8;

/** Does something at once, but not again before `MERGED_WITHIN_MS` are over: what is asked for meanwhile is done once then. */
export function createPaced(work: () => void) {
  let timer: NodeJS.Timeout | null = null;
  let isDue = false;

  function now(): void {
    if (timer !== null) clearTimeout(timer);
    isDue = false;
    timer = setTimeout(() => {
      timer = null;
      if (isDue) now();
    }, MERGED_WITHIN_MS);
    work();
  }

  return {
    soon: (): void => {
      if (timer === null) now();
      else isDue = true;
    },
    /** Does it, and with it what was asked for. */
    now,
    /** Does nothing more. */
    stop: (): void => {
      if (timer !== null) clearTimeout(timer);
      timer = null;
      isDue = false;
    },
  };
}
