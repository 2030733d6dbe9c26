/** A number that a person typed off the meter's display. */
export interface ShownNumber {
  /** In %, or in ohms. */
  value: number;
  /** What the last digit on the display counts, in the same unit. */
  resolution: number;
  /** From when to when it was typed, on the packets' clock. */
  fromMs: number;
  toMs: number;
}

/** How long before it was typed a packet may count, ms: the pins may be out by then. */
export const LATE_MS = 20_000;

/** Whether what came then says something of a typed number, however long ago that was. */
export const isBeside = (atMs: number, { fromMs, toMs }: Pick<ShownNumber, 'fromMs' | 'toMs'>): boolean =>
  atMs >= fromMs - LATE_MS && atMs <= toMs;

/** How many of the numbers are so different that no two can be the same bytes. */
export function differentNumbers(shown: readonly ShownNumber[]): number {
  const apart = (a: ShownNumber, b: ShownNumber) =>
    Math.abs(a.value - b.value) >= 5 * Math.max(a.resolution, b.resolution);
  return shown.filter((each, at) => shown.slice(0, at).every((earlier) => apart(each, earlier))).length;
}
