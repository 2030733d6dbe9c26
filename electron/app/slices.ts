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

/** A slice ends with the batch that reaches this. Its commit can take as long again, and work in the background adds to that. */
const SLICE_MS = 15;
/** An act on no more boards is one slice. */
const AT_ONCE = 250;
/** About how often the clock is asked, so that a slice is hardly longer where batches become slower. */
const BATCH_MS = 5;
/** The first batch; a slow computer makes none smaller. */
const FEWEST = 10;

/** Fills slices with batches, each as large as the time allows that the one before took. */
export function createBatches() {
  let size = FEWEST;
  return {
    /** Does a slice. @param work  does a batch of this size, and answers whether anything is left */
    fill: (work: (size: number) => boolean): void => {
      const beganMs = monotonicMs();
      let nowMs = beganMs;
      let isLeft = true;
      while (isLeft && nowMs - beganMs < SLICE_MS) {
        const batchMs = nowMs;
        isLeft = work(size);
        nowMs = monotonicMs();
        const pace = BATCH_MS / Math.max(nowMs - batchMs, 1);
        size = Math.max(FEWEST, Math.round(size * Math.min(2, pace)));
      }
    },
  };
}

/** Does the same for all of them, slice by slice. @param atOnce  so many are one slice, however long that takes */
export function* inSlices<T>(
  all: readonly T[],
  work: (batch: readonly T[], from: number) => void,
  atOnce = AT_ONCE,
): Slices<void> {
  const total = all.length;
  if (total <= atOnce) {
    if (total > 0) work(all, 0);
    return;
  }
  // Finding so many took as long as a slice. An act too large for one transaction also shows that here, before its work.
  yield { done: 0, total };
  const batches = createBatches();
  for (let done = 0; done < total; ) {
    if (done > 0) yield { done, total };
    batches.fill((size) => {
      const batch = all.slice(done, done + size);
      work(batch, done);
      done += batch.length;
      return done < total;
    });
  }
}

/** Slices of parts that take very different times. @param begin  makes them, and asks after each whether the slice is over */
export function* paced<T>(begin: (isOver: () => boolean) => Generator<Progress, T, void>): Slices<T> {
  let beganMs = monotonicMs();
  const all = begin(() => monotonicMs() - beganMs >= SLICE_MS);
  for (;;) {
    const came = all.next();
    if (came.done) return came.value;
    yield came.value;
    beganMs = monotonicMs();
  }
}

/** The same slices, and `last` on their outcome: in one more slice where there are several, as that can take long. */
export function* ending<T>(slices: Slices<T>, last: (came: T) => T): Slices<T> {
  let progress: Progress | null = null;
  for (;;) {
    const { done, value } = slices.next();
    if (!done) {
      progress = value;
      yield progress;
      continue;
    }
    if (progress !== null) yield progress;
    return last(value);
  }
}
