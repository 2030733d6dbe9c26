import { expect, test } from 'vitest';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { addPicture } from './a-picture.ts';
import { doing, redo, seen, undo } from './seen-yard.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const DAY_MS = 86_400_000;
const own = () => yard.boards[0]!;
const other = () => yard.boards[1]!;
const get = (id: number) => yard.query('boards.get', { id });
const rows = async (filter: 'archived' | null = null) =>
  (await yard.query('boards.list', { stackId: null, search: '', filter, offset: 0, limit: 50 })).rows;
const codes = async (filter: 'archived' | null = null) => (await rows(filter)).map(({ code }) => code);
const caught = (id: number) => expect.poll(async () => (await get(id)).board.latest);

const startRound = () =>
  yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20, startedOn: null });
async function read(roundId: number, boardId: number, raw: number): Promise<void> {
  for (let spotIndex = 0; spotIndex < 4; spotIndex++)
    await yard.command('rounds.saveTyped', {
      roundId,
      boardId,
      spotIndex,
      newestReadingId: null,
      raw: raw + spotIndex / 10,
    });
}
/** Reads every spot of some boards in one round. */
async function probe(...raws: readonly (readonly [boardId: number, raw: number])[]): Promise<number> {
  const { id } = await startRound();
  for (const [boardId, raw] of raws) await read(id, boardId, raw);
  await yard.command('rounds.finish', { roundId: id });
  yard.later(DAY_MS);
  return id;
}
const shedId = async (): Promise<number> =>
  (
    await yard.command('places.add', {
      name: 'Shed',
      kind: 'open-shed',
      air: Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.6 })),
    })
  ).id;
const edit = (id: number, changed: RequestInput<'boards.edit'>['changed']) =>
  yard.command('boards.edit', { id, basedOn: 1, changed });

type Merge = RequestInput<'boards.merge'>;
async function merging(more: Partial<Merge> = {}): Promise<Merge> {
  const { id = own().id, otherId = other().id } = more;
  const { own: one, other: two } = await yard.query('boards.twice', { id, otherId });
  return { id, basedOn: one.board.version, otherId, otherBasedOn: two.board.version, ...more };
}
const merge = async (more: Partial<Merge> = {}) => doing('boards.merge', await merging(more));

test('the board that stays has the readings of both, of the same round and the same spots too', async () => {
  const before = await probe([other().id, 12.4]);
  const both = await probe([own().id, 12], [other().id, 12.2]);
  const lone = (await get(own().id)).board.latest!;
  await merge();
  expect(await codes()).toEqual(['WAL-01']);
  const board = await get(own().id);
  expect(board.readings).toHaveLength(12);
  expect(board.readings.filter(({ roundId }) => roundId === both).map(({ spotIndex }) => spotIndex)).toEqual([
    0, 1, 2, 3, 0, 1, 2, 3,
  ]);
  expect(board.readBefore).toEqual([{ boardId: other().id, code: 'WAL-02', lengthMm: 2400, isSame: true }]);
  await expect
    .poll(async () => (await get(own().id)).findings.map(({ roundId }) => roundId))
    .toEqual([before, both]);
  const found = (await get(own().id)).findings.at(-1)!;
  expect(found.averagePct).toBeGreaterThan(lone.averagePct! - 0.2);
  expect(found.averagePct).toBeLessThan(lone.averagePct! + 0.5);
  // Each round has the board once, as one that was read.
  for (const roundId of [before, both]) {
    const round = await yard.query('rounds.get', { roundId });
    expect(round.boards.map(({ code, isRead }) => [code, isRead])).toEqual([['WAL-01', true]]);
  }
  await outlooksMade();
});

test('two pieces of one board may be one, and what was read of the board is theirs once', async () => {
  await probe([own().id, 12]);
  const { output } = await doing('boards.cut', {
    boardId: own().id,
    how: 'ripped',
    at: yard.now(),
    pieces: [1, 2].map((n) => ({ code: `WAL-01-${n}`, widthMm: 60, lengthMm: 2400 })),
  });
  const [id, otherId] = output.pieceIds as [number, number];
  yard.later(DAY_MS);
  await probe([id, 11], [otherId, 11.2]);
  // Rounds of the parent are due for the first already, or were judged.
  const { act } = await merge({ id, otherId });
  expect((await codes()).toSorted()).toEqual(['WAL-01-1', 'WAL-02']);
  expect((await get(id)).readings).toHaveLength(12);
  await undo(act);
  expect((await get(id)).readings).toHaveLength(8);
  await redo(act);
  expect((await get(id)).readings).toHaveLength(12);
});

