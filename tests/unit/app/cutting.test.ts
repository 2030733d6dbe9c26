import { expect, test } from 'vitest';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { doing, redo, undo } from './seen-yard.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const DAY_MS = 86_400_000;
const first = () => yard.boards[0]!;
const get = (id: number) => yard.query('boards.get', { id });
const rows = async (filter: 'archived' | null = null) =>
  (await yard.query('boards.list', { stackId: null, search: '', filter, offset: 0, limit: 50 })).rows;
const codes = async (filter: 'archived' | null = null) => (await rows(filter)).map(({ code }) => code);

/** Reads every spot of a board in a round of its own. */
async function probe(boardId: number, raw = 12.4): Promise<number> {
  const round = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
    startedOn: null,
  });
  for (let spotIndex = 0; spotIndex < 4; spotIndex++) {
    await yard.command('rounds.saveTyped', {
      roundId: round.id,
      boardId,
      spotIndex,
      newestReadingId: null,
      raw: raw + spotIndex / 10,
    });
  }
  await yard.command('rounds.finish', { roundId: round.id });
  return round.id;
}

const shedId = async (): Promise<number> =>
  (
    await yard.command('places.add', {
      name: 'Shed',
      kind: 'open-shed',
      air: Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.6 })),
    })
  ).id;

type Cut = RequestInput<'boards.cut'>;
const pieces = (boardCode: string, sizes: readonly (number | null)[]): Cut['pieces'] =>
  sizes.map((widthMm, index) => ({ code: `${boardCode}-${index + 1}`, widthMm, lengthMm: 2400 }));
const ripped = (board: { id: number; code: string }, sizes: (number | null)[] = [60, 60, 70]): Cut => ({
  boardId: board.id,
  how: 'ripped',
  at: yard.now(),
  pieces: pieces(board.code, sizes),
});
const rip = async (...given: Parameters<typeof ripped>) =>
  (await yard.command('boards.cut', ripped(...given))).pieceIds;

test('the pieces of a ripped board have its place, its moves and its readings up to then', async () => {
  yard.later(DAY_MS);
  const placeId = await shedId();
  await yard.command('stacks.move', { id: yard.stack.id, placeId, since: yard.now() });
  yard.later(DAY_MS);
  const roundId = await probe(first().id);
  const before = await get(first().id);
  yard.later(3_600_000);
  const [one] = await rip(first());
  const piece = await get(one!);
  expect(await codes()).toEqual(['WAL-02', 'WAL-01-1', 'WAL-01-2', 'WAL-01-3']);
  expect(piece.board).toMatchObject({
    code: 'WAL-01-1',
    widthMm: 60,
    lengthMm: 2400,
    thicknessMm: before.board.thicknessMm,
    speciesId: before.board.speciesId,
    placeName: 'Shed',
  });
  expect(piece.moves.map(({ placeName, since }) => [placeName, since])).toEqual(
    before.moves.map(({ placeName, since }) => [placeName, since]),
  );
  expect(piece.readings.map(({ id, raw, boardId }) => [id, raw, boardId])).toEqual(
    before.readings.map(({ id, raw }) => [id, raw, first().id]),
  );
  expect(piece.cameFrom).toEqual([{ boardId: first().id, code: 'WAL-01', how: 'ripped', at: yard.now() }]);
  expect(piece.readBefore).toMatchObject([{ boardId: first().id, code: 'WAL-01', lengthMm: 2400 }]);
  const parent = await get(first().id);
  expect(parent.board.archived).toEqual({ code: 'ripped', note: '', at: yard.now() });
  expect(parent.becameOf.map(({ code }) => code)).toEqual(['WAL-01-1', 'WAL-01-2', 'WAL-01-3']);
  // What was found before is found of the pieces.
  await expect.poll(async () => (await get(one!)).board.latest?.roundId).toBe(roundId);
  const found = (await get(one!)).board.latest;
  expect(found).toMatchObject({
    averagePct: before.board.latest?.averagePct,
    call: before.board.latest?.call,
  });
  await outlooksMade();
});

test('a reading of the board that is excluded after the cut is excluded of its pieces', async () => {
  await probe(first().id);
  yard.later(3_600_000);
  const [one] = await rip(first());
  await expect.poll(async () => (await get(one!)).board.latest?.averagePct).toBeGreaterThan(0);
  const { averagePct } = (await get(one!)).board.latest!;
  for (const { id } of (await get(one!)).readings.slice(2))
    await yard.command('readings.exclude', { readingId: id, why: { code: 'defect' } });
  await expect.poll(async () => (await get(one!)).board.latest?.averagePct).not.toBe(averagePct);
  expect((await get(one!)).readings.filter(({ excluded }) => excluded !== null)).toHaveLength(2);
});

test('a piece that is read itself has both histories, and one cut again gives it to its own pieces', async () => {
  const before = await probe(first().id, 13);
  yard.later(3_600_000);
  const [one, two] = await rip(first());
  yard.later(DAY_MS);
  const after = await probe(one!, 11);
  expect((await get(one!)).board.latest?.roundId).toBe(after);
  expect((await get(two!)).readings.every(({ roundId }) => roundId === before)).toBe(true);
  yard.later(DAY_MS);
  const { pieceIds } = await yard.command('boards.cut', {
    boardId: one!,
    how: 'crosscut',
    at: yard.now(),
    pieces: [1, 2].map((n) => ({ code: `WAL-01-1-${n}`, widthMm: 60, lengthMm: 1100 })),
  });
  const grandchild = await get(pieceIds[0]!);
  expect(new Set(grandchild.readings.map(({ roundId }) => roundId))).toEqual(new Set([before, after]));
  expect(grandchild.readBefore.map(({ code }) => code).toSorted()).toEqual(['WAL-01', 'WAL-01-1']);
  await expect
    .poll(async () => (await get(pieceIds[0]!)).board.latest?.roundId, { timeout: 10_000 })
    .toBe(after);
  // The round has the boards that were read in it, and no pieces.
  const round = await yard.query('rounds.get', { roundId: before });
  expect(round.boards.filter(({ isRead }) => isRead).map(({ code }) => code)).toEqual(['WAL-01']);
});

