/** Those fields of `after` that differ from `before`. */
export function changedFields<T extends object>(before: object, after: T): Partial<T> {
  const old = before as Record<string, unknown>;
  return Object.fromEntries(
    Object.entries(after).filter(([field, value]) => JSON.stringify(old[field]) !== JSON.stringify(value)),
  ) as Partial<T>;
}
