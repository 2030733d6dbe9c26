import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../shared-core/time.ts';
import { openWindow } from './a-window.ts';
import { doing, lines, redo, undo } from './seen-yard.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const boardIds = () => yard.boards.map(({ id }) => id);
const air = (rh: number) => Array.from({ length: 12 }, () => ({ tempC: 15, rh }));
const addPlace = async (name: string, rh = 0.6): Promise<number> =>
  (await yard.command('places.add', { name, kind: 'open-shed', air: air(rh) })).id;
const addStack = async (name: string, placeId = yard.place.id, note = ''): Promise<number> =>
  (await yard.command('stacks.add', { name, placeId, endUseId: 'furniture', topCover: 'covered', note })).id;
const stackNames = async () => (await yard.query('stacks.list', {})).map(({ name }) => name);
const placeNames = async () => (await yard.query('places.list', {})).map(({ name }) => name);
const stackNow = (id = yard.stack.id) => yard.query('stacks.get', { id });
const sell = (ids: readonly number[]) =>
  doing('boards.archive', { boardIds: [...ids], why: 'sold', at: yard.now() });
/** A piece is ripped from the first board. */
const rip = () =>
  doing('boards.cut', {
    boardId: boardIds()[0]!,
    how: 'ripped',
    at: yard.now(),
    pieces: [{ code: 'WAL-01-1', widthMm: 95, lengthMm: 2400 }],
  });
const mergeStack = async (intoId: number) => {
  const { version } = await stackNow();
  return doing('stacks.merge', { id: yard.stack.id, basedOn: version, intoId, move: null });
};

test('a stack with boards is not closed, one without is, and is found again', async () => {
  expect(await yard.refusal('stacks.close', { id: yard.stack.id, basedOn: 1 })).toMatch(
    /^2 boards are in Walnut\. Nothing was closed\./,
  );
  await sell(boardIds());
  await yard.command('stacks.close', { id: yard.stack.id, basedOn: 1 });
  expect(await stackNames()).toEqual([]);
  expect(await yard.query('stacks.closed', {})).toMatchObject([{ name: 'Walnut', placeName: 'Shop' }]);
  expect(await yard.refusal('boards.add', [yard.board('WAL-03')])).toMatch(/^Walnut is closed\./);
});

test('a stack with a round that runs is not closed, whether or not it has boards', async () => {
  await yard.beginRound();
  expect(await yard.refusal('stacks.close', { id: yard.stack.id, basedOn: 1 })).toMatch(/round of Walnut/);
  await sell(boardIds());
  expect(await yard.refusal('stacks.close', { id: yard.stack.id, basedOn: 1 })).toMatch(/round of Walnut/);
});

test('a closed stack comes back with its boards, however they come', async () => {
  const { act } = await sell(boardIds());
  await yard.command('stacks.close', { id: yard.stack.id, basedOn: 1 });
  await yard.command('places.close', { id: yard.place.id, basedOn: 1 });
  const { act: back } = await doing('boards.bringBack', { boards: [{ id: boardIds()[0]! }] });
  expect([await stackNames(), await placeNames()]).toEqual([['Walnut'], ['Shop']]);
  await undo(back);
  expect([await stackNames(), await placeNames()]).toEqual([[], []]);
  await undo(act);
  expect([await stackNames(), await placeNames()]).toEqual([['Walnut'], ['Shop']]);
});

test('a closed stack whose name another has now comes back under another name', async () => {
  await sell(boardIds());
  await yard.command('stacks.close', { id: yard.stack.id, basedOn: 1 });
  await addStack('Walnut');
  const reopening = { id: yard.stack.id, basedOn: 2 };
  expect(await yard.refusal('stacks.reopen', reopening)).toMatch(/Walnut/);
  await yard.command('stacks.reopen', { ...reopening, name: 'Walnut of old' });
  expect(await stackNames()).toEqual(['Walnut', 'Walnut of old']);
});

