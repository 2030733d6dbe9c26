import { expect, test } from 'vitest';
import { DAY_MS, HOUR_MS } from '../../../shared-core/time.ts';
import { openWindow } from './a-window.ts';
import { doing, lines, redo, undo } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const first = () => yard.boards[0]!.id;
const placeNames = async () =>
  (await yard.query('boards.get', { id: first() })).moves.map(({ placeName }) => placeName);
async function shed(): Promise<number> {
  const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 }));
  return (await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air })).id;
}
/** Some hours before the yard's clock. */
const before = (hours: number) => new Date(Date.parse(yard.now()) - hours * HOUR_MS).toISOString();

test('a move of the day on which the board was entered comes after that, though only the day is known', async () => {
  const placeId = await shed();
  yard.later(DAY_MS);
  await yard.command('boards.move', { boardIds: [first()], placeId, since: before(25), isDayOnly: true });
  expect(await placeNames()).toEqual(['Shop', 'Shed']);
  expect((await yard.query('boards.get', { id: first() })).board.placeName).toBe('Shed');
});

test('a move before one of a later day asks, and is inserted where the person says so', async () => {
  const placeId = await shed();
  yard.later(DAY_MS);
  const move = { boardIds: [first()], placeId, since: before(25 + 5 * 24) };
  expect(await yard.refusal('boards.move', move)).toMatch(
    /^That is before the move of WAL-01 to Shop on .+\. Insert it there\?$/,
  );
  expect(await placeNames()).toEqual(['Shop']);
  await yard.command('boards.move', { ...move, isInserted: true });
  expect(await placeNames()).toEqual(['Shed', 'Shop']);
  expect((await yard.query('boards.get', { id: first() })).board.placeName).toBe('Shop');
});

const boardOf = (id: number) => yard.query('boards.get', { id });
const secondId = () => yard.boards[1]!.id;

/** A shed to which both boards were moved in one act, two hours ago, and their moves there. */
async function bothToShed() {
  const placeId = await shed();
  yard.later(10 * DAY_MS);
  await yard.command('boards.move', { boardIds: [first(), secondId()], placeId, since: before(2) });
  const [entered, moved] = (await boardOf(first())).moves;
  return { placeId, entered: entered!, moved: moved! };
}

test('a move is edited for the board alone, or for all that were moved with it', async () => {
  const { placeId, moved } = await bothToShed();
  expect(await yard.query('moves.together', { id: moved.id })).toEqual({ boards: 2 });
  const when = { since: before(3 * 24), isDayOnly: true };
  await yard.command('moves.edit', { id: moved.id, basedOn: 1, changed: { when } });
  expect((await boardOf(first())).moves[1]).toMatchObject({ placeId, since: when.since, datedBy: 'day' });
  expect((await boardOf(secondId())).moves[1]).toMatchObject({ since: moved.since, datedBy: 'time' });
  // They are no longer alike.
  expect(await yard.query('moves.together', { id: moved.id })).toEqual({ boards: 1 });
  const second = (await boardOf(secondId())).moves[1]!;
  await yard.command('moves.edit', { id: second.id, basedOn: 1, changed: { when } });
  const changed = { placeId: yard.place.id };
  await yard.command('moves.edit', { id: second.id, basedOn: 2, changed, together: true });
  for (const id of [first(), secondId()]) expect((await boardOf(id)).board.placeName).toBe('Shop');
});

test('a move that another window edited meanwhile is a conflict', async () => {
  const { moved } = await bothToShed();
  const edit = { id: moved.id, basedOn: 1, changed: { placeId: yard.place.id } };
  await yard.command('moves.edit', edit);
  expect(await yard.answer('moves.edit', edit)).toMatchObject({ ok: false, current: { version: 2 } });
});

test('a move that another window changed since is neither back nor gone, and the refusal says what came since', async () => {
  const { moved } = await bothToShed();
  const other = openWindow(yard.app, 'window-2');
  const edit = { id: moved.id, basedOn: 1, changed: { placeId: yard.place.id } };
  const { act } = await doing('moves.edit', edit);
  await other.command('moves.delete', { id: moved.id, basedOn: 2 });
  expect(await yard.refusal('acts.undo', { act })).toMatch(
    /^A move of board WAL-01 was changed later, so nothing was undone\. Undo this first \(.*\): A move of board WAL-01 to Shop deleted\.$/,
  );
  expect(await placeNames()).toEqual(['Shop']);
});

