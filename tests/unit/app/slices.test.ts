import { afterEach, describe, expect, test, vi } from 'vitest';
import { ending, inSlices, paced } from '../../../electron/app/slices.ts';

const clock = vi.hoisted(() => ({ ms: 0 }));
vi.mock('../../../electron/monotonic.ts', () => ({ monotonicMs: () => clock.ms }));
afterEach(() => {
  clock.ms = 0;
});

/** How many boards each slice has, and how long it took, on a computer that needs so long for a board. */
function slicesOf(boards: number, msPerBoard: (board: number) => number, commitMs = 0) {
  const slices = [{ boards: 0, ms: 0 }];
  const all = Array.from({ length: boards }, (_, index) => index);
  const seen: number[] = [];
  for (const _ of inSlices(all, (batch) => {
    const ms = batch.reduce((sum, board) => sum + msPerBoard(board), 0);
    clock.ms += ms;
    seen.push(...batch);
    const slice = slices.at(-1)!;
    slice.boards += batch.length;
    slice.ms += ms;
  })) {
    slices.push({ boards: 0, ms: 0 });
    clock.ms += commitMs;
  }
  expect(seen).toEqual(all);
  return slices;
}
const longest = (slices: { ms: number }[]): number => Math.max(...slices.map(({ ms }) => ms));

describe('an act in slices', () => {
  test('of no more than 250 boards is one slice, however slow the computer is', () => {
    expect(slicesOf(250, () => 5)).toEqual([{ boards: 250, ms: 1250 }]);
  });

  test('of more does nothing before others had a turn: finding them took a slice', () => {
    expect(slicesOf(251, () => 1)[0]).toEqual({ boards: 0, ms: 0 });
  });

  test('of 100,000 boards takes few slices where they are quick, and holds others up for 20 ms', () => {
    const slices = slicesOf(100_000, () => 1 / 64);
    expect(longest(slices)).toBeLessThanOrEqual(20);
    expect(slices.length).toBeLessThan(120);
  });

  test('holds others up no longer where a board takes long, from its first slice on', () => {
    expect(longest(slicesOf(5000, () => 0.5))).toBeLessThanOrEqual(20);
    expect(longest(slicesOf(5000, () => 1))).toBeLessThanOrEqual(30);
  });

  test('holds others up no longer where commits take long', () => {
    expect(longest(slicesOf(5000, () => 0.5, 1000))).toBeLessThanOrEqual(20);
  });

  test('becomes slower and quicker with the computer, and holds others up no longer', () => {
    const slices = slicesOf(20_000, (board) => (board > 5000 && board < 10_000 ? 0.5 : 0.05));
    expect(longest(slices)).toBeLessThanOrEqual(70);
    expect(slices.filter(({ ms }) => ms > 20)).toHaveLength(1);
    expect(slices.at(-2)!.boards).toBeGreaterThan(250);
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
    expect(Math.max(...lasted)).toBeLessThanOrEqual(16);
  });

  test('has its outcome checked and saved in a separate slice, where it has several', () => {
    const stepsOf = (boards: number): string[] => {
      const steps: string[] = [];
      const all = Array.from({ length: boards }, () => 1);
      const slices = ending(
        inSlices(all, () => steps.push('board')),
        () => {
          steps.push('outcome');
        },
      );
      for (const _ of slices) steps.push('turn');
      return steps;
    };
    expect(stepsOf(250)).toEqual(['board', 'outcome']);
    expect(stepsOf(251).slice(-3)).toEqual(['board', 'turn', 'outcome']);
  });
});