test('a reading saved under the other record is corrected on the page of the board that stays', async () => {
  await probe([other().id, 12]);
  await merge();
  await caught(own().id).toMatchObject({ averagePct: expect.any(Number) });
  const { averagePct } = (await get(own().id)).board.latest!;
  for (const { id } of (await get(own().id)).readings.slice(2))
    await yard.command('readings.exclude', { readingId: id, why: { code: 'defect' } });
  await expect.poll(async () => (await get(own().id)).board.latest?.averagePct).not.toBe(averagePct);
  // Reopened, the round goes on with it.
  const { id: roundId } = (await yard.query('rounds.ofBoard', { boardId: own().id }))[0]!;
  await yard.command('rounds.reopen', { roundId });
  expect((await yard.query('rounds.get', { roundId })).boards.map(({ isRead }) => isRead)).toEqual([true]);
});

test('the other is archived as merged, and its label and its page lead to the board that stays', async () => {
  await merge();
  expect(await codes('archived')).toEqual(['WAL-02']);
  const archived = await get(other().id);
  expect(archived.board.archived).toMatchObject({ code: 'merged' });
  expect(archived.becameOf).toMatchObject([{ boardId: own().id, code: 'WAL-01', how: 'merged' }]);
  expect((await get(own().id)).cameFrom).toMatchObject([{ boardId: other().id, how: 'merged' }]);
  expect(await yard.query('labels.boardOf', { code: 'wal-02' })).toEqual({ boardId: own().id });
  expect(await yard.refusal('boards.bringBack', { boards: [{ id: other().id }] })).toBe(
    'WAL-02 was merged into WAL-01. Nothing was brought back. Undo the merge in History.',
  );
  // A new board with that ID has the label.
  const [again] = await yard.command('boards.add', [yard.board('WAL-02')]);
  expect(await yard.query('labels.boardOf', { code: 'WAL-02' })).toEqual({ boardId: again!.id });
});

test('what was chosen of the other is taken, with its confirmed species, and both notes stay', async () => {
  await edit(own().id, { note: 'Knot at one end' });
  await edit(other().id, {
    speciesId: 'cherry-black',
    thicknessMm: 27,
    sawnOn: '2026-03-01',
    note: 'From the ridge',
  });
  await yard.command('boards.confirmSpecies', { id: other().id });
  await merge({ taken: ['species', 'sawn-on'] });
  const { board, isSpeciesConfirmed } = await get(own().id);
  expect(board).toMatchObject({
    code: 'WAL-01',
    speciesId: 'cherry-black',
    thicknessMm: 16,
    sawnOn: '2026-03-01',
    note: 'Knot at one end\n\nFrom the ridge',
  });
  expect(isSpeciesConfirmed).toBe(true);
});

test.each([
  ['own', ['Shop']],
  ['other', ['Shop', 'Shed']],
  ['both', ['Shop', 'Shed']],
] as const)('of moves, those of %s count', async (moves, places) => {
  const placeId = await shedId();
  yard.later(DAY_MS);
  await yard.command('boards.move', { boardIds: [other().id], placeId, since: yard.now() });
  yard.later(DAY_MS);
  await merge({ moves });
  const merged = await get(own().id);
  expect(merged.moves.map(({ placeName }) => placeName)).toEqual(places);
  expect(merged.board.placeName).toBe(places.at(-1));
  // Those of the other record stay with it.
  expect((await get(other().id)).moves).toHaveLength(2);
});

test('planned moves, the reservation, pictures and weights of the other are of the board that stays', async () => {
  const placeId = await shedId();
  const plan = { stackId: null, placeId, plannedOn: '2026-07-01', note: '' };
  for (const boardId of [own().id, other().id]) await yard.command('plannedMoves.add', { ...plan, boardId });
  await yard.command('plannedMoves.add', { ...plan, boardId: other().id, plannedOn: '2026-08-01' });
  const project = await yard.command('projects.add', { name: 'Table', neededBy: null, note: '' });
  await yard.command('reservations.set', { boardIds: [other().id], projectId: project.id });
  await addPicture(yard, { kind: 'board', id: other().id });
  await yard.command('samples.cut', {
    boardId: other().id,
    boardKg: 8,
    wetGrams: [40, 42],
    at: yard.now(),
  });
  await merge();
  const planned = (await yard.query('dates.list', {})).dates.flatMap((date) =>
    date.kind === 'move' ? [[date.move.boardId, date.move.plannedOn]] : [],
  );
  expect(planned).toEqual([
    [own().id, '2026-07-01'],
    [own().id, '2026-08-01'],
  ]);
  expect((await yard.query('projects.list', {}))[0]?.boards.map(({ boardId }) => boardId)).toEqual([
    own().id,
  ]);
  const subject = { kind: 'board' as const, id: own().id };
  expect(await yard.query('pictures.list', { subject })).toHaveLength(1);
  const { cuts } = await yard.query('samples.get', { boardId: own().id });
  expect(cuts).toHaveLength(1);
  // What is weighed later of those sections is its own, too.
  const state = await yard.command('samples.drySection', {
    sectionId: cuts[0]!.sections[0]!.id,
    grams: 30,
    at: yard.now(),
  });
  expect(state.boardId).toBe(own().id);
  expect(await yard.refusal('boards.delete', { boardIds: [own().id] })).toMatch(
    /^WAL-01 has readings or weights/,
  );
});

