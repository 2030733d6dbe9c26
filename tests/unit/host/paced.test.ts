import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createPaced, MERGED_WITHIN_MS } from '../../../electron/paced.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('the first is done at once, and what is asked for meanwhile once when the time is over', () => {
  const work = vi.fn();
  const { soon } = createPaced(work);
  soon();
  expect(work).toHaveBeenCalledTimes(1);
  for (let n = 0; n < 50; n++) soon();
  vi.advanceTimersByTime(MERGED_WITHIN_MS - 1);
  expect(work).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(1);
  expect(work).toHaveBeenCalledTimes(2);
  vi.advanceTimersByTime(10 * MERGED_WITHIN_MS);
  expect(work).toHaveBeenCalledTimes(2);
  soon();
  expect(work).toHaveBeenCalledTimes(3);
});

test('what must not wait is done at once, and what was asked for is done with it', () => {
  const work = vi.fn();
  const { soon, now } = createPaced(work);
  soon();
  soon();
  now();
  expect(work).toHaveBeenCalledTimes(2);
  vi.advanceTimersByTime(10 * MERGED_WITHIN_MS);
  expect(work).toHaveBeenCalledTimes(2);
});

test('nothing more is done once it is stopped', () => {
  const work = vi.fn();
  const { soon, stop } = createPaced(work);
  soon();
  soon();
  stop();
  vi.advanceTimersByTime(10 * MERGED_WITHIN_MS);
  expect(work).toHaveBeenCalledTimes(1);
});
