import { afterEach, describe, expect, test, vi } from 'vitest';
import { inSlices, paced } from '../../../electron/app/slices.ts';

const clock = vi.hoisted(() => ({ ms: 0 }));
vi.mock('../../../electron/monotonic.ts', () => ({ monotonicMs: () => clock.ms }));
afterEach(() => {
  clock.ms = 0;
});

/** How many boards each slice has, and how long it took, on a computer that needs so long for a board. */
function slicesOf(boards: number, msPerBoard: (board: number) => number, commitMs = 0) {
  const slices: { boards: number; ms: number }[] = [];
  const all = Array.from({ length: boards }, (_, index) => index);
  const seen: number[] = [];
  for (const _ of inSlices(all, (slice) => {
    const ms = slice.reduce((sum, board) => sum + msPerBoard(board), 0);
    clock.ms += ms;
    seen.push(...slice);
    slices.push({ boards: slice.length, ms });
  })) {
    clock.ms += commitMs;
  }
  expect(seen).toEqual(all);
  return slices;
}

describe('an act in slices', () => {
  test('of no more than 250 boards is one slice, however slow the computer is', () => {
    expect(slicesOf(250, () => 5)).toEqual([{ boards: 250, ms: 1250 }]);
  });

  test('of 100,000 boards takes far fewer slices where they are quick', () => {
    const slices = slicesOf(100_000, () => 1 / 64);
    expect(Math.max(...slices.map(({ ms }) => ms))).toBeLessThanOrEqual(40);
    expect(slices.length).toBeLessThan(90);
  });

  test('holds others up no longer after its first slice where a board takes long', () => {
    const [first, ...others] = slicesOf(5000, () => 1);
    expect(first).toEqual({ boards: 250, ms: 250 });
    expect(Math.max(...others.map(({ ms }) => ms))).toBeLessThanOrEqual(40);
  });

  test('has larger slices where commits take long: half of the time goes to the boards', () => {
    const [, , , ...others] = slicesOf(5000, () => 1, 100);
    expect(Math.max(...others.map(({ ms }) => ms))).toBe(100);
    const slowest = slicesOf(5000, () => 1, 1000).slice(3);
    expect(Math.max(...slowest.map(({ ms }) => ms))).toBe(150);
  });

  test('becomes slower and quicker with the computer', () => {
    const slices = slicesOf(20_000, (board) => (board > 5000 && board < 10_000 ? 1 : 0.05));
    const isSlow = ({ ms }: { ms: number }) => ms > 80;
    expect(slices.filter(isSlow)).toHaveLength(1);
    expect(Math.max(...slices.slice(-3).map(({ boards }) => boards))).toBeGreaterThan(400);
  });

  test('of parts that take very different times has none much longer than the time allows', () => {
    const begun = [0];
    const slices = paced(function* (isOver) {
      for (let part = 0; part < 3000; part++) {
        clock.ms += part < 2000 ? 0.01 : 1;
        if (isOver()) yield { done: part, total: 3000 };
      }
      return 'done';
    });
    for (const _ of slices) begun.push(clock.ms);
    const lasted = begun.slice(1).map((ms, index) => ms - (begun[index] as number));
    expect(lasted.length).toBeGreaterThan(20);
    expect(Math.max(...lasted)).toBeLessThanOrEqual(41);
  });
});
