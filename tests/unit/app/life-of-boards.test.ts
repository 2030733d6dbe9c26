import { expect, test } from 'vitest';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const listed = async (filter: 'archived' | null = null, stackId: number | null = null) =>
  (await yard.query('boards.list', { stackId, search: '', filter, offset: 0, limit: 10 })).rows.map(
    ({ code }) => code,
  );
const ids = () => yard.boards.map(({ id }) => id);
const attic = () =>
  yard.command('places.add', {
    name: 'Attic',
    kind: 'shop',
    air: Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.4 })),
  });
const sell = (boardIds: number[], at = yard.now()) =>
  yard.command('boards.archive', { boardIds, why: 'sold', note: 'Miller, for a table', at });

test('a sold board leaves lists, counts, rounds and the next number, and is found as archived with why and when', async () => {
  const [first] = yard.boards;
  await sell([first!.id]);
  expect(await listed()).toEqual(['WAL-02']);
  expect(await listed(null, yard.stack.id)).toEqual(['WAL-02']);
  expect((await yard.query('stacks.get', { id: yard.stack.id })).boards).toBe(1);
  expect((await yard.query('places.list', {}))[0]?.stacks).toMatchObject([{ boards: 1 }]);
  expect((await yard.query('labels.boards', { stackId: yard.stack.id, search: '' })).total).toBe(1);
  const round = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
    startedOn: null,
  });
  expect(round.boards.map(({ code }) => code)).toEqual(['WAL-02']);
  expect(await listed('archived')).toEqual(['WAL-01']);
  const { board } = await yard.query('boards.get', { id: first!.id });
  expect(board.archived).toEqual({ code: 'sold', note: 'Miller, for a table', at: yard.now() });
  const forecast = await yard.query('boards.forecast', { id: first!.id });
  expect(forecast).toMatchObject({ details: null, whyNot: { code: 'forecast.archived' } });
  expect(await yard.refusal('boards.archive', { boardIds: [first!.id], why: 'used', at: yard.now() })).toBe(
    'WAL-01 left the yard already. Nothing was changed. Deselect it, or bring it back first.',
  );
});

test('a stack was last probed when a board that is still in it was', async () => {
  const { id } = await yard.beginRound();
  await yard.command('rounds.finish', { roundId: id });
  const lastProbedAt = async () => (await yard.query('stacks.get', { id: yard.stack.id })).lastProbedAt;
  expect(await lastProbedAt()).not.toBeNull();
  await sell([yard.boards[1]!.id]);
  expect(await lastProbedAt()).not.toBeNull();
  await sell([yard.boards[0]!.id]);
  expect(await lastProbedAt()).toBeNull();
});

test('numbering goes on after the boards that left', async () => {
  await sell(ids());
  expect((await yard.query('boards.nextCode', { stackId: yard.stack.id })).code).toBe('WAL-03');
});

test('a board of a running round that is sold takes no more readings', async () => {
  const round = await yard.beginRound();
  await sell([yard.boards[0]!.id]);
  const refusal = await yard.refusal('rounds.saveTyped', {
    roundId: round.id,
    boardId: yard.boards[0]!.id,
    spotIndex: 1,
    newestReadingId: null,
    raw: 12.6,
  });
  expect(refusal).toBe('WAL-01 is no longer in this stack. Nothing was saved. Choose another board.');
});

test('boards come back with their readings, under another ID where theirs was given away', async () => {
  await yard.beginRound();
  const [first] = yard.boards;
  await sell(ids());
  await yard.command('boards.add', [yard.board('WAL-01')]);
  const boards = ids().map((id) => ({ id }));
  expect(await yard.refusal('boards.bringBack', { boards })).toBe(
    'Another board is called WAL-01 now. Nothing was brought back. Open the board and give it another ID.',
  );
  expect(await listed()).toEqual(['WAL-01']);
  await yard.command('boards.bringBack', {
    boards: [{ id: first!.id, code: 'WAL-11' }, { id: yard.boards[1]!.id }],
  });
  expect((await listed()).toSorted()).toEqual(['WAL-01', 'WAL-02', 'WAL-11']);
  expect(await listed('archived')).toEqual([]);
  const { board, readings } = await yard.query('boards.get', { id: first!.id });
  expect(board.archived).toBeNull();
  expect(readings).toHaveLength(1);
  await outlooksMade();
});

