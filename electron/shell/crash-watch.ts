/** So many ends of a window within so long are a loop, which opening it again does not end. */
const MOST = 3;
const WITHIN_MS = 60_000;

/**
 * What is done when the window's process ended: it is opened again, but not in an endless loop.
 * @param nowMs  by a clock that only runs forward
 */
export function createCrashWatch(nowMs: () => number) {
  let endedMs: number[] = [];
  return {
    /** The window's process ended. @returns whether to open it again, or to ask the person first */
    ended: (): 'open-again' | 'ask' => {
      const now = nowMs();
      endedMs = [...endedMs.filter((each) => now - each < WITHIN_MS), now];
      return endedMs.length < MOST ? 'open-again' : 'ask';
    },
    /** The person said to try again: it starts counting from there. */
    forget: (): void => {
      endedMs = [];
    },
  };
}
