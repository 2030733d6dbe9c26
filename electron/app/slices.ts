import { monotonicMs } from '../monotonic.ts';

/** How far an act is, in whatever it counts. */
export interface Progress {
  done: number;
  total: number;
}

/** An act on many records: each `yield` ends a slice, which is committed, and others have their turn before the next. */
export type Slices<T> = Generator<Progress, T, void>;

export const isSlices = <T>(came: T | Slices<T>): came is Slices<T> =>
  typeof (came as { next?: unknown } | null)?.next === 'function';

/** The first slice, which takes some 20 ms. An act on no more boards is one transaction. */
const FIRST_BOARDS = 250;
/** How long others wait for a slice. Its commit takes half as long again. */
const SLICE_MS = 25;
/** On a slow disk it takes as long as its commit, so that half of the time goes to what is to be done, but no longer. */
const MOST_MS = 150;
/** A slow disk or a busy computer makes slices small, but not so small that commits are all that is done. */
const FEWEST_BOARDS = 25;

/**
 * How large slices are: each as large as the time allows that the one before took.
 * @param first  how many are in the first
 */
export function createPace(first = FIRST_BOARDS) {
  let size = first;
  let endedMs: number | null = null;
  /** Between the last slices, for commits and others. One alone may be long, as where the WAL is brought in. */
  let betweenMs = [0, 0];

  function begin(): { beganMs: number; sliceMs: () => number } {
    const beganMs = monotonicMs();
    if (endedMs !== null) betweenMs = [beganMs - endedMs, ...betweenMs.slice(0, 1)];
    return { beganMs, sliceMs: () => Math.min(MOST_MS, Math.max(SLICE_MS, Math.min(...betweenMs))) };
  }

  return {
    first,
    /** Does a slice of this size. */
    slice: <T>(work: (size: number) => T): T => {
      const { beganMs, sliceMs } = begin();
      const came = work(size);
      endedMs = monotonicMs();
      const pace = sliceMs() / Math.max(endedMs - beganMs, 1);
      size = Math.max(FEWEST_BOARDS, Math.round(size * Math.min(2, pace)));
      return came;
    },
    /** Does a slice of parts that take very different times: after each it asks whether the slice is over. */
    timed: <T>(work: (isOver: () => boolean) => T): T => {
      const { beganMs, sliceMs } = begin();
      let parts = 0;
      const came = work(() => ++parts >= FEWEST_BOARDS && monotonicMs() - beganMs >= sliceMs());
      endedMs = monotonicMs();
      return came;
    },
  };
}

/** Does the same for all of them, slice by slice. @param pace  that of what was done before, where this goes on with it */
export function* inSlices<T>(
  all: readonly T[],
  work: (slice: readonly T[], from: number) => void,
  pace = createPace(),
): Slices<void> {
  // Finding so many took a slice's time already; and an act too large for one transaction shows that here, before its work.
  if (all.length > pace.first) yield { done: 0, total: all.length };
  for (let done = 0; done < all.length; ) {
    if (done > 0) yield { done, total: all.length };
    done += pace.slice((size) => {
      const slice = all.slice(done, done + size);
      work(slice, done);
      return slice.length;
    });
  }
}

/** Slices of parts that take very different times. @param begin  makes them, and asks after each whether the slice is over */
export function* paced<T>(begin: (isOver: () => boolean) => Generator<Progress, T, void>): Slices<T> {
  const pace = createPace();
  let isSliceOver = (): boolean => false;
  const parts = begin(() => isSliceOver());
  for (;;) {
    const came = pace.timed((isOver) => {
      isSliceOver = isOver;
      return parts.next();
    });
    if (came.done) return came.value;
    yield came.value;
  }
}

/** The same slices, with what they came to given to `last` in the last of them. */
export function* ending<T>(slices: Slices<T>, last: (came: T) => T): Slices<T> {
  return last(yield* slices);
}
