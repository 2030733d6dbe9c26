import { expect, test, vi } from 'vitest';
import { beginQueue, endQueue, enqueue } from '../../../electron/meter/radio/notification-queue.ts';
import { send } from '../../../electron/meter/radio/outbox.ts';

vi.mock('../../../electron/meter/radio/outbox.ts', async (original) => ({
  ...(await original<object>()),
  // The app's side takes nothing for now.
  send: vi.fn(),
}));

const from = { kind: 'characteristic', serviceUuid: '181a', characteristicUuid: '2a6f' } as const;
const passedOn = () =>
  vi.mocked(send).mock.calls.flatMap(([message]) => (message.type === 'notifications' ? [message] : []));
const valuesOf = () =>
  passedOn().flatMap(({ items }) => items.map(({ bytes }) => bytes![0]! * 256 + bytes![1]!));

test('values that wait for a busy app are passed on before the link is told to be lost, and dropped ones are counted', () => {
  vi.useFakeTimers();
  beginQueue(7);
  for (let value = 0; value < 4000; value++) enqueue(from, Buffer.of(value >> 8, value & 0xff));
  vi.advanceTimersByTime(1000);
  const waiting = valuesOf().length;
  expect(waiting).toBeLessThan(1000);
  endQueue();
  const values = valuesOf();
  expect(values).toEqual(values.map((_, index) => index));
  expect(values.length + passedOn().reduce((sum, { overrun }) => sum + overrun, 0)).toBe(4000);
  expect(values.length).toBeGreaterThan(2000);
  expect(new Set(passedOn().map(({ attempt }) => attempt))).toEqual(new Set([7]));
  vi.useRealTimers();
});