test('a move that is planned for both is planned once, with the notes of both', async () => {
  const plan = { stackId: null, placeId: await shedId(), plannedOn: '2026-07-01' };
  const planFor = (boardId: number, note: string) =>
    yard.command('plannedMoves.add', { ...plan, boardId, note });
  await planFor(own().id, 'By noon');
  await planFor(other().id, 'Mind the nail');
  await planFor(other().id, 'x'.repeat(1999));
  const notes = async () =>
    (await yard.query('dates.list', {})).dates.flatMap((date) =>
      date.kind === 'move' ? [[date.move.boardId, date.move.note.slice(0, 30)]] : [],
    );
  const before = await notes();
  const { act } = await merge();
  const after = [
    [own().id, 'By noon\nMind the nail'],
    [own().id, 'x'.repeat(30)],
  ];
  expect(await notes()).toEqual(after);
  await undo(act);
  expect(await notes()).toEqual(before);
  await redo(act);
  expect(await notes()).toEqual(after);
});

test('one reserved for another project is reserved for the one that was chosen', async () => {
  for (const [index, name] of ['Table', 'Desk'].entries()) {
    const { id } = await yard.command('projects.add', { name, neededBy: null, note: '' });
    await yard.command('reservations.set', { boardIds: [yard.boards[index]!.id], projectId: id });
  }
  await merge({ reservation: 'other' });
  const projects = await yard.query('projects.list', {});
  expect(Object.fromEntries(projects.map(({ name, boards }) => [name, boards.length]))).toEqual({
    Table: 0,
    Desk: 1,
  });
});

test('a merge is undone and redone, and not undone once the board was edited', async () => {
  const roundId = await probe([own().id, 12], [other().id, 13]);
  const before = await seen();
  const { act } = await merge();
  const after = await seen();
  await undo(act);
  expect(await seen()).toEqual(before);
  await caught(own().id).toMatchObject({ roundId });
  await expect.poll(async () => (await get(own().id)).board.latest?.averagePct).toBeLessThan(12.5);
  await redo(act);
  expect(await seen()).toEqual(after);
  const [line] = (await yard.query('acts.list', { boardId: other().id, before: null, limit: 1 })).acts;
  expect(line?.line).toMatchObject({ code: 'act.board.merged' });
  await yard.command('boards.add', [yard.board('WAL-02')]);
  expect(await yard.refusal('acts.undo', { act })).toBe(
    'Board WAL-02 cannot come back: its ID or name is in use now. Nothing was undone.',
  );
});

test('a merge is not redone once a move of either record was deleted, which may be the one that counts', async () => {
  const placeId = await shedId();
  yard.later(DAY_MS);
  await yard.command('boards.move', { boardIds: [own().id, other().id], placeId, since: yard.now() });
  const { act } = await merge();
  const places = async () => (await get(own().id)).moves.map(({ placeName }) => placeName);
  for (const { id } of [own(), other()]) {
    await undo(act);
    const { id: moveId, version } = (await get(id)).moves[1]!;
    const gone = await doing('moves.delete', { id: moveId, basedOn: version });
    expect((await yard.refusal('acts.redo', { act })).replace(/\(.*?\)/, '(…)')).toMatch(
      /^Board WAL-0\d was changed later, so nothing was redone\. Undo this first \(…\): .*Shed/,
    );
    await undo(gone.act);
    await redo(act);
    expect(await places()).toEqual(['Shop', 'Shed']);
  }
});

test('a merge is not undone once the board that stayed was cut, also after another merge', async () => {
  await probe([own().id, 12], [other().id, 13]);
  const { act } = await merge();
  const [third] = await yard.command('boards.add', [yard.board('WAL-03')]);
  const next = await merge({ id: third!.id, otherId: own().id });
  const cut = await doing('boards.cut', {
    boardId: third!.id,
    how: 'ripped',
    at: yard.now(),
    pieces: [{ code: 'P1', widthMm: 95, lengthMm: 2400 }],
  });
  for (const each of [act, next.act])
    expect(await yard.refusal('acts.undo', { act: each })).toMatch(
      /^Board WAL-03 is used by a later change, so nothing was undone\. Undo this first \(.*\): Board WAL-03 ripped: P1\./,
    );
  expect((await get(cut.output.pieceIds[0]!)).readings).toHaveLength(8);
  await undo(cut.act);
  await undo(next.act);
  await undo(act);
  expect(await codes()).toEqual(expect.arrayContaining(['WAL-01', 'WAL-02', 'WAL-03']));
});

