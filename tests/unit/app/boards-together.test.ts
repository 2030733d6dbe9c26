import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { say } from './a-window.ts';
import { aimAt, type } from './in-round.ts';
import { pastPage } from './past-page.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo({ thicknessMm: 27 });

const rows = async () =>
  (await yard.query('boards.list', { stackId: yard.stack.id, search: '', offset: 0, limit: 10 })).rows;
/** The boards as a window shows them now. */
const shown = async () => (await rows()).map(({ id, version }) => ({ id, basedOn: version }));

test('only the given fields change', async () => {
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
  // The day goes with the side: a new side brings its own.
  await yard.command('boards.editTogether', {
    boards: await shown(),
    changed: { barkSide: 'down' },
    stackOrder: null,
  });
  for (const row of await rows()) expect(row).toMatchObject({ barkSide: 'down', barkOffOn: null });
  expect(yard.heard('changed').length).toBeGreaterThan(1);
});

test('boards are laid in the order given, and the next layer is the one above', async () => {
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

test('a stack order that cannot be, or a board that is not there, changes nothing at all', async () => {
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
  expect(
    await yard.command('boards.move', { boardIds, placeId: yard.place.id, since, isInserted: true }),
  ).toEqual({
    moved: 1,
  });
  const { moves } = await yard.query('boards.get', { id: id! });
  expect(moves.filter((move) => move.since === since)).toHaveLength(1);
});

test('no board is moved before it was sawn, unless its log was', async () => {
  const [first, second] = await shown();
  await yard.command('boards.edit', { ...second!, changed: { sawnOn: '2026-03-01' } });
  const move = { boardIds: [first!.id, second!.id], placeId: yard.place.id, isInserted: true };
  const before = { ...move, since: '2026-02-20T08:00:00.000Z' };
  expect(await yard.refusal('boards.move', before)).toMatch(/was sawn on .*Mar 1.*Was its log there\?$/);
  const movesOf = async (id: number) =>
    (await yard.query('boards.get', { id })).moves.map(({ since }) => since);
  expect(await movesOf(first!.id)).not.toContain(before.since);
  await yard.command('boards.move', { ...move, since: '2026-03-02T08:00:00.000Z' });
  await yard.command('boards.move', { ...before, isBeforeSawing: true });
  expect(await movesOf(second!.id)).toContain(before.since);
  expect(await movesOf(second!.id)).toContain('2026-03-02T08:00:00.000Z');
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

test('a board that was edited meanwhile is named and answered as it is now, and nothing is saved', async () => {
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
    `1 board was edited meanwhile: ${first!.code}. Nothing was saved. Choose what to do.`,
  );
  expect(await rows()).toEqual(before);
  expect(await yard.answer('boards.editTogether', edit)).toMatchObject({
    ok: false,
    current: [{ code: first!.code, version: 2, sawing: 'quarter' }],
  });
});

test('what was edited together can be edited together again from the versions answered', async () => {
  const { boards } = await yard.command('boards.editTogether', {
    boards: await shown(),
    changed: { sawing: 'rift' },
    stackOrder: null,
  });
  await yard.command('boards.editTogether', {
    boards: boards.map(({ id, version }) => ({ id, basedOn: version })),
    changed: { sawing: 'quarter' },
    stackOrder: null,
  });
  for (const row of await rows()) expect(row.sawing).toBe('quarter');
});

describe('a whole stack', () => {
  const act = randomUUID();
  /** Probes both boards in one round, wet enough to need drying. */
  async function probed(): Promise<void> {
    const { id } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    for (const index of [0, 1]) {
      await aimAt(id, index);
      for (let spot = 0; spot < 4; spot++) await type(id, 14);
    }
    await yard.command('rounds.finish', { roundId: id });
  }
  const averages = async () => (await rows()).map(({ latest }) => latest?.averagePct ?? null);
  const actsOnDisk = () => {
    const disk = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
    const requests = disk
      .prepare<[string], { request: string; changes: number }>(
        'SELECT request, (SELECT count(*) FROM act_change WHERE act_id = act.id) AS changes FROM act WHERE uuid = ?',
      )
      .all(act);
    disk.close();
    return requests;
  };

  test('of a wrong species is set right in one act, and its averages and calls follow', async () => {
    await probed();
    const before = await averages();
    await yard.command(
      'boards.editTogether',
      { boards: await shown(), changed: { speciesId: 'oak-northern-red' } },
      act,
    );
    expect(actsOnDisk()).toEqual([{ request: 'boards.editTogether', changes: 2 }]);
    // The curves of the two species differ, so the same raw values are other moisture contents.
    await expect.poll(averages).not.toEqual(before);
    for (const { speciesId, version } of await rows())
      expect([speciesId, version]).toEqual(['oak-northern-red', 2]);
  });

  test('gets sizes, sawing date, log, place, and use, and its calls go by the new target', async () => {
    await probed();
    const before = (await rows()).map(({ latest }) => latest?.reason);
    yard.later(60_000);
    const since = yard.now();
    const fence = await yard.command('places.add', {
      name: 'Fence row',
      kind: 'outdoors',
      air: Array.from({ length: 12 }, () => ({ tempC: 10, rh: 0.7 })),
    });
    await yard.command('boards.editTogether', {
      boards: await shown(),
      changed: {
        thicknessMm: 50.8,
        thicknessQuarters: 8,
        widthMm: 150,
        lengthMm: null,
        sawnOn: '2026-02-01',
        log: 'Ridge',
      },
      move: { placeId: fence.id, since },
      endUseId: 'exterior-most-us',
    });
    for (const row of await rows()) {
      expect(row).toMatchObject({
        thicknessMm: 50.8,
        thicknessQuarters: 8,
        widthMm: 150,
        lengthMm: null,
        sawnOn: '2026-02-01',
        log: 'Ridge',
        sawing: 'flat',
        placeName: 'Fence row',
        placeSince: since,
      });
    }
    expect((await yard.query('stacks.list', {}))[0]?.endUseId).toBe('exterior-most-us');
    await expect.poll(async () => (await rows()).map(({ latest }) => latest?.reason)).not.toEqual(before);
  });

  test('has the readings of its last round excluded for one reason, and included again', async () => {
    await probed();
    const before = await averages();
    await yard.command('boards.editTogether', {
      boards: await shown(),
      changed: {},
      latestReadings: { exclude: { code: 'wet-face' } },
    });
    await expect.poll(averages).toEqual([null, null]);
    const { readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
    expect(readings.map(({ excluded }) => excluded)).toEqual(readings.map(() => ({ code: 'wet-face' })));
    await yard.command('boards.editTogether', {
      boards: await shown(),
      changed: {},
      latestReadings: 'include',
    });
    await expect.poll(averages).toEqual(before);
  });

  test('has them excluded once, and that told, while its call is still being made', async () => {
    const lines = (await rows()).map(({ id: boardId }) => ({ boardId, raws: [14, 16] }));
    await yard.command(
      'pastRounds.save',
      pastPage({
        startedAt: '2026-05-20T17:00:00.000Z',
        depths: ['unknown', 'unknown'],
        lines,
        thereSince: '2026-05-01',
      }),
    );
    const excluding = async () =>
      yard.command('boards.editTogether', {
        boards: await shown(),
        changed: {},
        latestReadings: { exclude: { code: 'defect' } },
      });
    await excluding();
    const of = async () => (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
    expect((await of()).map(({ excluded }) => excluded)).toEqual([{ code: 'defect' }, { code: 'defect' }]);
    const { acts } = await yard.query('acts.list', { before: null, limit: 1, boardId: null });
    expect(say(acts[0]!.line)).toBe('4 readings excluded.');
  });

  test('tells whose calls an edit changed, once they are judged', async () => {
    await probed();
    const { act } = await yard.command('boards.editTogether', {
      boards: await shown(),
      changed: {},
      latestReadings: { exclude: { code: 'wet-face' } },
    });
    await expect
      .poll(() => yard.query('boards.callsChanged', { act }))
      .toEqual({
        isUndone: false,
        isJudging: false,
        changed: [
          { code: 'WAL-01', call: 'probe-again' },
          { code: 'WAL-02', call: 'probe-again' },
        ],
      });
  });

  test('is as before in all that was changed together, once that is undone', async () => {
    await probed();
    const everything = async () => ({
      boards: (await rows()).map(({ version: _, outlook: __, ...row }) => row),
      use: (await yard.query('stacks.get', { id: yard.stack.id })).endUseId,
      moves: (await yard.query('boards.get', { id: yard.boards[0]!.id })).moves,
    });
    const before = await everything();
    yard.later(60_000);
    const { act } = await yard.command('boards.editTogether', {
      boards: await shown(),
      changed: { speciesId: 'oak-northern-red', thicknessMm: 50.8, thicknessQuarters: 8, log: 'Ridge' },
      stackOrder: { perLayer: 2, firstLayer: 1, firstColumn: 1 },
      move: { placeId: yard.place.id, since: yard.now() },
      endUseId: 'exterior-most-us',
      latestReadings: { exclude: { code: 'wet-face' } },
    });
    expect((await everything()).moves).toHaveLength(2);
    await yard.command('acts.undo', { act });
    await expect.poll(everything).toEqual(before);
  });

  test('is not undone at all where the same of a board was edited since; what else was edited stays', async () => {
    const { act, boards } = await yard.command('boards.editTogether', {
      boards: await shown(),
      changed: { log: 'Ridge' },
    });
    const [first] = boards;
    const edit = async (basedOn: number, changed: { note?: string; log?: string }) =>
      yard.command('boards.edit', { id: first!.id, basedOn, changed });
    await edit(first!.version, { note: 'Split', log: 'Creek' });
    expect(await yard.refusal('acts.undo', { act })).toMatch(
      /WAL-01 was changed later, so nothing was undone/,
    );
    expect((await rows()).map(({ log }) => log)).toEqual(['Creek', 'Ridge']);
    await edit(first!.version + 1, { log: 'Ridge' });
    await yard.command('acts.undo', { act });
    expect((await rows()).map(({ log }) => log)).toEqual(['', '']);
    expect((await yard.query('boards.get', { id: first!.id })).board.note).toBe('Split');
  });

  test('is not changed at all where the species, the place, or the use is unknown', async () => {
    const before = await rows();
    for (const wrong of [
      { changed: { speciesId: 'no-such-species' } },
      { changed: { log: 'Ridge' }, move: { placeId: 999, since: yard.now() } },
      { changed: { log: 'Ridge' }, endUseId: 'no-such-use' },
    ]) {
      await yard.refusal('boards.editTogether', { boards: await shown(), ...wrong });
    }
    expect(await rows()).toEqual(before);
  });
});

describe('A stack whose boards are moved by their list', () => {
  const since = '2026-06-01T08:00:00.000Z';
  const stackNow = () => yard.query('stacks.get', { id: yard.stack.id });
  const moveTo = async (placeId: number, boards: { id: number; basedOn: number }[]) =>
    yard.command('boards.editTogether', { boards, changed: {}, move: { placeId, since } });
  const kilnRoom = async () =>
    (await yard.command('places.add', { name: 'Kiln room', kind: 'shop', air: yard.place.air })).id;

  test('goes with all of them: it shows them, and can be probed', async () => {
    const boards = await shown();
    const placeId = await kilnRoom();
    await moveTo(placeId, boards);
    expect(await stackNow()).toMatchObject({ boards: 2, elsewhere: { boards: 0 }, placeName: 'Kiln room' });
    expect(await rows()).toHaveLength(2);
    const round = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    expect(round.boards).toHaveLength(2);
  });

  test('stays with those that stay, and goes once the last one is moved by itself', async () => {
    const [first, last] = await shown();
    const placeId = await kilnRoom();
    await moveTo(placeId, [first!]);
    expect(await stackNow()).toMatchObject({
      boards: 1,
      elsewhere: { boards: 1 },
      placeName: yard.place.name,
    });
    await yard.command('boards.move', { boardIds: [last!.id], placeId, since });
    expect(await stackNow()).toMatchObject({ boards: 2, elsewhere: { boards: 0 }, placeName: 'Kiln room' });
  });

  test('comes back with them when the move is undone', async () => {
    const { act } = await moveTo(await kilnRoom(), await shown());
    await yard.command('acts.undo', { act });
    expect(await stackNow()).toMatchObject({
      boards: 2,
      elsewhere: { boards: 0 },
      placeName: yard.place.name,
    });
  });
});

describe('boards that are put in another stack', () => {
  const since = '2026-05-20T08:00:00.000Z';
  async function otherStack(placeId = yard.place.id) {
    const { id } = await yard.command('stacks.add', {
      name: 'Other',
      placeId,
      endUseId: 'furniture',
      topCover: 'covered',
      note: '',
    });
    return id;
  }
  const inStack = async (stackId: number) =>
    (await yard.query('boards.list', { stackId, search: '', offset: 0, limit: 10 })).rows;

  test('lose the layer that they had, or lie as given', async () => {
    const stackOrder = { perLayer: 2, firstLayer: 3, firstColumn: 1 };
    await yard.command('boards.editTogether', { boards: await shown(), changed: {}, stackOrder });
    const stackId = await otherStack();
    const [first, second] = await shown();
    await yard.command('boards.editTogether', { boards: [first!], changed: {}, stackId });
    expect(await inStack(stackId)).toMatchObject([{ code: 'WAL-01', layer: null, column: null }]);
    const laid = { perLayer: 1, firstLayer: 5, firstColumn: 1 };
    await yard.command('boards.editTogether', { boards: [second!], changed: {}, stackId, stackOrder: laid });
    expect(await inStack(stackId)).toMatchObject([{}, { code: 'WAL-02', layer: 5, column: 1 }]);
    expect(await rows()).toEqual([]);
  });

  test('are carried to its place in the same act, and come back by one undo', async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 30, rh: 0.3 }));
    const { id: placeId } = await yard.command('places.add', { name: 'Loft', kind: 'heated-room', air });
    const stackId = await otherStack(placeId);
    const boards = await shown();
    const move = { placeId, since, isInserted: true };
    const { act } = await yard.command('boards.editTogether', { boards, changed: {}, stackId });
    for (const board of (await yard.query('boards.list', all)).rows)
      expect(board).toMatchObject({ stackId, placeName: 'Shop' });
    // A stack is where its boards are.
    expect((await yard.query('stacks.get', { id: stackId })).placeName).toBe('Shop');
    await yard.command('acts.undo', { act });
    const carried = await yard.command('boards.editTogether', {
      boards: await shown(),
      changed: {},
      stackId,
      move,
    });
    expect((await yard.query('stacks.get', { id: stackId })).boards).toBe(2);
    await yard.command('acts.undo', { act: carried.act });
    expect(await rows()).toHaveLength(2);
  });
  const all = { stackId: null, search: '', offset: 0, limit: 10 };
});
