// @vitest-environment jsdom

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { inFrames } from '../../../../renderer/data/in-frames.ts';

let frame: () => void;
const drawn: (readonly number[])[] = [];

beforeEach(() => {
  frame = () => undefined;
  drawn.length = 0;
  vi.spyOn(window, 'requestAnimationFrame').mockImplementation((work) => {
    frame = () => work(0);
    return 1;
  });
  vi.spyOn(window, 'cancelAnimationFrame').mockImplementation(() => {
    frame = () => undefined;
  });
});
afterEach(() => void vi.restoreAllMocks());

const lives = () => inFrames<number>((came) => drawn.push(came));

test('the first is drawn at once, and a backlog once with the next frame', () => {
  const { take } = lives();
  for (let n = 1; n <= 100; n++) take(n);
  expect(drawn).toEqual([[1]]);
  frame();
  expect(drawn).toHaveLength(2);
  expect(drawn.flat()).toEqual(Array.from({ length: 100 }, (_, index) => index + 1));
  take(101);
  expect(drawn.at(-1)).toEqual([101]);
});

test('a window that nobody sees draws each as it comes', () => {
  const { take } = lives();
  take(1);
  vi.spyOn(document, 'hidden', 'get').mockReturnValue(true);
  take(2);
  take(3);
  expect(drawn).toEqual([[1], [2], [3]]);
});

test('what waits for its frame is dropped once it no longer holds', () => {
  const { take, drop } = lives();
  take(1);
  take(2);
  drop();
  frame();
  expect(drawn).toEqual([[1]]);
  take(3);
  expect(drawn).toEqual([[1], [3]]);
});
