import { median } from '../../wood/maths/robust.ts';

/**
 * How long a live meter may send nothing before its newest value says nothing of the pins any more. Known only of one
 * that sends at a steady pace: one that sends when its value changes is silent while the pins are in and at rest.
 */

/** So many intervals in a row make a pace. */
const INTERVALS = 9;
/** A meter that sent what it had just sent so often does not wait for a change. */
const REPEATS = 3;
/** A shorter silence says nothing of any meter, ms. */
const LEAST_MS = 2000;
const USUAL_INTERVALS = 3;
/** A packet that was not heard makes one interval twice as long. */
const LONGEST_INTERVALS = 1.5;

/** What is remembered of the packets with values that a meter sent. Plain data. */
export type Pace = {
  /** When the newest came, on a clock that only runs forward; null before the first. */
  readonly newestAtMs: number | null;
  /** What it said; null before the first. */
  readonly said: string | null;
  readonly repeats: number;
  /** The newest intervals, oldest first, ms. */
  readonly intervals: readonly number[];
};

/** Nothing was sent yet. */
export const noPace = (): Pace => ({ newestAtMs: null, said: null, repeats: 0, intervals: [] });

/** Takes in a packet. @param said  all that it says, so that two packets that say the same are told from a change */
export function withPacket(pace: Pace, atMs: number, said: string): Pace {
  const { newestAtMs, repeats } = pace;
  const next = { newestAtMs: atMs, said, repeats: repeats + (said === pace.said ? 1 : 0) };
  // After a silence, the pace may be another.
  if (newestAtMs === null || silenceMs(pace, atMs) !== null) return { ...next, intervals: [] };
  return { ...next, intervals: [...pace.intervals, Math.max(0, atMs - newestAtMs)].slice(-INTERVALS) };
}

/** After how long without a packet the meter is silent, ms; null where its pace is not known. */
export function silentAfterMs({ intervals, repeats }: Pace): number | null {
  if (intervals.length < INTERVALS || repeats < REPEATS) return null;
  const usual = USUAL_INTERVALS * median([...intervals]);
  return Math.max(LEAST_MS, usual, LONGEST_INTERVALS * Math.max(...intervals));
}

/** For how long the meter has been silent, ms; null where it is not, or nobody knows. */
export function silenceMs(pace: Pace, nowMs: number): number | null {
  const afterMs = silentAfterMs(pace);
  const sinceMs = nowMs - (pace.newestAtMs ?? nowMs);
  return afterMs !== null && sinceMs >= afterMs ? sinceMs : null;
}
