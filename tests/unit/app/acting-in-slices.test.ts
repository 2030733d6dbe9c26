import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '../../../electron/store/yard-file.ts';
import { openWindow, say } from './a-window.ts';
import { failWrites, letWrite } from './failing-disk.ts';
import { aimAt, aimedSpot, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

/** Several slices. */
const BOARDS = 1200;
const work = '0d0bfbc4-6a0c-4a2f-9b0e-0d6f6a6a3f11';
const since = '2026-05-20T08:00:00.000Z';

withYardOfTwo();

let file: Db;
let boards: { id: number; basedOn: number }[];
let boardIds: number[];
let loft: number;

beforeEach(async () => {
  for (let from = 0; from < BOARDS; from += 300) {
    const codes = Array.from({ length: 300 }, (_, index) => yard.board(`X-${from + index}`));
    await yard.command('boards.add', codes);
  }
  file = new Database(join(yard.dataDir, 'yard.sqlite'));
  boards = file
    .prepare("SELECT id, version AS basedOn FROM board WHERE code LIKE 'X-%' ORDER BY id")
    .all() as [];
  boardIds = boards.map(({ id }) => id);
  const air = Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.6 }));
  loft = (await yard.command('places.add', { name: 'Loft', kind: 'shop', air })).id;
});
afterEach(() => {
  letWrite();
  file.close();
});

const count = (sql: string): number => Number(file.prepare(sql).pluck().get());
const edited = () => count("SELECT count(*) FROM board WHERE note = 'Edited'");
const moved = () => count(`SELECT count(*) FROM move WHERE since = '${since}'`);
/** All that an edit of boards can change. */
const contents = () => ({
  boards: file.prepare('SELECT id, version, note, layer, place_id FROM board ORDER BY id').all(),
  moves: file.prepare('SELECT id, uuid, version, board_id, place_id, since FROM move ORDER BY id').all(),
  excluded: file.prepare('SELECT count(*) FROM amendment').pluck().get(),
});

const move = (more: { work?: string } = {}, act?: string) =>
  yard.command('boards.move', { boardIds, placeId: loft, since, isInserted: true, ...more }, act);
const edit = (more: { work?: string } = {}, act?: string) =>
  yard.command(
    'boards.editTogether',
    { boards, changed: { log: 'Edited' }, move: { placeId: loft, since, isInserted: true }, ...more },
    act,
  );
/** Until the first slice of a move is done. */
const begun = async () => {
  while (moved() === 0) await setImmediate();
};
const isEdited = () => count("SELECT count(*) FROM board WHERE log = 'Edited'");

test('others have their turn between slices, and it says how far it is', async () => {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await aimAt(roundId, 0, 0);
  const spot = await aimedSpot(roundId);
  const moving = move({ work });
  await begun();
  const typed = await yard.command('rounds.saveTyped', { ...spot, raw: 14 });
  expect(moved()).toBeGreaterThan(0);
  expect(moved()).toBeLessThan(BOARDS);
  expect(await moving).toEqual({ moved: BOARDS });
  expect(moved()).toBe(BOARDS);
  expect(count(`SELECT count(*) FROM reading`)).toBe(1);
  expect(typed).toBeDefined();
  const heard = yard.heard('work.progress');
  expect(heard[0]).toEqual({ work, done: 0, total: BOARDS });
  expect(heard[1]).toEqual({ work, done: expect.any(Number), total: BOARDS });
  expect(heard[1]!.done).toBeGreaterThan(0);
});

test('other windows hear every half second how far it is, and its end', async () => {
  const other = openWindow(yard.app, 'window-2');
  const editing = edit();
  await setImmediate();
  const later = performance.now() + 500;
  while (performance.now() < later);
  await editing;
  const heard = other.heard('work.ofOther');
  expect(heard[0]).toMatchObject({ progress: { total: BOARDS } });
  expect(heard.filter(({ progress }) => progress === null)).toEqual([heard.at(-1)]);
  expect(yard.heard('work.ofOther')).toEqual([]);
  other.close();
});

test('no board is judged again before the last slice, and then all are', async () => {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await aimAt(roundId, 0, 0);
  for (let spot = 0; spot < 4; spot++) await type(roundId, 15);
  const { boardId: probed } = file.prepare('SELECT board_id AS boardId FROM reading').get() as {
    boardId: number;
  };
  const due = () => count('SELECT count(*) FROM finding_due');
  // The last reading is answered before it is judged.
  await expect.poll(due).toBe(0);
  const moving = yard.command('boards.move', {
    boardIds: [probed, ...boardIds],
    placeId: loft,
    since,
    isInserted: true,
  });
  await begun();
  expect(moved()).toBeLessThan(BOARDS);
  expect(due()).toBe(1);
  await moving;
  await expect.poll(due).toBe(0);
});

test('one that is a single slice is answered before anybody else has a turn', async () => {
  const moving = yard.command('boards.move', {
    boardIds: boardIds.slice(0, 250),
    placeId: loft,
    since,
    isInserted: true,
  });
  expect(moved()).toBe(250);
  expect(await moving).toEqual({ moved: 250 });
});

