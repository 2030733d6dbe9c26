import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '../../../electron/store/yard-file.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

/** Several slices. */
const BOARDS = 1200;
const since = '2026-05-20T08:00:00.000Z';
const air = Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.6 }));

withYardOfTwo();

let file: Db;
let boards: { id: number; basedOn: number }[];
let boardIds: number[];

beforeEach(async () => {
  for (let from = 0; from < BOARDS; from += 300) {
    const codes = Array.from({ length: 300 }, (_, index) => yard.board(`X-${from + index}`));
    await yard.command('boards.add', codes);
  }
  file = new Database(join(yard.dataDir, 'yard.sqlite'));
  boards = file.prepare('SELECT id, version AS basedOn FROM board ORDER BY id').all() as [];
  boardIds = boards.map(({ id }) => id);
});
afterEach(() => file.close());

const all = (sql: string): unknown[] => file.prepare(sql).pluck().all();
/** What a window is told of a command. */
const told = (asked: Promise<unknown>): Promise<string> => asked.then(() => 'done', String);
/** Does something else once the first slice is done. @returns what is told of both */
async function meanwhile(asked: Promise<unknown>, other: () => Promise<unknown>): Promise<string[]> {
  const answer = told(asked);
  while (all('SELECT 1 FROM unfinished_act').length === 0) await setImmediate();
  const ofOther = await told(other());
  return [await answer, ofOther];
}
/** Boards that no list shows, as their stack or place is closed. */
const lost = () => [
  ...all(`SELECT b.code FROM board b JOIN stack s ON s.id = b.stack_id WHERE s.closed_at IS NOT NULL`),
  ...all(`SELECT b.code FROM board b JOIN place p ON p.id = b.place_id WHERE p.closed_at IS NOT NULL`),
];
const versionOf = (table: string, id: number) =>
  Number(all(`SELECT version FROM ${table} WHERE id = ${id}`)[0]);
const newPlace = () => yard.command('places.add', { name: 'Loft', kind: 'shop', air });
const newStack = () =>
  yard.command('stacks.add', {
    name: 'New',
    placeId: yard.stack.placeId,
    endUseId: 'furniture',
    topCover: 'covered',
    note: '',
  });
const addLate = () => yard.command('boards.add', [yard.board('LATE')]);
const mergeStacks = (intoId: number) => {
  const { id } = yard.stack;
  return yard.command('stacks.merge', { id, basedOn: versionOf('stack', id), intoId, move: null });
};
const mergePlaces = (intoId: number) => {
  const id = yard.stack.placeId;
  return yard.command('places.merge', { id, basedOn: versionOf('place', id), intoId, air: 'into' });
};

describe('the place that boards are moved to', () => {
  const moveTo = (placeId: number) =>
    yard.command('boards.move', { boardIds, placeId, since, isInserted: true });

  test('is closed', async () => {
    const { id, version } = await newPlace();
    expect(await meanwhile(moveTo(id), () => yard.command('places.close', { id, basedOn: version }))).toEqual(
      ['Error: Loft is closed. Nothing was saved. Reopen it first.', 'done'],
    );
    expect(all(`SELECT id FROM move WHERE place_id = ${id}`)).toEqual([]);
  });

  test('is deleted', async () => {
    const { id, version } = await newPlace();
    const [moving, deleting] = await meanwhile(moveTo(id), () =>
      yard.command('places.delete', { id, basedOn: version }),
    );
    expect(deleting).toBe('done');
    expect(moving).toMatch(/place .* not /);
    expect(yard.faults).toEqual([]);
  });

  test('is closed while the move is corrected', async () => {
    const { id, version } = await newPlace();
    await yard.command('boards.move', { boardIds, placeId: yard.stack.placeId, since, isInserted: true });
    const [moveId] = all(`SELECT id FROM move WHERE since = '${since}' LIMIT 1`) as number[];
    const basedOn = versionOf('move', moveId!);
    const changed = { placeId: id };
    expect(
      await meanwhile(yard.command('moves.edit', { id: moveId!, basedOn, changed, together: true }), () =>
        yard.command('places.close', { id, basedOn: version }),
      ),
    ).toEqual(['Error: Loft is closed. Nothing was saved. Reopen it first.', 'done']);
  });
});

test('the stack that boards are put in is closed', async () => {
  const { id, version } = await newStack();
  expect(
    await meanwhile(yard.command('boards.editTogether', { boards, changed: {}, stackId: id }), () =>
      yard.command('stacks.close', { id, basedOn: version }),
    ),
  ).toEqual(['Error: New is closed. Nothing was saved. Reopen it first.', 'done']);
  expect(lost()).toEqual([]);
});

describe.each([
  {
    what: 'stack',
    name: 'New',
    add: newStack,
    merge: mergeStacks,
    close: (id: number, basedOn: number) => yard.command('stacks.close', { id, basedOn }),
  },
  {
    what: 'place',
    name: 'Loft',
    add: newPlace,
    merge: mergePlaces,
    close: (id: number, basedOn: number) => yard.command('places.close', { id, basedOn }),
  },
])('while a $what is merged', ({ what, name, add, merge, close }) => {
  test('a board that is added to it comes along', async () => {
    const { id } = await add();
    expect(await meanwhile(merge(id), addLate)).toEqual(['done', 'done']);
    expect(all(`SELECT count(*) FROM board WHERE ${what}_id = ${id}`)).toEqual([BOARDS + 3]);
    expect(lost()).toEqual([]);
  });

  test('the other is closed', async () => {
    const { id, version } = await add();
    expect(await meanwhile(merge(id), () => close(id, version))).toEqual([
      `Error: ${name} is closed. Nothing was saved. Reopen it first.`,
      'done',
    ]);
    expect(lost()).toEqual([]);
  });
});

test('a round is started of a stack that is merged', async () => {
  const { id } = await newStack();
  const start = () => yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  expect(await meanwhile(mergeStacks(id), start)).toEqual([
    'Error: A round of Walnut is not finished. Nothing was changed. Finish the round first.',
    'done',
  ]);
  expect(all(`SELECT count(*) FROM board WHERE stack_id = ${id}`)).toEqual([0]);
});
