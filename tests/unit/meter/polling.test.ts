import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { poll } from '../../../electron/meter/radio/polling.ts';
import { monotonicMs } from '../../../electron/monotonic.ts';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'hrtime'] });
});
afterEach(() => {
  vi.useRealTimers();
});

test('one value is asked for at a time, a slow one less often, and nothing is made up for', async () => {
  let underWay = 0;
  const asked: string[] = [];
  const valueThatTakes = (name: string, takesMs: number, everyMs: number) => ({
    everyMs,
    read: async () => {
      expect(++underWay).toBe(1);
      asked.push(name);
      await new Promise((resolve) => setTimeout(resolve, takesMs));
      underWay--;
    },
  });
  const endsMs = monotonicMs() + 10_000;
  const polling = poll(
    [valueThatTakes('quick', 10, 500), valueThatTakes('slow', 1000, 500)],
    () => monotonicMs() < endsMs,
  );
  await vi.advanceTimersByTimeAsync(12_000);
  await polling;
  // The slow one takes 1,000 ms and rests 500; the quick one gets its turn between.
  expect(asked.filter((name) => name === 'slow').length).toBeLessThanOrEqual(7);
  expect(asked.filter((name) => name === 'quick').length).toBeGreaterThanOrEqual(6);
});
