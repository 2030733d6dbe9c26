/** Rows of caches that were found and cannot be read: whoever has the file open makes them again. */
interface BadCaches {
  /** By board. */
  findings: ReadonlySet<number>;
  outlooks: ReadonlySet<number>;
  /** By round. */
  comparisons: ReadonlySet<number>;
}
export type Cache = keyof BadCaches;

/** Collects them over both connections of a file. Each is given once, so that one that stays bad is not made forever. */
export function createBadCaches() {
  const given: Record<Cache, Set<number>> = {
    findings: new Set(),
    outlooks: new Set(),
    comparisons: new Set(),
  };
  let found = nothing();
  return {
    add: (cache: Cache, id: number): void => {
      if (!given[cache].has(id)) found[cache].add(id);
    },
    /** Those since it was last asked; null for none. */
    take: (): BadCaches | null => {
      const taken = found;
      if (Object.values(taken).every(({ size }) => size === 0)) return null;
      for (const cache of Object.keys(taken) as Cache[]) {
        for (const id of taken[cache]) given[cache].add(id);
      }
      found = nothing();
      return taken;
    },
  };
}
export type BadCacheCollector = Pick<ReturnType<typeof createBadCaches>, 'add'>;

const nothing = (): Record<Cache, Set<number>> => ({
  findings: new Set(),
  outlooks: new Set(),
  comparisons: new Set(),
});