test('a cut is undone and redone, and not undone once a piece was read', async () => {
  await probe(first().id);
  yard.later(3_600_000);
  const { act, output } = await doing('boards.cut', ripped(first()));
  await undo(act);
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
  expect((await get(first().id)).board.archived).toBeNull();
  await redo(act);
  expect((await codes()).toSorted()).toEqual(['WAL-01-1', 'WAL-01-2', 'WAL-01-3', 'WAL-02']);
  await expect.poll(async () => (await get(output.pieceIds[0]!)).board.latest?.averagePct).toBeGreaterThan(0);
  await probe(output.pieceIds[1]!);
  expect(await yard.refusal('acts.undo', { act })).toMatch(
    /^Board WAL-01-2 is used by a later change, so nothing was undone. Undo this first \(.*\): Reading 12\.\d+% saved on board WAL-01-2\./,
  );
});

test('what is cut comes back only once nothing is left of it', async () => {
  const ids = await rip(first());
  const boards = [{ id: first().id }];
  expect(await yard.refusal('boards.bringBack', { boards })).toBe(
    'WAL-01 was cut into WAL-01-1. Nothing was brought back. Undo the cut in History, or delete the pieces.',
  );
  await yard.command('boards.delete', { boardIds: ids });
  await yard.command('boards.bringBack', { boards });
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
});

test('pieces are reserved as the board was, and a piece can have its ID', async () => {
  const project = await yard.command('projects.add', { name: 'Table', neededBy: null, note: '' });
  await yard.command('reservations.set', { boardIds: [first().id], projectId: project.id });
  await yard.command('plannedMoves.add', {
    boardId: first().id,
    stackId: null,
    placeId: await shedId(),
    plannedOn: '2026-07-01',
    note: '',
  });
  const { pieceIds, projectName } = await yard.command('boards.cut', {
    ...ripped(first(), [90, null]),
    pieces: [
      { code: 'WAL-01', widthMm: 90, lengthMm: 2400 },
      { code: 'WAL-01-1', widthMm: null, lengthMm: 2400 },
    ],
  });
  expect(projectName).toBe('Table');
  const [listed] = await yard.query('projects.list', {});
  expect(listed?.boards.map(({ boardId }) => boardId).toSorted()).toEqual(pieceIds.toSorted());
  const moves = (await yard.query('dates.list', {})).dates.filter(({ kind }) => kind === 'move');
  expect(moves.map((move) => 'name' in move && move.name)).toEqual(['WAL-01', 'WAL-01-1']);
  // The next board of the stack goes on after its boards, and not after their pieces.
  expect((await yard.query('boards.nextCode', { stackId: yard.stack.id })).code).toBe('WAL-03');
});

test('free IDs are proposed for pieces, as long as an ID can be', async () => {
  await yard.command('boards.add', [yard.board('WAL-01-2'), yard.board('WALNUT-ABCDEFGHI')]);
  const codesFor = async (boardId: number) =>
    (await yard.query('boards.pieceCodes', { boardId, pieces: 2 })).codes;
  expect(await codesFor(first().id)).toEqual(['WAL-01-1', 'WAL-01-3']);
  const long = (await rows()).find(({ code }) => code.startsWith('WALNUT'));
  expect(await codesFor(long!.id)).toEqual(['WALNUT-ABCDEFG-1', 'WALNUT-ABCDEFG-2']);
});

test('what cannot be is refused, and nothing is changed', async () => {
  const refused = (more: Partial<Cut>) => yard.refusal('boards.cut', { ...ripped(first()), ...more });
  expect(await refused({ pieces: pieces('WAL-01', [120, 120]) })).toBe(
    'The pieces are 240 mm wide together, and WAL-01 is 200 mm. Nothing was changed. Save anyway?',
  );
  expect(
    await refused({ pieces: pieces('WAL-02', [120]).map((piece) => ({ ...piece, code: 'WAL-02' })) }),
  ).toBe('There is already a board WAL-02. Nothing was saved. Choose another ID.');
  const tomorrow = new Date(Date.parse(yard.now()) + DAY_MS).toISOString();
  expect(await refused({ at: tomorrow })).toBe(
    'That day is in the future. Nothing was changed. Give the day it was cut.',
  );
  const { id: roundId } = await yard.beginRound();
  expect(await refused({})).toBe('WAL-01 is in a round. Nothing was changed. Finish that round first.');
  await yard.command('rounds.finish', { roundId });
  const yesterday = new Date(Date.parse(yard.now()) - DAY_MS).toISOString();
  expect(await refused({ at: yesterday })).toBe(
    'WAL-01 was probed on Jun 1, 2026, after that day. Nothing was changed. Give that day or a later one.',
  );
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
  await yard.command('boards.cut', { ...ripped(first(), [120, 120]), isLarger: true });
  expect(await codes('archived')).toEqual(['WAL-01']);
});
