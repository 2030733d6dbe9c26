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
/** So long others wait for a slice, to which its commit is added. */
const SLICE_MS = 40;
/** A slow disk or a busy computer makes slices small, but not so small that commits are all that is done. */
const FEWEST_BOARDS = 25;

/** Does the same for all of them, slice by slice. Each is as large as the time allows that the one before took. */
export function* inSlices<T>(
  all: readonly T[],
  work: (slice: readonly T[], from: number) => void,
): Slices<void> {
  let size = FIRST_BOARDS;
  for (let done = 0; done < all.length; ) {
    if (done > 0) yield { done, total: all.length };
    const slice = all.slice(done, done + size);
    const beganMs = monotonicMs();
    work(slice, done);
    done += slice.length;
    const pace = SLICE_MS / Math.max(monotonicMs() - beganMs, 1);
    size = Math.max(FEWEST_BOARDS, Math.round(size * Math.min(2, pace)));
  }
}

/** The same slices, with what they came to given to `last` in the last of them. */
export function* ending<T>(slices: Slices<T>, last: (came: T) => T): Slices<T> {
  return last(yield* slices);
}