test('a stack is deleted only where nothing is on record of it', async () => {
  await sell(boardIds());
  expect(await yard.refusal('stacks.delete', { id: yard.stack.id, basedOn: 1 })).toMatch(/on record/);
  await yard.command('stacks.delete', { id: await addStack('Oak'), basedOn: 1 });
  expect(await stackNames()).toEqual(['Walnut']);
});

test('merged stacks: boards, notes and planned moves come along, rounds stay what they were', async () => {
  const { id: roundId } = await yard.beginRound();
  await yard.command('rounds.finish', { roundId });
  await sell([boardIds()[1]!]);
  const intoId = await addStack('Oak', await addPlace('Barn'), 'Mind the dog');
  const { version } = await yard.command('stacks.edit', {
    id: yard.stack.id,
    basedOn: 1,
    changed: { note: 'North side' },
  });
  const planned = { stackId: yard.stack.id, boardId: null, placeId: yard.place.id, plannedOn: '2026-06-20' };
  await yard.command('plannedMoves.add', { ...planned, note: '' });
  const placeId = (await stackNow(intoId)).placeId;
  const move = { placeId, since: yard.now() };
  await yard.command('stacks.merge', { id: yard.stack.id, basedOn: version, intoId, move });
  expect(await stackNow(intoId)).toMatchObject({
    boards: 1,
    placeName: 'Barn',
    note: 'Mind the dog\nNorth side',
  });
  expect((await yard.query('dates.list', {})).dates).toMatchObject([{ kind: 'move', name: 'Oak' }]);
  const sold = await yard.query('boards.get', { id: boardIds()[1]! });
  expect(sold.board).toMatchObject({ stackId: intoId, placeName: 'Shop' });
  expect((await yard.query('boards.get', { id: boardIds()[0]! })).readings).toHaveLength(1);
  expect(await yard.query('rounds.get', { roundId })).toMatchObject({ stackId: yard.stack.id });
  expect(await stackNames()).toEqual(['Oak']);
  expect((await lines())[0]).toBe('Stack Walnut merged into Oak: 2 boards. Board WAL-01 moved to Barn.');
  expect((await stackNow()).closed).toEqual({ hasArchived: false, mergedInto: { id: intoId, name: 'Oak' } });
});

test('the history names what was merged or deleted, also where nothing of it is left', async () => {
  const [oakId, elmId, loft, barn] = [
    await addStack('Oak'),
    await addStack('Elm'),
    await addPlace('Loft'),
    await addPlace('Barn'),
  ];
  await yard.command('stacks.merge', { id: elmId, basedOn: 1, intoId: oakId, move: null });
  await yard.command('stacks.edit', { id: oakId, basedOn: 1, changed: { name: 'Red oak' } });
  await yard.command('stacks.delete', { id: elmId, basedOn: 2 });
  await yard.command('places.merge', { id: loft, basedOn: 1, intoId: barn, air: 'into' });
  await yard.command('places.delete', { id: loft, basedOn: 2 });
  expect((await lines()).slice(0, 5)).toEqual([
    'Place Loft deleted.',
    'Place Loft merged into Barn.',
    'Stack Elm deleted.',
    'Name changed from Oak to Red oak on stack Red oak.',
    'Stack Elm merged into Oak: no boards.',
  ]);
});

test('notes that are too long for one: each stays with its own stack', async () => {
  const [own, other] = ['a'.repeat(1200), 'b'.repeat(1200)];
  const intoId = await addStack('Oak', yard.place.id, own);
  await yard.command('stacks.edit', { id: yard.stack.id, basedOn: 1, changed: { note: other } });
  await yard.command('stacks.merge', { id: yard.stack.id, basedOn: 2, intoId, move: null });
  expect([(await stackNow(intoId)).note, (await stackNow()).note]).toEqual([own, other]);
});

