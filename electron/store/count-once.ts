import type { Db } from './yard-file.ts';

/** More different counts than this are not remembered. */
const MOST_COUNTS = 100;

/**
 * Counts once until anything is written. Each page of a list says how many boards there are, and counting 100,000 takes
 * longer than reading the page. `data_version` leaves out what the same connection writes, so one that can write counts
 * each time.
 */
export function countOnce(db: Db): (key: string, count: () => number) => number {
  const counts = new Map<string, number>();
  let version: unknown = null;
  return (key, count) => {
    if (!db.readonly) return count();
    const now = db.pragma('data_version', { simple: true });
    if (now !== version || counts.size >= MOST_COUNTS) counts.clear();
    version = now;
    const known = counts.get(key) ?? count();
    counts.set(key, known);
    return known;
  };
}
