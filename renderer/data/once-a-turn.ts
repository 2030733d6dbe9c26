/** What many ask for in one turn, as all parts on screen that are drawn, is found out once for all of them. */
export function onceATurn<T>(find: () => T): () => T {
  let found: { value: T } | null = null;
  return () => {
    if (found === null) {
      found = { value: find() };
      queueMicrotask(() => {
        found = null;
      });
    }
    return found.value;
  };
}