describe('what another window changed since is not undone, and the refusal says what and when', () => {
  const otherWindow = () => openWindow(yard.app, 'window-2');
  const refusal = (act: string) => yard.refusal('acts.undo', { act });

  test('a merge of stacks, of which a board was put elsewhere', async () => {
    const [oak, elm] = [await addStack('Oak'), await addStack('Elm')];
    const merge = { id: yard.stack.id, basedOn: 1, intoId: oak, move: null };
    const { act } = await doing('stacks.merge', merge);
    const [board] = (await yard.query('boards.list', { stackId: oak, search: '', offset: 0, limit: 9 })).rows;
    await otherWindow().command('boards.editTogether', {
      boards: [{ id: board!.id, basedOn: board!.version }],
      changed: {},
      stackId: elm,
      stackOrder: null,
      move: null,
    });
    expect(await refusal(act)).toMatch(
      /^Board WAL-01 was changed later, so nothing was undone\. Undo this first \(.*\): Board WAL-01 put in Elm\.$/,
    );
    expect(await stackNames()).toEqual(['Elm', 'Oak']);
  });

  test('a merge of places, one of which was opened again', async () => {
    const barn = await addPlace('Barn');
    const merge = { id: yard.place.id, basedOn: 1, intoId: barn, air: 'into' as const };
    const { act } = await doing('places.merge', merge);
    await otherWindow().command('places.reopen', { id: yard.place.id, basedOn: 2 });
    expect(await refusal(act)).toMatch(
      /^Place Shop was changed later, so nothing was undone\. .*: Reopened: place Shop\.$/,
    );
    expect(await placeNames()).toEqual(['Shop', 'Barn']);
  });

  test('a move after which another to the same place is none since places were merged', async () => {
    const [shed, barn] = [await addPlace('Shed'), await addPlace('Barn')];
    yard.later(DAY_MS);
    const both = await doing('boards.move', { boardIds: boardIds(), placeId: shed, since: yard.now() });
    yard.later(DAY_MS);
    const one = await doing('boards.move', { boardIds: [boardIds()[0]!], placeId: barn, since: yard.now() });
    const merge = await doing('places.merge', { id: barn, basedOn: 1, intoId: shed, air: 'into' });
    const places = async () =>
      (await yard.query('boards.get', { id: boardIds()[0]! })).moves.map(({ placeName }) => placeName);
    expect(await refusal(both.act)).toMatch(
      /^A move of board WAL-01 is used by a later change, so nothing was undone\. .*: Place Barn merged into Shed\.$/,
    );
    expect(await places()).toEqual(['Shop', 'Shed']);
    await undo(merge.act);
    await undo(both.act);
    expect(await places()).toEqual(['Shop', 'Barn']);
    await redo(both.act);
    await redo(merge.act);
    expect(await refusal(both.act)).toMatch(/: Place Barn merged into Shed\.$/);
    await undo(merge.act);
    await undo(one.act);
    await undo(both.act);
    expect(await places()).toEqual(['Shop']);
  });

  test('a merge of places that is redone once the move was deleted after which another was none', async () => {
    const [shed, barn] = [await addPlace('Shed'), await addPlace('Barn')];
    yard.later(DAY_MS);
    await yard.command('boards.move', { boardIds: boardIds(), placeId: shed, since: yard.now() });
    yard.later(DAY_MS);
    await yard.command('boards.move', { boardIds: [boardIds()[0]!], placeId: barn, since: yard.now() });
    const merge = await doing('places.merge', { id: barn, basedOn: 1, intoId: shed, air: 'into' });
    await undo(merge.act);
    const movesNow = async () => (await yard.query('boards.get', { id: boardIds()[0]! })).moves;
    const places = async () => (await movesNow()).map(({ placeName }) => placeName);
    const [, toShed] = await movesNow();
    const gone = await doing('moves.delete', { id: toShed!.id, basedOn: toShed!.version, together: true });
    expect(await yard.refusal('acts.redo', { act: merge.act })).toMatch(
      /^A move of board WAL-01 was changed later, so nothing was redone\. Undo this first \(.*\): .*Shed/,
    );
    expect(await places()).toEqual(['Shop', 'Barn']);
    await undo(gone.act);
    await redo(merge.act);
    expect(await places()).toEqual(['Shop', 'Shed']);
  });

  test('a merge of stacks or places, or a move, of whose board pieces were cut', async () => {
    const [oak, barn] = [await addStack('Oak'), await addPlace('Barn')];
    const standing = async () => {
      const { rows } = await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 9 });
      return rows.map(({ code, stackName, placeName }) => [code, stackName, placeName]);
    };
    const before = await standing();
    async function cutAndRefused(act: string): Promise<void> {
      const cut = await rip();
      expect(await refusal(act)).toMatch(
        /^Board WAL-01 is used by a later change, .*: Board WAL-01 ripped: WAL-01-1\.$/,
      );
      await undo(cut.act);
    }
    const moved = await doing('boards.move', { boardIds: boardIds(), placeId: barn, since: yard.now() });
    await cutAndRefused(moved.act);
    const into = { id: barn, basedOn: 1, intoId: yard.place.id, air: 'into' as const };
    const places = await doing('places.merge', into);
    await cutAndRefused(places.act);
    await undo(places.act);
    const stacks = await mergeStack(oak);
    await cutAndRefused(stacks.act);
    await undo(stacks.act);
    await undo(moved.act);
    expect(await standing()).toEqual(before);
  });

  test('a cut, of whose board the stack or the place is another since', async () => {
    const [oak, barn] = [await addStack('Oak'), await addPlace('Barn')];
    const cut = await rip();
    const redone = async () => (await yard.refusal('acts.redo', { act: cut.act })).replace(/\(.*?\)/, '(…)');
    await undo(cut.act);
    const stacks = await mergeStack(oak);
    expect(await redone()).toMatch(
      /^Board WAL-01 was changed later, so nothing was redone\. Undo this first \(…\): /,
    );
    await undo(stacks.act);
    await redo(cut.act);
    await undo(cut.act);
    await doing('boards.move', { boardIds: boardIds(), placeId: barn, since: yard.now() });
    expect(await redone()).toMatch(/Undo this first \(…\): .*Barn/);
  });

  test('a cut in a merged stack, once the merge is undone: redo that first', async () => {
    const oak = await addStack('Oak');
    const stacks = await mergeStack(oak);
    const cut = await rip();
    await undo(cut.act);
    await undo(stacks.act);
    expect(await yard.refusal('acts.redo', { act: cut.act })).toMatch(/ Redo this first \(/);
    await redo(stacks.act);
    await redo(cut.act);
    const { rows } = await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 9 });
    expect(rows.map(({ code, stackName }) => [code, stackName])).toContainEqual(['WAL-01-1', 'Oak']);
  });

  test('a sale that released boards, once the project is deleted: undo that first', async () => {
    const project = await yard.command('projects.add', { name: 'Table', neededBy: null, note: '' });
    await yard.command('reservations.set', { boardIds: boardIds(), projectId: project.id });
    const sale = await doing('boards.archive', {
      boardIds: boardIds(),
      why: 'sold',
      at: yard.now(),
      isReserved: true,
    });
    const deletion = await doing('projects.delete', { id: project.id, basedOn: 1 });
    expect(await refusal(sale.act)).toMatch(
      /^Project Table was deleted, so nothing was undone\. Undo that first \(.*\): Project Table deleted\.$/,
    );
    await undo(deletion.act);
    await undo(sale.act);
    expect((await yard.query('projects.list', {}))[0]?.boards).toHaveLength(2);
  });

  test('a closing and a deletion, whose names were given to others', async () => {
    const oak = await addStack('Oak');
    const { act: closing } = await doing('stacks.close', { id: oak, basedOn: 1 });
    await otherWindow().command('stacks.reopen', { id: oak, basedOn: 2, name: 'Oak of old' });
    expect(await refusal(closing)).toMatch(/^Stack Oak of old was changed later, so nothing was undone\./);
    const { act: deletion } = await doing('stacks.delete', { id: oak, basedOn: 3 });
    await addStack('Oak of old');
    expect(await refusal(deletion)).toBe(
      'Stack Oak of old cannot come back: its ID or name is in use now. Nothing was undone.',
    );
    const loft = await addPlace('Loft');
    const { act: lost } = await doing('places.delete', { id: loft, basedOn: 1 });
    await addPlace('Loft');
    expect(await refusal(lost)).toBe(
      'Place Loft cannot come back: its ID or name is in use now. Nothing was undone.',
    );
  });
});

