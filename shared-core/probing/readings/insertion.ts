/**
 * The part of a live trace that belongs to the newest push of the pins: everything after the last gap, or, with the
 * pins out, the push before it. Earlier boards' values would squash the one that is being watched.
 */
export function newestInsertion(trace: readonly (number | null)[]): (number | null)[] {
  const end = trace.findLastIndex((value) => value !== null) + 1;
  const start = trace.lastIndexOf(null, end - 1) + 1;
  return trace.slice(end === 0 ? 0 : start, end);
}
