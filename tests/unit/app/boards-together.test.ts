import { expect, test } from 'vitest';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const rows = async () =>
  (await yard.query('boards.list', { stackId: yard.stack.id, search: '', offset: 0, limit: 10 })).rows;
/** The boards as a window shows them now. */
const shown = async () => (await rows()).map(({ id, version }) => ({ id, basedOn: version }));

test('what is said of several boards is kept, what is not said stays', async () => {
  await yard.command('boards.editTogether', {
    boards: await shown(),
    changed: { ringRadiusMm: 110, barkSide: 'up', barkOffOn: '2026-05-03' },
    stackOrder: null,
  });
  for (const row of await rows()) {
    expect(row).toMatchObject({
      ringRadiusMm: 110,
      barkSide: 'up',
      barkOffOn: '2026-05-03',
      sawing: 'flat',
      layer: null,
    });
  }
  await yard.command('boards.editTogether', {
    boards: await shown(),
    changed: { sawing: 'rift', ringRadiusMm: null },
    stackOrder: null,
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
  await yard.command('boards.editTogether', {
    boards: await shown(),
    changed: { barkSide: 'down' },
    stackOrder: null,
  });
  for (const row of await rows()) expect(row).toMatchObject({ barkSide: 'down', barkOffOn: null });
  expect(yard.heard('changed').length).toBeGreaterThan(1);
});

test('boards are laid in the order given, and the next course is the one above', async () => {
  expect(await yard.query('stacks.nextLayer', { id: yard.stack.id })).toEqual({ layer: 1 });
  await yard.command('boards.editTogether', {
    boards: (await shown()).toReversed(),
    changed: {},
    stackOrder: { perLayer: 1, firstLayer: 2, firstColumn: 1 },
  });
  expect((await rows()).map(({ code, layer, column }) => [code, layer, column])).toEqual([
    ['WAL-01', 3, 1],
    ['WAL-02', 2, 1],
  ]);
  expect(await yard.query('stacks.nextLayer', { id: yard.stack.id })).toEqual({ layer: 4 });
});

test('a pile that cannot be, or a board that is not there, changes nothing at all', async () => {
  const before = await rows();
  const stackOrder = { perLayer: 1, firstLayer: 500, firstColumn: 1 };
  expect(
    await yard.refusal('boards.editTogether', { boards: await shown(), changed: {}, stackOrder }),
  ).toMatch(/makes 501 layers\. .* Nothing was changed/);
  expect(
    await yard.refusal('boards.editTogether', {
      boards: [...(await shown()), { id: 999, basedOn: 1 }],
      changed: { barkSide: 'down' },
      stackOrder: null,
    }),
  ).toMatch(/board is not in this yard/);
  expect(await rows()).toEqual(before);
});

test('a board that is named several times is moved once', async () => {
  const id = yard.boards[0]!.id;
  const boardIds = Array.from({ length: 1000 }, () => id);
  const since = '2026-05-20T08:00:00.000Z';
  expect(await yard.command('boards.move', { boardIds, placeId: yard.place.id, since })).toEqual({
    moved: 1,
  });
  const { moves } = await yard.query('boards.get', { id: id! });
  expect(moves.filter((move) => move.since === since)).toHaveLength(1);
});

test('an edit of a board that is not there is refused', async () => {
  const edit = { id: 999, basedOn: 1, changed: { note: 'x' } };
  expect(await yard.answer('boards.edit', edit)).toEqual({
    ok: false,
    problem: { code: 'refusal.not-found', facts: { what: 'board' } },
  });
});

test('a refusal does not say a whole page back', async () => {
  const board = { ...yard.board('WAL-09'), speciesId: 'x'.repeat(10_000) };
  expect((await yard.refusal('boards.add', [board])).length).toBeLessThan(200);
});

test('a board that was edited meanwhile is named, and nothing is saved', async () => {
  const boards = await shown();
  const [first] = await rows();
  await yard.command('boards.edit', {
    id: first!.id,
    basedOn: first!.version,
    changed: { sawing: 'quarter' },
  });
  const before = await rows();
  const edit = { boards, changed: { sawing: 'rift' as const }, stackOrder: null };
  expect(await yard.refusal('boards.editTogether', edit)).toBe(
    `1 board was edited meanwhile: ${first!.code}. Nothing was saved. Check the list, then select the boards again.`,
  );
  expect(await rows()).toEqual(before);
});

test('what was edited together can be edited together again from the versions answered', async () => {
  const versions = await yard.command('boards.editTogether', {
    boards: await shown(),
    changed: { sawing: 'rift' },
    stackOrder: null,
  });
  await yard.command('boards.editTogether', {
    boards: versions.map(({ id, version }) => ({ id, basedOn: version })),
    changed: { sawing: 'quarter' },
    stackOrder: null,
  });
  for (const row of await rows()) expect(row.sawing).toBe('quarter');
});