test('a place in use is not closed; closed, what was there keeps its history and its forecast', async () => {
  await yard.command('boards.edit', { id: boardIds()[0]!, basedOn: 1, changed: { sawnOn: '2026-05-25' } });
  yard.later(10 * DAY_MS);
  expect(await yard.refusal('places.close', { id: yard.place.id, basedOn: 1 })).toMatch(
    /^Shop is in use by Walnut\. Nothing was closed\./,
  );
  const barn = await addPlace('Barn');
  await yard.command('stacks.move', { id: yard.stack.id, placeId: barn, since: yard.now() });
  await yard.command('places.close', { id: yard.place.id, basedOn: 1 });
  expect(await placeNames()).toEqual(['Barn']);
  expect(await yard.query('places.closed', {})).toMatchObject([{ name: 'Shop' }]);
  const { moves } = await yard.query('boards.get', { id: boardIds()[0]! });
  expect(moves.map(({ placeName }) => placeName)).toEqual(['Shop', 'Barn']);
  await outlooksMade();
  const { details } = await yard.query('boards.forecast', { id: boardIds()[0]! });
  expect(details?.stays.map(({ placeName }) => placeName)).toEqual(['Shop', 'Barn']);
  expect(details?.places.map(({ name }) => name)).toEqual(['Barn']);
  expect(
    await yard.refusal('boards.move', { boardIds: boardIds(), placeId: yard.place.id, since: yard.now() }),
  ).toMatch(/^Shop is closed\./);
  await yard.command('places.reopen', { id: yard.place.id, basedOn: 2 });
  expect(await placeNames()).toEqual(['Shop', 'Barn']);
});

