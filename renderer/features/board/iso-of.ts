/** An instant in UTC ms as `formats` and facts have it. */
export const isoOf = (atMs: number): string => new Date(atMs).toISOString();
