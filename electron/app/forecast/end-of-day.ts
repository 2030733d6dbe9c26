/**
 * The last instant of the local day. Every forecast of a day is made as of then, for a board's page as for lists: a pure
 * function of that day and what is on file, so that all of them say the same.
 */
export function endOfDay(instant: string): string {
  const end = new Date(instant);
  end.setHours(23, 59, 59, 999);
  return end.toISOString();
}
