/**
 * What in a meter's bytes goes with its pins. A reading changes when they go in and comes back when they are lifted; a
 * counter or a clock never comes back, and noise is as large at rest.
 */

/** Bytes as they came, `atMs` on a clock that only runs forward. */
export interface WatchedPacket {
  atMs: number;
  bytes: Uint8Array;
}

/** `counts`: a counter, a clock, or what carries over from one. */
export type ByteMotion = 'still' | 'counts' | 'moves';

export interface Movement {
  /** Of each byte, from the first. */
  motions: ByteMotion[];
  /** The byte that goes furthest beyond its own noise; null where none moves. */
  liveliest: number | null;
  /** How far that is, in bits: 0 where none moves. */
  size: number;
}

/** So many steps make a counter: fewer can be chance. */
const FEWEST_STEPS = 5;
/** Of the steps of a counter, those that may differ, as where a packet was lost. */
const ODD_SHARE = 0.15;

/** @param packets  of one place, oldest first */
export function movementOf(packets: readonly WatchedPacket[]): Movement {
  const length = Math.max(0, ...packets.map(({ bytes }) => bytes.length));
  const columns = Array.from({ length }, (_, at) =>
    packets.filter(({ bytes }) => at < bytes.length).map(({ bytes }) => bytes[at]!),
  );
  const motions = columns.map(motionOf);
  // A packet that is shorter now and then would shift the steps of two bytes against each other.
  if (packets.every(({ bytes }) => bytes.length === length)) spreadCounts(columns, motions);
  const sizes = columns.map((column, at) => (motions[at] === 'moves' ? sizeOf(column) : 0));
  const size = Math.max(0, ...sizes);
  return { motions, liveliest: size === 0 ? null : sizes.indexOf(size), size };
}

/** Steps from each value to the next, 0 to 255: a byte goes on from 255 with 0. */
const stepsOf = (column: readonly number[]): number[] =>
  column.slice(1).map((value, index) => (value - column[index]! + 256) % 256);

function motionOf(column: readonly number[]): ByteMotion {
  const steps = stepsOf(column);
  const taken = steps.filter((step) => step !== 0);
  if (taken.length === 0) return 'still';
  return isEvenPace(steps) || isDigitCounting(column) || isSlowCounter(taken) ? 'counts' : 'moves';
}

/** The same step with almost every packet, as a sequence number or a regular clock. */
function isEvenPace(steps: readonly number[]): boolean {
  if (steps.length < FEWEST_STEPS) return false;
  const usual = steps.toSorted((a, b) => a - b)[steps.length >> 1]!;
  const odd = steps.filter((step) => Math.abs(step - usual) > (usual > 16 ? 2 : 0)).length;
  return usual !== 0 && odd <= steps.length * ODD_SHARE;
}

/** The last digit of a counter in text. */
function isDigitCounting(column: readonly number[]): boolean {
  if (!column.every((byte) => byte >= 0x30 && byte <= 0x39)) return false;
  const steps = column.slice(1).map((digit, index) => (digit - column[index]! + 10) % 10);
  return isEvenPace(steps);
}

/** Up by one at a time and never down, as the higher byte of a counter. */
const isSlowCounter = (taken: readonly number[]): boolean =>
  taken.length >= FEWEST_STEPS && taken.every((step) => step === 1);

/** Marks what belongs to a counter beside it: the byte that carries over from it, and the one that it carries from. */
function spreadCounts(columns: readonly (readonly number[])[], motions: ByteMotion[]): void {
  for (const at of [...motions.keys()].filter((each) => motions[each] === 'counts')) {
    for (const beside of [at - 1, at + 1]) {
      if (motions[beside] !== 'moves') continue;
      const isPart =
        carriesFrom(columns[beside]!, columns[at]!) || carriesFrom(columns[at]!, columns[beside]!);
      if (isPart) motions[beside] = 'counts';
    }
  }
}

/** Whether `high` and `low` rise together as one number: never down, and `high` only where `low` begins again. */
function carriesFrom(high: readonly number[], low: readonly number[]): boolean {
  let risen = 0;
  for (let index = 1; index < low.length; index++) {
    const step = (high[index]! - high[index - 1]! + 256) % 256;
    const lowStep = low[index]! - low[index - 1]!;
    if (step > 1 || (step === 0 && lowStep < 0) || (step === 1 && lowStep > 0)) return false;
    if (lowStep !== 0) risen++;
  }
  return risen >= (low.length - 1) * (1 - ODD_SHARE);
}

/** Bits between the noise from one packet to the next and the whole range. */
function sizeOf(column: readonly number[]): number {
  const jumps = column.slice(1).map((value, index) => Math.abs(value - column[index]!));
  const noise = jumps.toSorted((a, b) => a - b)[jumps.length >> 1]!;
  return Math.log2(1 + (Math.max(...column) - Math.min(...column)) / (1 + noise));
}