test('a place to which a move is planned is not closed, one where something was is not deleted', async () => {
  const barn = await addPlace('Barn');
  const planned = { stackId: yard.stack.id, boardId: null, placeId: barn, plannedOn: '2026-06-20', note: '' };
  await yard.command('plannedMoves.add', planned);
  expect(await yard.refusal('places.close', { id: barn, basedOn: 1 })).toMatch(/A move of Walnut to Barn/);
  expect(await yard.refusal('places.delete', { id: barn, basedOn: 1 })).toMatch(
    /^Boards or stacks were in Barn/,
  );
  await yard.command('places.delete', { id: await addPlace('Loft'), basedOn: 1 });
  expect(await placeNames()).toEqual(['Shop', 'Barn']);
});

test('merged places: what was in the one was in the other, with the air that is right', async () => {
  const barn = await addPlace('Barn', 0.5);
  yard.later(DAY_MS);
  await yard.command('boards.move', { boardIds: [boardIds()[0]!], placeId: barn, since: yard.now() });
  yard.later(DAY_MS);
  const own = await doing('places.merge', { id: yard.place.id, basedOn: 1, intoId: barn, air: 'own' });
  expect(own.output).toMatchObject({ name: 'Barn', kind: 'shop', stacks: [{ name: 'Walnut', boards: 2 }] });
  expect(own.output.air[0]!.rh).toBe(0.4);
  const moves = async () =>
    (await yard.query('boards.get', { id: boardIds()[0]! })).moves.map(({ placeName }) => placeName);
  // It was never moved, as it turns out.
  expect(await moves()).toEqual(['Barn']);
  const line = 'Place Shop merged into Barn, with the air of Shop.';
  expect([(await lines())[0], (await lines(boardIds()[0]!))[0]]).toEqual([line, line]);
  await undo(own.act);
  expect(await moves()).toEqual(['Shop', 'Barn']);
  const { version } = (await yard.query('places.list', {}))[0]!;
  const into = { id: yard.place.id, basedOn: version, intoId: barn, air: 'into' as const };
  expect((await yard.command('places.merge', into)).air[0]!.rh).toBe(0.5);
});
