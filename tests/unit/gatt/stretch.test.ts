/** What came in some time, and what a layout finds in it. */
import { describe, expect, test } from 'vitest';
import type { WatchedPacket } from '../../../shared-core/gatt/movement.ts';
import { readStretch, storedIn, stretchOf } from '../../../shared-core/gatt/stretch.ts';

const plain = { exponent: 0, scale: 1, offset: 0 } as const;
const byte = { kind: 'number', format: 4, byteOffset: 0, ...plain } as const;

/** One packet of one byte each, so far apart. */
const every = (ms: number, ...stored: number[]): WatchedPacket[] =>
  stored.map((each, at) => ({ atMs: at * ms, bytes: Uint8Array.of(each) }));
const found = (packets: readonly WatchedPacket[], fromMs: number, toMs: number) =>
  readStretch(stretchOf(packets, fromMs, toMs), byte, 'pct').map(({ stored, ms }) => [stored, ms]);

describe('what came in some time', () => {
  const packets = every(1000, 10, 11, 12, 13);

  test('begins with what was sent last before, and each holds until the next', () => {
    expect(found(packets, 1500, 2700)).toEqual([
      [11, 500],
      [12, 700],
    ]);
  });

  test('begins with what was sent at its first moment, and ends with what was sent at its last', () => {
    expect(found(packets, 1000, 3000)).toEqual([
      [11, 1000],
      [12, 1000],
      [13, 1],
    ]);
  });

  test('begins with the first of all where nothing was sent before', () => {
    const later = packets.map((packet) => ({ ...packet, atMs: packet.atMs + 5000 }));
    expect(found(later, 0, 6500)).toEqual([
      [10, 1000],
      [11, 500],
    ]);
    expect(found(later, 0, 4999)).toEqual([]);
    expect(found([], 0, 4999)).toEqual([]);
  });

  test('keeps the same packet once, and each time that it came', () => {
    const again = every(100, 7, 8, 7, 7);
    expect(stretchOf(again, 0, 400).seen).toEqual([Uint8Array.of(7), Uint8Array.of(8)]);
    expect(found(again, 0, 400)).toEqual([
      [7, 100],
      [8, 100],
      [7, 100],
      [7, 100],
    ]);
  });

  test('is the newest 60 that differ, and what repeats them', () => {
    const sixty = Array.from({ length: 60 }, (_, at) => at);
    expect(found(every(10, 99, ...sixty), 0, 1000).map(([stored]) => stored)).toEqual(sixty);
    expect(found(every(10, 5, 99, 59, ...sixty), 0, 1000).map(([stored]) => stored)).toEqual([59, ...sixty]);
  });
});

test('a packet too short for a layout, or of another unit, holds no number', () => {
  const text = { kind: 'text', byteOffset: 0, nth: 1, ...plain } as const;
  const ascii = (letters: string) => new TextEncoder().encode(letters);
  expect(storedIn(Uint8Array.of(), byte, 'pct')).toBeNull();
  expect(storedIn(ascii('13.4 %'), text, 'pct')).toBe(13.4);
  expect(storedIn(ascii('13.4 %'), text, 'ohm')).toBeNull();
});
