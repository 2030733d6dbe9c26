import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import type { Layout } from './layout.ts';
import type { Movement, WatchedPacket } from './movement.ts';
import { bytesOfLayout } from './possible-layouts.ts';
import { storedIn } from './stretch.ts';

const MOST_JUDGED_PACKETS = 300;
const MOST_VALUE = { pct: 200, ohm: 1e15 } as const;

/** What a layout makes of all packets of a kind, and what that says for it or against it, in bits. */
export function judgeLayout(
  layout: Layout,
  watched: readonly WatchedPacket[],
  unit: ReadingUnit,
): { reads: string[]; bonus: number } {
  const packets = watched.slice(-MOST_JUDGED_PACKETS);
  const different = new Map(packets.map(({ bytes }) => [bytes.join(), bytes]));
  const read = new Map([...different].map(([key, bytes]) => [key, storedIn(bytes, layout, unit)]));
  const values = packets.map(({ bytes }) => read.get(bytes.join()) ?? null);
  const known = values.filter((value) => value !== null);
  const isPossible = (value: number) => value >= 0 && value <= MOST_VALUE[unit];
  // What is sent with the pins out is read in many ways, and means the same.
  const readOfWood = (value: number) => (value > 0 && isPossible(value) ? value.toPrecision(9) : '');
  const likely = new Set(known.filter(isPossible));
  const odd = known.filter((value) => !isPossible(value));
  // One number that no wood has may be the meter's own sign for its pins in the air.
  const oddShare = new Set(odd).size > 1 ? odd.length / values.length : 0;
  const unread = 1 - known.length / values.length;
  return {
    reads: [...read.values()].map((value) => readOfWood(value ?? 0)),
    // A layout that leaves out the lowest bit of the number has half as many different values.
    bonus: 1.5 * Math.log2(1 + likely.size) - 10 * oddShare - 3 * unread - 10 * restlessness(known),
  };
}

/** Share of the steps over a quarter of the range, above the tenth that pins going in and out cause. */
function restlessness(values: readonly number[]): number {
  const range = Math.max(...values) - Math.min(...values);
  const far = values.slice(1).filter((value, before) => Math.abs(value - values[before]!) > range / 4);
  return Math.max(0, far.length / Math.max(1, values.length) - 0.1);
}

/** Whether the number in there was ever another one: its bytes may have moved in bits that are not of it. */
export function hasMoved(layout: Layout, packets: readonly WatchedPacket[], unit: ReadingUnit): boolean {
  const first = packets[0] && storedIn(packets[0].bytes, layout, unit);
  return packets.some(({ bytes }) => storedIn(bytes, layout, unit) !== first);
}

/** What the bytes of a layout do beside each other says for it or against it, in bits. */
export function movementBonus(layout: Layout, length: number, { motions }: Movement): number {
  const { from, to } = bytesOfLayout(layout, length);
  const own = motions.slice(from, to);
  if (layout.kind !== 'text' && own.includes('counts')) return -4;
  // The byte beside it may be its higher one, which few numbers need.
  return motions[from - 1] === 'moves' || motions[to] === 'moves' ? 1.5 : 2;
}
