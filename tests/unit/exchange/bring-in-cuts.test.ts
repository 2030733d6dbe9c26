/** Boards that were cut or merged in one of two files of a yard, or in both. */
import { expect, test } from 'vitest';
import type { Side } from '../../../shared-core/contract/exchange.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { say } from '../app/a-window.ts';
import { redo, undo } from '../app/seen-yard.ts';
import { withYardOfTwo, yard } from '../app/yard-of-two.ts';
import { mergeBoards, rip } from './a-filled-yard.ts';
import { elsewhere } from './elsewhere.ts';

// Real threads on a busy computer.
withYardOfTwo();

const HOUR_MS = 3_600_000;
const own = () => yard.boards[0]!;
const other = () => yard.boards[1]!;
const get = (id: number) => yard.query('boards.get', { id });
const rows = async () =>
  (await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 50 })).rows;
const codes = async () => (await rows()).map(({ code }) => code).toSorted();
const named = async (code: string) => get((await rows()).find((row) => row.code === code)!.id);

/** Reads every spot of a board in a round of its own. */
async function probe(boardId: number): Promise<number> {
  const { id: roundId } = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
    startedOn: null,
  });
  for (let spotIndex = 0; spotIndex < 4; spotIndex++)
    await yard.command('rounds.saveTyped', {
      roundId,
      boardId,
      spotIndex,
      newestReadingId: null,
      raw: 12 + spotIndex / 10,
    });
  await yard.command('rounds.finish', { roundId });
  yard.later(HOUR_MS);
  return roundId;
}
const cut = (boardId: number, pieceCodes: readonly string[]): RequestInput<'boards.cut'> => ({
  boardId,
  how: 'ripped',
  at: yard.now(),
  pieces: pieceCodes.map((code) => ({ code, widthMm: 60, lengthMm: 2400 })),
});

const look = async (file: string) => {
  const found = await yard.query('exchange.look', { file, work: null });
  return { ...found, cuts: found.cuts.map((each) => say(each)) };
};
async function bringIn(file: string, rest: Side = 'mine', others: readonly string[] = []): Promise<string> {
  await yard.command('exchange.merge', {
    file,
    fileName: '/folder/theirs.sqlite',
    rest,
    others: [...others],
    work: null,
  });
  await yard.query('yard.info', {});
  const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
  return acts[0]!.id;
}

test('pieces come in with the readings from before the cut, are undone, and redone', async () => {
  const roundId = await probe(own().id);
  const file = await elsewhere((theirs) => rip(theirs, own().id, ['WAL-01-1', 'WAL-01-2'], yard.now()));
  expect((await look(file)).clashCount).toBe(0);
  const act = await bringIn(file);
  const isCut = async () => {
    expect(await codes()).toEqual(['WAL-01-1', 'WAL-01-2', 'WAL-02']);
    const piece = await named('WAL-01-1');
    expect(piece.cameFrom).toMatchObject([{ boardId: own().id, how: 'ripped' }]);
    expect(piece.readings.map((each) => [each.roundId, each.boardId])).toEqual(
      Array(4).fill([roundId, own().id]),
    );
    await expect.poll(async () => (await named('WAL-01-1')).board.latest?.roundId).toBe(roundId);
  };
  await isCut();
  await undo(act);
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
  expect((await get(own().id)).becameOf).toEqual([]);
  await redo(act);
  await isCut();
});

test('a board that they cut and I read goes as I choose, and both in the lists is told', async () => {
  const file = await elsewhere((theirs) => rip(theirs, own().id, ['WAL-01-1', 'WAL-01-2'], yard.now()));
  yard.later(HOUR_MS);
  await probe(own().id);
  const found = await look(file);
  expect(found.clashes).toHaveLength(1);
  expect(found.clashes[0]!.theirs.map((each) => say(each))[0]).toMatch(/^Ripped on /);
  expect(found.cuts).toEqual([
    '1 board is in your lists whole and in pieces: WAL-01. Mark what is not there as used or scrapped.',
  ]);
  const act = await bringIn(file, 'theirs');
  expect(await codes()).toEqual(['WAL-01-1', 'WAL-01-2', 'WAL-02']);
  // What was read after the cut is of none of its pieces.
  expect((await named('WAL-01-1')).readings).toEqual([]);
  expect((await get(own().id)).readings).toHaveLength(4);
  await undo(act);
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
});