describe('one that is stopped', () => {
  test('leaves nothing behind, and is not done when it is sent again', async () => {
    const before = contents();
    const act = randomUUID();
    const moving = move({ work }, act).catch(String);
    await begun();
    expect(moved()).toBeLessThan(BOARDS);
    await yard.command('work.cancel', { work });
    expect(await moving).toBe('Error: Stopped. Nothing was changed.');
    expect(contents()).toEqual(before);
    expect(count('SELECT count(*) FROM unfinished_act')).toBe(0);
    expect(await move({ work }, act).catch(String)).toBe('Error: Stopped. Nothing was changed.');
    expect(contents()).toEqual(before);
    // Asked for once more, it is another act.
    expect(await move()).toEqual({ moved: BOARDS });
  });

  test('takes edits, moves and exclusions back, and leaves what others did meanwhile', async () => {
    const roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
    await aimAt(roundId, 2, 0);
    for (let spot = 0; spot < 4; spot++) await type(roundId, 15);
    expect(count('SELECT count(*) FROM reading')).toBe(4);
    const before = contents();
    const editing = yard
      .command('boards.editTogether', {
        boards,
        changed: { log: 'Edited' },
        move: { placeId: loft, since, isInserted: true },
        latestReadings: { exclude: { code: 'wet-face' } },
        work,
      })
      .catch(String);
    // Once to look at them, then twice to edit.
    while (isEdited() === 0) await setImmediate();
    const [first] = boards;
    await yard.command('boards.edit', {
      id: first!.id,
      basedOn: first!.basedOn + 1,
      changed: { note: 'By another' },
    });
    await yard.command('work.cancel', { work });
    expect(await editing).toBe('Error: Stopped. Nothing was changed.');
    expect(isEdited()).toBe(0);
    expect(moved()).toBe(0);
    const after = contents();
    expect(after.moves).toEqual(before.moves);
    const changed = after.boards.filter(
      (row, index) => JSON.stringify(row) !== JSON.stringify(before.boards[index]),
    );
    expect(changed).toMatchObject([{ id: first!.id, note: 'By another' }]);
    const { readings } = await yard.query('boards.get', { id: first!.id });
    expect(readings.map(({ excluded }) => excluded)).toEqual([null, null, null, null]);
  });

  test('before its turn came does nothing', async () => {
    const other = openWindow(yard.app, 'window-2');
    await other.query('yard.info', {});
    const moving = move();
    const stopped = other
      .command('boards.editTogether', { boards, changed: { log: 'Edited' }, work })
      .catch(String);
    await other.command('work.cancel', { work });
    expect(await stopped).toBe('Error: Stopped. Nothing was changed.');
    expect(await moving).toEqual({ moved: BOARDS });
    expect(isEdited()).toBe(0);
    other.close();
  });
});

test('the same act sent twice is done once, and both are answered alike', async () => {
  const act = randomUUID();
  const both = [edit({}, act), edit({}, act)];
  const [one, other] = await Promise.all(both);
  expect(other).toEqual(one);
  expect(await edit({}, act)).toEqual(one);
  expect(moved()).toBe(BOARDS);
  expect(count("SELECT count(*) FROM act WHERE request = 'boards.editTogether'")).toBe(1);
});

test('two are done one after the other', async () => {
  await Promise.all([move(), move()]);
  const acts = file
    .prepare(
      `SELECT min(c.id) AS first, max(c.id) AS last FROM act_change c JOIN act a ON a.id = c.act_id
       WHERE a.request = 'boards.move' GROUP BY a.id ORDER BY 1`,
    )
    .all() as { first: number; last: number }[];
  expect(acts).toHaveLength(2);
  expect(acts[0]!.last).toBeLessThan(acts[1]!.first);
});

test('a board that was edited between slices is named, and the others are as they were', async () => {
  const before = contents();
  const editing = edit().catch(String);
  while (isEdited() === 0) await setImmediate();
  const last = boards.at(-1)!;
  await yard.command('boards.edit', { ...last, changed: { note: 'By another' } });
  expect(await editing).toMatch(/1 board was edited meanwhile: X-1199\. Nothing was saved/);
  expect(isEdited()).toBe(0);
  expect(contents().moves).toEqual(before.moves);
});

describe('undo of an edit', () => {
  test('is done in slices, and puts everything back', async () => {
    const { act } = await edit();
    const undoing = yard.command('acts.undo', { act, work });
    while (moved() === BOARDS) await setImmediate();
    expect(count('SELECT count(*) FROM unfinished_act')).toBe(1);
    expect(await undoing).toMatchObject({ isUndone: true });
    expect([isEdited(), moved()]).toEqual([0, 0]);
  });

  test('that is stopped leaves the edit as it was, to be undone later', async () => {
    const { act } = await edit();
    const before = contents();
    const undoing = yard.command('acts.undo', { act, work }).catch(String);
    while (moved() === BOARDS) await setImmediate();
    await yard.command('work.cancel', { work });
    expect(await undoing).toBe('Error: Stopped. Nothing was changed.');
    expect(contents()).toEqual(before);
    await yard.command('acts.undo', { act });
    expect([isEdited(), moved()]).toEqual([0, 0]);
  });
});

test('what a full disk keeps from being taken back is taken back once it has room', async () => {
  const before = contents();
  const moving = move().catch(String);
  await begun();
  const partly = moved();
  failWrites({ code: 'SQLITE_FULL' });
  expect(await moving).toBe(`Error: ${say({ code: 'refusal.taken-back-later', facts: {} })}`);
  expect(moved()).toBe(partly);
  letWrite();
  await expect.poll(moved, { timeout: 5000 }).toBe(0);
  expect(contents()).toEqual(before);
  expect(edited()).toBe(0);
});