test('only boards without readings can be deleted, and they are in no list then', async () => {
  await yard.beginRound();
  expect(await yard.refusal('boards.delete', { boardIds: ids() })).toBe(
    'WAL-01 has readings or weights. Nothing was deleted. Mark it as sold, used, or scrapped.',
  );
  expect(await listed()).toEqual(['WAL-01', 'WAL-02']);
  await yard.command('boards.delete', { boardIds: [yard.boards[1]!.id] });
  expect(await listed()).toEqual(['WAL-01']);
  expect(await listed('archived')).toEqual([]);
  // Its ID is free again, for whoever types it.
  expect((await yard.query('boards.nextCode', { stackId: yard.stack.id })).code).toBe('WAL-03');
  await yard.command('boards.add', [yard.board('WAL-02')]);
});

test('a reserved board is sold or scrapped only after a question, and used without one', async () => {
  const [first, second] = ids();
  const project = await yard.command('projects.add', { name: 'Smith table', neededBy: null, note: '' });
  await yard.command('reservations.set', { boardIds: [first!, second!], projectId: project.id });
  const at = yard.now();
  expect(await yard.refusal('boards.archive', { boardIds: [first!], why: 'sold', at })).toBe(
    'WAL-01 is reserved for Smith table. Nothing was changed. Mark it as sold anyway?',
  );
  expect(await yard.refusal('boards.archive', { boardIds: ids(), why: 'scrapped', at })).toBe(
    '2 of these boards are reserved. One is WAL-01, for Smith table. Nothing was changed. Mark them as scrapped anyway?',
  );
  expect(await listed()).toEqual(['WAL-01', 'WAL-02']);
  expect(
    await yard.command('boards.archive', { boardIds: [first!], why: 'sold', at, isReserved: true }),
  ).toEqual({ archived: 1, released: [first] });
  expect(await yard.command('boards.archive', { boardIds: [second!], why: 'used', at })).toEqual({
    archived: 1,
    released: [second],
  });
});

test('boards that left are found by what became of them and in which year, with their board feet', async () => {
  // 12 in wide, 8 ft long, under 1 in thick counts as 1 in: 8 board feet by definition.
  const sizes = { widthMm: 304.8, lengthMm: 2438.4 };
  const [first, second] = ids();
  await yard.command('boards.edit', { id: first!, basedOn: 1, changed: sizes });
  await yard.command('boards.archive', { boardIds: [first!], why: 'sold', note: 'Miller', at: yard.now() });
  await yard.command('boards.archive', { boardIds: [second!], why: 'scrapped', at: yard.now() });
  expect(await yard.query('boards.left', {})).toEqual([
    { became: 'sold', year: 2026, soldTo: 'Miller', boards: 1, measured: 1, boardFeet: 8 },
    expect.objectContaining({ became: 'scrapped', year: 2026, soldTo: null, boards: 1 }),
  ]);
  const found = async (became: 'sold' | 'cut' | null, year: number | null, soldTo: string | null = null) =>
    (
      await yard.query('boards.list', {
        stackId: null,
        search: '',
        filter: 'archived',
        left: { became, year, soldTo },
        offset: 0,
        limit: 10,
      })
    ).rows.map(({ code }) => code);
  expect(await found('sold', null)).toEqual(['WAL-01']);
  expect(await found('sold', 2026)).toEqual(['WAL-01']);
  expect(await found('sold', 2025)).toEqual([]);
  expect(await found('cut', null)).toEqual([]);
  expect(await found(null, 2026)).toHaveLength(2);
  expect(await found('sold', null, 'Miller')).toEqual(['WAL-01']);
  // No board was sold without a name.
  expect(await found('sold', null, '')).toEqual([]);
});

test('a buyer is one, however the name was written', async () => {
  const [first, second] = ids();
  const sell = (id: number, note: string) =>
    yard.command('boards.archive', { boardIds: [id], why: 'sold', note, at: yard.now() });
  await sell(first!, 'Ann  Müller');
  await sell(second!, 'ann MÜLLER');
  expect(await yard.query('boards.left', {})).toMatchObject([{ soldTo: 'Ann  Müller', boards: 2 }]);
  const { rows } = await yard.query('boards.list', {
    stackId: null,
    search: '',
    filter: 'archived',
    left: { became: 'sold', year: null, soldTo: 'Ann  Müller' },
    offset: 0,
    limit: 10,
  });
  expect(rows).toHaveLength(2);
});