test('an edit that changes the order of moves asks first', async () => {
  const { entered, moved } = await bothToShed();
  const early = { since: before(20 * 24), isDayOnly: true };
  const back = { id: moved.id, basedOn: 1, changed: { when: early } };
  expect(await yard.refusal('moves.edit', back)).toMatch(
    /^That is before the move of WAL-01 to Shop on .+\?$/,
  );
  yard.later(3 * DAY_MS);
  const late = { since: before(1), isDayOnly: false };
  const on = { id: entered.id, basedOn: 1, changed: { when: late } };
  expect(await yard.refusal('moves.edit', on)).toMatch(/^That is after the move of WAL-01 to Shed on .+\?$/);
  await yard.command('moves.edit', { ...back, isInserted: true });
  expect(await placeNames()).toEqual(['Shed', 'Shop']);
});

test('a day before the sawing asks, and is saved where the log was there', async () => {
  const { version } = yard.boards[0]!;
  await yard.command('boards.edit', { id: first(), basedOn: version, changed: { sawnOn: '2026-05-20' } });
  const { id } = (await boardOf(first())).moves[0]!;
  const when = { since: '2026-05-01T12:00:00.000Z', isDayOnly: true };
  const edit = { id, basedOn: 1, changed: { when } };
  expect(await yard.refusal('moves.edit', edit)).toMatch(/^WAL-01 was sawn on .+\. Was its log there\?$/);
  await yard.command('moves.edit', { ...edit, isBeforeSawing: true });
  expect((await boardOf(first())).moves[0]!.since).toBe(when.since);
});

test('the first place of a board is not deleted, any later move is, and its stack follows', async () => {
  const { entered, moved } = await bothToShed();
  expect(await yard.refusal('moves.delete', { id: entered.id, basedOn: 1 })).toMatch(
    /^This is the first place of WAL-01\. Nothing was deleted\./,
  );
  expect((await yard.query('stacks.get', { id: yard.stack.id })).placeName).toBe('Shed');
  await yard.command('moves.delete', { id: moved.id, basedOn: 1, together: true });
  for (const id of [first(), secondId()]) expect((await boardOf(id)).board.placeName).toBe('Shop');
  expect((await yard.query('stacks.get', { id: yard.stack.id })).placeName).toBe('Shop');
});

test('a deleted move is among the changes of its board, and of no other', async () => {
  const { moved } = await bothToShed();
  const { act } = await doing('moves.delete', { id: moved.id, basedOn: 1 });
  const line = 'A move of board WAL-01 to Shed deleted.';
  expect(await lines(first())).toContain('2 boards moved to Shed.');
  expect((await lines(first()))[0]).toBe(line);
  expect(await lines(secondId())).not.toContain(line);
  await undo(act);
  await redo(act);
  expect((await lines(first())).filter((each) => each === line)).toHaveLength(1);
});

test('a move of a day on which the board was probed asks which came first', async () => {
  const placeId = await shed();
  yard.later(HOUR_MS);
  await yard.beginRound();
  yard.later(2 * DAY_MS);
  const move = { boardIds: [first()], placeId, since: before(2 * 24 - 2), isDayOnly: true };
  expect(await yard.refusal('boards.move', move)).toMatch(
    /^WAL-01 was also probed on .+\. Which came first\?$/,
  );
  const { readings } = await boardOf(first());
  const takenMs = Date.parse(readings[0]!.takenAt);
  const { act } = await doing('boards.move', { ...move, order: 'moved-first', isInserted: true });
  expect(await yard.refusal('boards.move', move)).toMatch(/Which came first/);
  const sinceMs = async () =>
    Date.parse((await boardOf(first())).moves.find((m) => m.placeId === placeId)!.since);
  expect(await sinceMs()).toBeLessThanOrEqual(takenMs);
  await undo(act);
  await yard.command('boards.move', { ...move, order: 'probed-first' });
  expect(await sinceMs()).toBeGreaterThan(takenMs);
});

test('undoing what inserted a move never leaves a board without a place', async () => {
  const { placeId, entered } = await bothToShed();
  const { act } = await doing('boards.move', {
    boardIds: [first()],
    placeId,
    since: before(40 * 24),
    isInserted: true,
  });
  const { moves } = await boardOf(first());
  await yard.command('moves.delete', { id: entered.id, basedOn: 1 });
  await yard.command('moves.delete', { id: moves[2]!.id, basedOn: 1 });
  await expect(undo(act)).rejects.toThrow(/changed later/);
  expect((await boardOf(first())).moves).toHaveLength(1);
});
