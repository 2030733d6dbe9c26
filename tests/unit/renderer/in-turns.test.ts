import { afterEach, expect, test, vi } from 'vitest';
import { inTurns } from '../../../renderer/data/in-turns.ts';

afterEach(() => vi.restoreAllMocks());

/** A hundred steps of 2 ms each. */
function* work(done: number[]): Generator<void, string> {
  for (let step = 0; step < 100; step++) {
    done.push(step);
    yield;
  }
  return 'done';
}

function stepClock(): void {
  let nowMs = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => {
    nowMs += 2;
    return nowMs;
  });
}

test('long work lets others have their turn, and its first turn is at once', async () => {
  stepClock();
  const done: number[] = [];
  const came = inTurns(work(done), () => false);
  expect(done.length).toBeGreaterThan(0);
  let othersAt: number | null = null;
  setTimeout(() => {
    othersAt = done.length;
  });
  expect(await came).toBe('done');
  expect(done).toHaveLength(100);
  expect(othersAt).toBeLessThan(20);
});

test('work that nobody waits for any more ends', async () => {
  stepClock();
  const done: number[] = [];
  expect(await inTurns(work(done), () => true)).toBeNull();
  expect(done.length).toBeLessThan(20);
});
