import { describe, expect, test } from 'vitest';
import { movementOf, type WatchedPacket } from '../../../shared-core/gatt/movement.ts';

/** Tenths of a percent with a little noise: in the air, in wood from 1 s to 4 s, in the air, in wetter wood from 6 s. */
function tenthsAt(ms: number): number {
  const noise = Math.round(Math.sin(ms * 1.7));
  if (ms < 1000 || (ms >= 4000 && ms < 6000)) return 0;
  return (ms < 4000 ? 134 : 251) + noise;
}

/** Ten packets a second for 9 s. */
const packets = (bytesAt: (ms: number, index: number) => number[]): WatchedPacket[] =>
  Array.from({ length: 90 }, (_, index) => ({
    atMs: index * 100,
    bytes: Uint8Array.from(bytesAt(index * 100, index)),
  }));
const text = (shown: string) => [...new TextEncoder().encode(shown)];

describe('which bytes go with the pins', () => {
  test('a reading moves, a constant is still', () => {
    const { motions, liveliest, size } = movementOf(packets((ms) => [7, tenthsAt(ms)]));
    expect(liveliest).toBe(1);
    expect(motions).toEqual(['still', 'moves']);
    expect(size).toBeGreaterThan(5);
  });

  test('a sequence number counts, with its higher byte, in both byte orders', () => {
    const counter = (index: number) => 250 + index * 3;
    const low = movementOf(packets((ms, index) => [tenthsAt(ms), counter(index) & 255, counter(index) >> 8]));
    expect(low.motions).toEqual(['moves', 'counts', 'counts']);
    const high = movementOf(
      packets((ms, index) => [counter(index) >> 8, counter(index) & 255, tenthsAt(ms)]),
    );
    expect(high.motions).toEqual(['counts', 'counts', 'moves']);
  });

  test('a clock of milliseconds that does not tick evenly counts in all its bytes', () => {
    const clock = (ms: number, index: number) => 5000 + ms + ((index * 37) % 60);
    const { motions } = movementOf(
      packets((ms, index) => [clock(ms, index) & 255, clock(ms, index) >> 8, tenthsAt(ms)]),
    );
    expect(motions).toEqual(['counts', 'counts', 'moves']);
  });

  test('a counter in text counts, the number beside it moves', () => {
    const { motions } = movementOf(
      packets((ms, index) => text(`${String(index % 10)} ${(tenthsAt(ms) / 10).toFixed(1).padStart(4)}`)),
    );
    expect(motions[0]).toBe('counts');
    expect(motions.slice(2)).toContain('moves');
  });

  test('a lost packet makes no reading of a counter', () => {
    const lossy = packets((_, index) => [index]).filter((_, index) => index % 11 !== 5);
    expect(movementOf(lossy)).toEqual({ motions: ['counts'], liveliest: null, size: 0 });
  });
});

describe('what moves most', () => {
  const size = (bytesAt: Parameters<typeof packets>[0]) => movementOf(packets(bytesAt)).size;
  const reading = size((ms) => [tenthsAt(ms)]);

  test('a reading before a temperature that creeps', () => {
    expect(reading).toBeGreaterThan(size((ms) => [20 + Math.floor(ms / 3000)]));
  });
  test('a reading before noise', () => {
    expect(reading).toBeGreaterThan(size((_, index) => [(index * index * 97) % 251]));
  });
  test('a counter and nothing at all have none', () => {
    expect(size((_, index) => [index])).toBe(0);
    expect(movementOf([])).toEqual({ motions: [], liveliest: null, size: 0 });
  });
});