test('a day in the future is refused', async () => {
  const at = new Date(Date.parse(yard.now()) + 86_400_000).toISOString();
  expect(await yard.refusal('boards.archive', { boardIds: ids(), why: 'used', at })).toBe(
    'That day is in the future. Nothing was changed. Give today or an earlier day.',
  );
  expect(await listed()).toEqual(['WAL-01', 'WAL-02']);
});

test('a day before the last reading is asked about, and one of the same day is not', async () => {
  await yard.beginRound();
  yard.later(86_400_000);
  const boardIds = ids();
  const at = new Date(Date.parse(yard.now()) - 2 * 86_400_000).toISOString();
  expect(await yard.refusal('boards.archive', { boardIds, why: 'sold', at })).toBe(
    'WAL-01 was probed on Jun 1, 2026, after that day. Nothing was changed. Is that day right?',
  );
  expect(await listed()).toEqual(['WAL-01', 'WAL-02']);
  await yard.command('boards.archive', { boardIds, why: 'sold', at, isBeforeReading: true });
  await yard.command('boards.bringBack', { boards: boardIds.map((id) => ({ id })) });
  const sameDay = new Date(Date.parse(yard.now()) - 86_400_000 - 3_600_000).toISOString();
  await yard.command('boards.archive', { boardIds, why: 'sold', at: sameDay });
  expect(await listed()).toEqual([]);
});

test('a day before it was sawn is refused, and one before the last move is asked about', async () => {
  const id = ids()[0]!;
  await yard.command('boards.edit', { id, basedOn: 1, changed: { sawnOn: '2026-05-20' } });
  const left = { boardIds: [id], why: 'sold' as const };
  expect(await yard.refusal('boards.archive', { ...left, at: '2026-05-19T17:00:00.000Z' })).toBe(
    'WAL-01 was sawn on May 20, 2026, after that day. Nothing was changed. Give a later day, or correct the sawing date.',
  );
  const { id: placeId } = await attic();
  yard.later(86_400_000);
  await yard.command('boards.move', { boardIds: [id], placeId, since: yard.now(), isDayOnly: false });
  const at = '2026-05-30T17:00:00.000Z';
  expect(await yard.refusal('boards.archive', { ...left, at })).toBe(
    'WAL-01 was moved to Attic on Jun 2, 2026, after that day. Nothing was changed. Is that day right?',
  );
  await yard.command('boards.archive', { ...left, at, isBeforeMove: true });
  expect(await listed('archived')).toEqual(['WAL-01']);
});

test('a board that another window took out is not moved, reserved or planned for', async () => {
  const id = ids()[0]!;
  await sell([id]);
  const project = await yard.command('projects.add', { name: 'Table', neededBy: null, note: '' });
  const { id: placeId } = await attic();
  const gone = 'WAL-01 left the yard already. Nothing was changed. Deselect it, or bring it back first.';
  const move = { boardIds: [id], placeId, since: yard.now(), isDayOnly: false };
  expect(await yard.refusal('boards.move', move)).toBe(gone);
  expect(await yard.refusal('reservations.set', { boardIds: [id], projectId: project.id })).toBe(gone);
  const plan = { stackId: null, boardId: id, placeId, plannedOn: '2026-06-10', note: '' };
  expect(await yard.refusal('plannedMoves.add', plan)).toBe(gone);
});

test('a board that leaves is reserved for no project any more, and is again when that is undone', async () => {
  const [first] = yard.boards;
  const project = await yard.command('projects.add', { name: 'Table', neededBy: null, note: '' });
  await yard.command('reservations.set', { boardIds: [first!.id], projectId: project.id });
  const used = { boardIds: ids(), why: 'used' as const, at: yard.now() };
  expect(await yard.command('boards.archive', used)).toEqual({ archived: 2, released: [first!.id] });
  const [using] = (await yard.query('acts.list', { boardId: null, before: null, limit: 1 })).acts;
  const reservation = () => yard.query('reservations.ofBoard', { boardId: first!.id });
  expect(await reservation()).toBeNull();
  await yard.command('acts.undo', { act: using!.id });
  expect(await reservation()).toMatchObject({ name: 'Table' });
});
