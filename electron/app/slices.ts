/** How far an act is, in whatever it counts. */
export interface Progress {
  done: number;
  total: number;
}

/** An act on many records: each `yield` ends a slice, which is committed, and others have their turn before the next. */
export type Slices<T> = Generator<Progress, T, void>;

export const isSlices = <T>(came: T | Slices<T>): came is Slices<T> =>
  typeof (came as { next?: unknown } | null)?.next === 'function';

/** A slice of so many boards takes some 20 ms. An act on no more is one transaction. */
const MOST_BOARDS = 250;

/** Does the same for all of them, slice by slice. */
export function* inSlices<T>(
  all: readonly T[],
  work: (slice: readonly T[], from: number) => void,
): Slices<void> {
  for (let done = 0; done < all.length; done += MOST_BOARDS) {
    if (done > 0) yield { done, total: all.length };
    work(all.slice(done, done + MOST_BOARDS), done);
  }
}

/** The same slices, with what they came to given to `last` in the last of them. */
export function* ending<T>(slices: Slices<T>, last: (came: T) => T): Slices<T> {
  return last(yield* slices);
}
