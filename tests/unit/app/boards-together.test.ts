import { expect, test } from 'vitest';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const rows = async () =>
  (await yard.call('boards.list', { stackId: yard.stack.id, search: '', offset: 0, limit: 10 })).rows;
const ids = () => yard.boards.map(({ id }) => id);

test('what is said of several boards is kept, what is not said stays', async () => {
  const boardIds = ids();
  await yard.call('boards.changeTogether', {
    boardIds,
    said: { ringRadiusMm: 110, barkSide: 'up', barkOffOn: '2026-05-03' },
    pile: null,
  });
  for (const row of await rows()) {
    expect(row).toMatchObject({
      ringRadiusMm: 110,
      barkSide: 'up',
      barkOffOn: '2026-05-03',
      sawing: 'flat',
      course: null,
    });
  }
  await yard.call('boards.changeTogether', {
    boardIds,
    said: { sawing: 'rift', ringRadiusMm: null },
    pile: null,
  });
  for (const row of await rows()) {
    expect(row).toMatchObject({
      ringRadiusMm: null,
      barkSide: 'up',
      barkOffOn: '2026-05-03',
      sawing: 'rift',
      thicknessMm: 27,
    });
  }
  // The day goes with the side: said anew, the side brings its own.
  await yard.call('boards.changeTogether', { boardIds, said: { barkSide: 'down' }, pile: null });
  for (const row of await rows()) expect(row).toMatchObject({ barkSide: 'down', barkOffOn: null });
  expect(yard.heard('yard.changed').length).toBeGreaterThan(1);
});

test('boards are laid in the order given, and the next course is the one above', async () => {
  expect(await yard.call('stacks.nextCourse', { id: yard.stack.id })).toEqual({ course: 1 });
  await yard.call('boards.changeTogether', {
    boardIds: ids().toReversed(),
    said: {},
    pile: { perCourse: 1, firstCourse: 2, firstColumn: 1 },
  });
  expect((await rows()).map(({ code, course, column }) => [code, course, column])).toEqual([
    ['WAL-01', 3, 1],
    ['WAL-02', 2, 1],
  ]);
  expect(await yard.call('stacks.nextCourse', { id: yard.stack.id })).toEqual({ course: 4 });
});

test('a pile that cannot be, or a board that is not there, changes nothing at all', async () => {
  const before = await rows();
  const pile = { perCourse: 1, firstCourse: 500, firstColumn: 1 };
  expect(await yard.refusal('boards.changeTogether', { boardIds: ids(), said: {}, pile })).toMatch(
    /top course would be number 501; .* Nothing was changed/,
  );
  expect(
    await yard.refusal('boards.changeTogether', {
      boardIds: [...ids(), 999],
      said: { barkSide: 'down' },
      pile: null,
    }),
  ).toMatch(/no such board/);
  expect(await rows()).toEqual(before);
});