test('pieces may be merged, and have the readings of what they were cut from once', async () => {
  await probe([own().id, 13]);
  const { pieceIds } = await yard.command('boards.cut', {
    boardId: own().id,
    how: 'ripped',
    at: yard.now(),
    pieces: [1, 2].map((n) => ({ code: `WAL-01-${n}`, widthMm: 95, lengthMm: 2400 })),
  });
  yard.later(DAY_MS);
  const [one, two] = pieceIds as [number, number];
  await probe([one, 11], [two, 11.2]);
  await merge({ id: one, otherId: two });
  expect((await get(one)).readings).toHaveLength(12);
  // Another record of the board that was cut has no place in that.
  await merge({ id: one, otherId: other().id });
  expect(await codes()).toEqual(['WAL-01-1']);
  // What is cut from it later has all of that.
  const again = await yard.command('boards.cut', {
    boardId: one,
    how: 'crosscut',
    at: yard.now(),
    pieces: [{ code: 'END', widthMm: 95, lengthMm: 1100 }],
  });
  expect((await get(again.pieceIds[0]!)).readings).toHaveLength(12);
});

test('boards that another window merged the other way round are one already', async () => {
  const opposite = await merging({ id: other().id, otherId: own().id });
  await merge();
  expect(await yard.refusal('boards.merge', opposite)).toBe(
    'WAL-02 was already merged into WAL-01, so they are one board. Nothing was changed.',
  );
});

test('what cannot be merged is refused, and nothing is changed', async () => {
  const refused = async (more: Partial<Merge>) => yard.refusal('boards.merge', await merging(more));
  expect(await refused({ otherId: own().id })).toMatch(/^Choose another board\./);
  expect(await refused({ otherBasedOn: 7 })).toMatch(/^This was edited in another window/);
  const { pieceIds } = await yard.command('boards.cut', {
    boardId: own().id,
    how: 'ripped',
    at: yard.now(),
    pieces: [{ code: 'WAL-01-1', widthMm: 95, lengthMm: 2400 }],
  });
  const [piece] = pieceIds as [number];
  const two =
    'WAL-01-1 was cut from WAL-01, so they are two boards. Nothing was merged. Choose another board.';
  expect(await refused({ otherId: piece })).toBe(two);
  expect(await refused({ id: piece, otherId: own().id })).toBe(two);
  expect(await refused({ id: own().id })).toMatch(/^WAL-01 left the yard already/);
  const { id: roundId } = await startRound();
  await read(roundId, other().id, 12);
  expect(await refused({ id: piece })).toMatch(/^WAL-02 is in a round/);
  await yard.command('rounds.finish', { roundId });
  yard.later(DAY_MS);
  // Sawn after it was read under the other record.
  const [late] = await yard.command('boards.add', [{ ...yard.board('WAL-03'), sawnOn: '2026-06-02' }]);
  expect(await refused({ id: late!.id })).toMatch(/^WAL-03 was probed on Jun 1, 2026, before that day/);
  for (const { id } of [other(), late!])
    await yard.command('boards.edit', {
      id,
      basedOn: (await get(id)).board.version,
      changed: { note: 'x'.repeat(1500) + id, sawnOn: null },
    });
  expect(await refused({ id: late!.id })).toBe(
    'Both notes together are too long. Nothing was merged. Choose one of them.',
  );
  expect((await codes()).toSorted()).toEqual(['WAL-01-1', 'WAL-02', 'WAL-03']);
});

test('the likeliest boards come first: those of like IDs, then of its stack; others are found by their ID', async () => {
  const { id: stackId } = await yard.command('stacks.add', {
    name: 'Oak',
    placeId: yard.place.id,
    endUseId: 'furniture',
    topCover: 'covered',
    note: '',
  });
  const elsewhere = (code: string) => ({ ...yard.board(code), stackId });
  await yard.command('boards.add', [
    elsewhere('OAK-01'),
    { ...elsewhere('WAL1'), speciesId: 'cherry-black', thicknessMm: 27 },
    { ...yard.board('WAL-03'), lengthMm: 1200 },
  ]);
  const alike = async (search: string, limit = 5) =>
    (await yard.query('boards.alike', { boardId: own().id, search, limit })).map(({ code }) => code);
  expect(await alike('')).toEqual(['WAL-02', 'WAL1', 'WAL-03']);
  expect(await alike('', 1)).toEqual(['WAL-02']);
  expect(await alike('oak')).toEqual(['OAK-01']);
  expect(await alike('%')).toEqual([]);
});
