import { afterEach, expect, test, vi } from 'vitest';
import { goOnAfterFaults } from '../../../electron/going-on.ts';

const events = ['uncaughtException', 'unhandledRejection'] as const;
const before = new Map(events.map((event) => [event, process.listeners(event as 'uncaughtException')]));
afterEach(() => {
  vi.useRealTimers();
  for (const event of events) {
    process.removeAllListeners(event);
    for (const each of before.get(event) ?? []) process.on(event, each);
  }
});

function listen() {
  for (const event of events) process.removeAllListeners(event);
  const reported: unknown[] = [];
  const end = vi.fn();
  goOnAfterFaults((error) => reported.push(error), end);
  return { reported, end };
}

test('a fault that nothing caught is written down, and the process goes on', () => {
  const { reported, end } = listen();
  process.emit('uncaughtException', new Error('one'));
  process.emit('unhandledRejection', 'two', Promise.resolve());
  expect(reported).toEqual([new Error('one'), 'two']);
  expect(end).not.toHaveBeenCalled();
});

test('faults that do not stop end it', () => {
  const { end } = listen();
  for (let fault = 0; fault < 21; fault++) process.emit('uncaughtException', new Error('again'));
  expect(end).toHaveBeenCalledOnce();
});

test('faults that are far apart do not', () => {
  vi.useFakeTimers({ toFake: ['performance'] });
  const { end } = listen();
  for (let fault = 0; fault < 40; fault++) {
    process.emit('uncaughtException', new Error('now and then'));
    vi.advanceTimersByTime(10_000);
  }
  expect(end).not.toHaveBeenCalled();
});