test('of a board that both cut, the pieces of both are there, which is told', async () => {
  await probe(own().id);
  const file = await elsewhere((theirs) => rip(theirs, own().id, ['WAL-01-1', 'WAL-01-2'], yard.now()));
  yard.later(HOUR_MS);
  await yard.command('boards.cut', cut(own().id, ['WAL-01-1', 'WAL-01-2', 'WAL-01-3']));
  expect((await look(file)).cuts).toEqual([
    '1 board was cut in both files: WAL-01. The pieces of both are in your lists. Merge those entered twice.',
  ]);
  const act = await bringIn(file);
  expect(await codes()).toHaveLength(6);
  for (const { id, code } of await rows())
    expect((await get(id)).readings, code).toHaveLength(code === 'WAL-02' ? 0 : 4);
  await undo(act);
  expect(await codes()).toEqual(['WAL-01-1', 'WAL-01-2', 'WAL-01-3', 'WAL-02']);
  await redo(act);
  expect(await codes()).toHaveLength(6);
});

test('what I read of a record that they merged is of the board that stays, or the two stay two', async () => {
  const file = await elsewhere((theirs) => mergeBoards(theirs, own().id, other().id, yard.now()));
  yard.later(HOUR_MS);
  const roundId = await probe(other().id);
  expect((await look(file)).clashes).toHaveLength(1);
  const act = await bringIn(file, 'theirs');
  expect(await codes()).toEqual(['WAL-01']);
  expect((await get(own().id)).readings.map((each) => each.roundId)).toEqual(Array(4).fill(roundId));
  await undo(act);
  expect((await get(own().id)).readings).toEqual([]);
  await redo(act);
  expect((await get(own().id)).readings).toHaveLength(4);
});

test('a record that they merged and I read stays one of its own where I choose that', async () => {
  const file = await elsewhere((theirs) => mergeBoards(theirs, own().id, other().id, yard.now()));
  yard.later(HOUR_MS);
  await probe(other().id);
  const act = await bringIn(file);
  const areTwo = async () => {
    expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
    expect((await get(own().id)).readings).toEqual([]);
    expect((await get(own().id)).cameFrom).toEqual([]);
  };
  await areTwo();
  // Nobody is asked again.
  expect((await look(file)).clashCount).toBe(0);
  await undo(act);
  await areTwo();
  await redo(act);
  await areTwo();
});

test('a record that I merged and they went on with is in the lists again where theirs is chosen', async () => {
  await probe(own().id);
  await probe(other().id);
  const file = await elsewhere((theirs) => void theirs.samples.weigh(other().id, 4.2, yard.now()));
  await yard.command('boards.merge', { id: own().id, basedOn: 1, otherId: other().id, otherBasedOn: 1 });
  expect((await look(file)).clashes).toHaveLength(1);
  const act = await bringIn(file, 'theirs');
  const areTwo = async () => {
    expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
    for (const { id } of [own(), other()]) {
      expect((await get(id)).readings).toHaveLength(4);
      expect((await get(id)).cameFrom).toEqual([]);
    }
  };
  await areTwo();
  await undo(act);
  expect(await codes()).toEqual(['WAL-01']);
  expect((await get(own().id)).readings).toHaveLength(8);
  await redo(act);
  await areTwo();
});

test('of two records that each merged into the other one, one is in the lists with the readings of both', async () => {
  await probe(own().id);
  await probe(other().id);
  const file = await elsewhere((theirs) => mergeBoards(theirs, own().id, other().id, yard.now()));
  const versions = { basedOn: 1, otherBasedOn: 1 };
  await yard.command('boards.merge', { id: other().id, otherId: own().id, ...versions });
  const { clashes } = await look(file);
  expect(clashes).toHaveLength(1);
  const act = await bringIn(file, 'mine', [clashes[0]!.id]);
  expect(await codes()).toEqual(['WAL-01']);
  expect((await get(own().id)).readings).toHaveLength(8);
  await undo(act);
  expect(await codes()).toEqual(['WAL-02']);
  expect((await get(other().id)).readings).toHaveLength(8);
});
