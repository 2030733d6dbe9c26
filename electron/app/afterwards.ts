/** What follows from an act and is no part of it, as judging: it comes once the act is on disk. */
export function createAfterwards() {
  let waiting: (() => void)[] | null = null;
  return {
    /** Does it when the act under way is on disk; at once where none is. */
    add: (work: () => void): void => {
      if (waiting) waiting.push(work);
      else work();
    },
    /**
     * Runs an act and then what follows from it; nothing follows from one that throws. What fails keeps nothing else from
     * following.
     * @returns what the act came to, and why some of what follows from it failed
     */
    run: <T>(act: () => T): { output: T; failures: unknown[] } => {
      const follows: (() => void)[] = [];
      waiting = follows;
      let output: T;
      try {
        output = act();
      } finally {
        waiting = null;
      }
      const failures = follows.flatMap((work) => {
        try {
          work();
          return [];
        } catch (error) {
          return [error];
        }
      });
      return { output, failures };
    },
  };
}
export type Afterwards = ReturnType<typeof createAfterwards>;
