import { expect, test } from 'vitest';
import { noPace, type Pace, silenceMs, withPacket } from '../../../shared-core/probing/readings/silence.ts';

/** What is known after packets at such times, ms; each says the same unless told otherwise. */
const after = (times: readonly number[], said: (n: number) => string = () => '18.5'): Pace =>
  times.reduce((pace, atMs, n) => withPacket(pace, atMs, said(n)), noPace());
const every = (ms: number, count: number): number[] => Array.from({ length: count }, (_, n) => n * ms);

test('ten values a second: silent after two seconds', () => {
  const pace = after(every(100, 20));
  expect(silenceMs(pace, 1900 + 1999)).toBeNull();
  expect(silenceMs(pace, 1900 + 3000)).toBe(3000);
});

test('one value each 4 s: silent after three of them', () => {
  const pace = after(every(4000, 12));
  expect(silenceMs(pace, 44_000 + 11_900)).toBeNull();
  expect(silenceMs(pace, 44_000 + 12_000)).toBe(12_000);
});

test('one that is heard only now and then gets longer', () => {
  const heard = [0, 1, 2, 5, 6, 7, 8, 9, 10, 11, 12].map((s) => s * 1000);
  const pace = after(heard);
  expect(silenceMs(pace, 12_000 + 4400)).toBeNull();
  expect(silenceMs(pace, 12_000 + 4500)).toBe(4500);
});

test('one that sends only what changed is never silent, however quickly the value ran before', () => {
  const pace = after(every(100, 40), (n) => `${n}`);
  expect(silenceMs(pace, 600_000)).toBeNull();
});

test('nobody knows after fewer than ten values', () => {
  expect(silenceMs(after(every(100, 9)), 60_000)).toBeNull();
});

test('the next value ends it, and the pace is learned anew', () => {
  const again = withPacket(after(every(100, 20)), 9000, '18.5');
  expect(silenceMs(again, 12_000)).toBeNull();
  expect(silenceMs(again, 9000 + 600_000)).toBeNull();
  const learned = every(1000, 9).reduce((pace, ms) => withPacket(pace, 10_000 + ms, '18.5'), again);
  expect(silenceMs(learned, 18_000 + 3000)).toBe(3000);
});

test('the newest ten values make the pace, however slow it was before', () => {
  const pace = after([...every(4000, 12), ...every(100, 20).map((ms) => 44_100 + ms)]);
  expect(silenceMs(pace, 46_000 + 2000)).toBe(2000);
});

test('a value sent again three times among those that changed is no pause between changes', () => {
  const repeated = (times: number) => after(every(100, 20), (n) => `${Math.max(n, times)}`);
  expect(silenceMs(repeated(2), 60_000)).toBeNull();
  expect(silenceMs(repeated(3), 60_000)).toBe(58_100);
});

test('before anything was sent there is no silence', () => {
  expect(silenceMs(noPace(), 60_000)).toBeNull();
  expect(silenceMs(withPacket(noPace(), 0, ''), 60_000)).toBeNull();
  // The first says nothing again.
  expect(withPacket(noPace(), 0, '').repeats).toBe(0);
});
