import type { WatchedPacket } from '../../../shared-core/gatt/movement.ts';
import type { ShownNumber } from '../../../shared-core/gatt/shown-number.ts';

/** What the meter shows at a moment, %: null with its pins in the air. */
export type Course = (ms: number) => number | null;

/** In the air for a second, then in the wood for 6 s, out for 2 s, and so on; the scale comes to rest in a second. */
export const insertions =
  (...rests: number[]): Course =>
  (ms) => {
    const at = ms % 8000;
    const rest = rests[Math.floor(ms / 8000)];
    if (rest === undefined || at < 1000 || at >= 7000) return null;
    return rest + 1.2 * Math.exp(-(at - 1000) / 300) + 0.02 * Math.sin(ms * 1.7);
  };

/** Packets of a meter that packs what it shows, ten a second, until so many insertions are over. */
export const watched = (
  course: Course,
  insertionCount: number,
  pack: (shown: number | null, index: number) => Uint8Array,
): WatchedPacket[] =>
  Array.from({ length: insertionCount * 80 }, (_, index) => ({
    atMs: index * 100,
    bytes: pack(course(index * 100), index),
  }));

/** The number that a person reads off the display at the end of an insertion and types at once, from 0. */
export function typedAt(course: Course, insertion: number, decimals = 1): ShownNumber {
  const fromMs = insertion * 8000 + 5500;
  const resolution = Number(`1e${-decimals}`);
  return { value: Number(course(fromMs)!.toFixed(decimals)), resolution, fromMs, toMs: fromMs + 1200 };
}
