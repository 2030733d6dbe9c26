/** Work that is done one piece after the other, in the order in which it is asked for. */
export function createTurns() {
  let last: Promise<unknown> = Promise.resolve();
  return {
    inTurn: <T>(work: () => Promise<T>): Promise<T> => {
      const done = last.then(work);
      last = done.catch(() => undefined);
      return done;
    },
    /** Done when everything is that was asked for so far. */
    idle: (): Promise<unknown> => last,
  };
}
export type Turns = ReturnType<typeof createTurns>;
