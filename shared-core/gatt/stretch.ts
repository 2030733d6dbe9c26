import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import type { Layout } from './layout.ts';
import type { WatchedPacket } from './movement.ts';
import { decodeLayout } from './value.ts';

const MOST_DISTINCT = 60;

/** Packets of a span of time, oldest first. */
export interface Stretch {
  /** Packets that differ. */
  seen: Uint8Array[];
  /** Of each packet, its place in `seen`, and for how long it was the newest. */
  order: { at: number; ms: number }[];
}

/** What was sent last before holds until the next is sent. */
export function stretchOf(packets: readonly WatchedPacket[], fromMs: number, toMs: number): Stretch {
  const end = packets.findLastIndex(({ atMs }) => atMs <= toMs);
  const begin = Math.max(
    0,
    packets.findLastIndex(({ atMs }) => atMs <= fromMs),
  );
  const seen: Uint8Array[] = [];
  const known = new Map<string, number>();
  const order: Stretch['order'] = [];
  let untilMs = toMs;
  for (let index = end; index >= begin; index--) {
    const { atMs, bytes } = packets[index]!;
    const key = bytes.join();
    let at = known.get(key);
    if (at === undefined && seen.length < MOST_DISTINCT) {
      at = seen.push(bytes) - 1;
      known.set(key, at);
    }
    // Where it sends fast, the newest that differ are enough.
    if (at === undefined) break;
    order.push({ at, ms: Math.max(1, untilMs - Math.max(atMs, fromMs)) });
    untilMs = atMs;
  }
  return { seen, order: order.toReversed() };
}

/** What a layout finds in a stretch, oldest first. */
export type StoredStretch = readonly { stored: number | null; ms: number }[];

export function readStretch({ seen, order }: Stretch, layout: Layout, unit: ReadingUnit): StoredStretch {
  const stored = seen.map((bytes) => storedIn(bytes, layout, unit));
  return order.map(({ at, ms }) => ({ stored: stored[at]!, ms }));
}

export function storedIn(bytes: Uint8Array, layout: Layout, unit: ReadingUnit): number | null {
  const decoded = decodeLayout(bytes, layout, { unit });
  return decoded.ok ? decoded.value : null;
}
