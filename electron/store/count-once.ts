import type { Db } from './yard-file.ts';

/** More different counts than this are not kept. */
const MOST_COUNTS = 100;

/**
 * Counts once until anything is written: each page of a list says how many boards it has, and to count 100,000 takes longer
 * than to read the page. A connection that also writes is not told of its own writes, and counts each time.
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
