import { expect, test } from 'vitest';
import { onceATurn } from '../../../renderer/data/once-a-turn.ts';

test('what all ask for in one turn is found out once, and again in the next', async () => {
  let asked = 0;
  const find = onceATurn(() => ++asked);
  expect([find(), find(), find()]).toEqual([1, 1, 1]);
  await Promise.resolve();
  expect(find()).toBe(2);
});
