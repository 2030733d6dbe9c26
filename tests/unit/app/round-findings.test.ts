/**
 * A round shows of each board what was found when it was judged: opening it judges only the board aimed at, and what
 * is not judged yet. Judging itself is the core's (`tests/unit/probing`).
 */
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { latestFindingSchema } from '../../../shared-core/contract/yard.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { inEnglish } from '../words/in-english.ts';
import { openWindow } from './a-window.ts';
import { aimAt, aimOf, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** More than are judged while a person waits, or in the background before the test can look. */
const MANY = 90;

async function addBoards(count: number): Promise<void> {
  const codes = Array.from({ length: count - 2 }, (_, n) => `WAL-${String(n + 3).padStart(2, '0')}`);
  await yard.command('boards.add', codes.map(yard.board));
}

/** A round with one reading of each board. */
async function walk(): Promise<number> {
  const { id: roundId, boards } = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
  });
  for (const boardIndex of boards.keys()) {
    await aimAt(roundId, boardIndex, 0);
    await type(roundId, 10 + (boardIndex % 7));
  }
  return roundId;
}

const round = (roundId: number) => yard.query('rounds.get', { roundId });
const findingsIn = async (roundId: number) =>
  (await round(roundId)).boards.map(({ finding }) => finding && latestFindingSchema.parse(finding));
const listed = async () =>
  (await yard.query('boards.list', { stackId: yard.stack.id, search: '', offset: 0, limit: 100 })).rows.map(
    ({ latest }) => latest,
  );
const shellsIn = async (roundId: number) =>
  (await round(roundId)).boards.map(({ finding }) => finding?.shellPct ?? null);

/** Something done to the yard file by nobody whom the app knows. */
function onDisk(sql: string): void {
  const disk = new Database(join(yard.dataDir, 'yard.sqlite'));
  disk.exec(sql);
  disk.close();
}

test('the last round is shown as it was found then, and is not judged again at each reading', async () => {
  const earlier = await walk();
  await yard.command('rounds.finish', { roundId: earlier });
  onDisk(`UPDATE finding SET record = json_set(record, '$.spotPcts', json('[11.1, null, null, null]'))`);
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  const lastRound = async () => (await round(roundId)).probed?.lastRound;
  expect((await lastRound())?.spotPcts).toEqual([11.1, null, null, null]);
  await type(roundId, 9);
  expect((await lastRound())?.spotPcts).toEqual([11.1, null, null, null]);
});

/** The app forgets the round, as when the person comes back another day. */
async function openAgain(): Promise<void> {
  await yard.command('yard.openDemo', {});
  await yard.command('yard.openOwn', {});
}

test('every board is shown as it was judged, and the board aimed at with its readings', async () => {
  await addBoards(5);
  const roundId = await walk();
  const found = await findingsIn(roundId);
  expect(found).toEqual(await listed());
  expect(found.map((finding) => finding?.roundId)).toEqual(Array(5).fill(roundId));
  const { probed, boards, aim } = await round(roundId);
  const board = boards.find(({ boardId }) => boardId === aim?.boardId)!;
  expect(probed).toMatchObject(board);
  expect(probed?.assessment?.estimate?.shellPct).toBe(board.finding?.shellPct);
});

test('opening a round judges only the board that is aimed at', async () => {
  const roundId = await walk();
  onDisk(`UPDATE finding SET record = json_set(record, '$.averagePct', 55)`);
  const { boards, aim } = await round(roundId);
  expect(aim?.boardId).toBe(boards[1]?.boardId);
  expect(boards[0]?.finding?.averagePct).toBe(55);
  expect(boards[1]?.finding?.averagePct).toBeLessThan(20);
});

test('going to a board tells its readings', async () => {
  const roundId = await walk();
  await aimAt(roundId, 0);
  const { aim, board } = yard.heard('round.changed').at(-1)!;
  expect(aim).toEqual({ boardId: yard.boards[0]!.id, spotIndex: 1 });
  expect(board.code).toBe('WAL-01');
  expect(board.assessment?.readings.map(({ raw }) => raw)).toEqual([10]);
});

test('a few boards that are not judged, or were before a finding said where to go on, are judged at once', async () => {
  const roundId = await walk();
  const judged = await round(roundId);
  onDisk(`DELETE FROM finding WHERE board_id = ${judged.boards[0]!.boardId};
    UPDATE finding SET record = json_remove(record, '$.openSpot')`);
  expect(await round(roundId)).toEqual(judged);
});

describe('where a round goes on in a window that was not in it', () => {
  const newWindow = () => openWindow(yard.app, 'window-2');
  const fill = async (roundId: number, boardIndex: number, raws: number[]) => {
    for (const [spotIndex, raw] of raws.entries()) {
      await aimAt(roundId, boardIndex, spotIndex);
      await type(roundId, raw);
    }
  };

  test('is the first board with a spot whose reading does not count', async () => {
    await addBoards(3);
    const { id: roundId, boards } = await yard.command('rounds.start', {
      stackId: yard.stack.id,
      woodTempC: 20,
    });
    const sound = planSpots(boards[0]!).plan.map(() => 12);
    await fill(roundId, 0, sound);
    await fill(roundId, 1, [12, 126, ...sound.slice(2)]);
    await openAgain();
    expect(await aimOf(roundId, newWindow())).toEqual({ board: 1, spotIndex: 1 });
  });

  test('is its beginning where every spot of every board is read', async () => {
    const { id: roundId, boards } = await yard.command('rounds.start', {
      stackId: yard.stack.id,
      woodTempC: 20,
    });
    for (const boardIndex of boards.keys())
      await fill(
        roundId,
        boardIndex,
        planSpots(boards[0]!).plan.map(() => 12),
      );
    await openAgain();
    expect(await aimOf(roundId, newWindow())).toEqual({ board: 0, spotIndex: null });
  });
});

describe('a round with many boards to judge again', () => {
  let roundId: number;
  beforeEach(async () => {
    await addBoards(MANY);
    roundId = await walk();
  });
  const unjudged = async () =>
    (await round(roundId)).boards.filter(({ isRead, finding }) => isRead && finding === null).length;
  const allJudged = () => vi.waitFor(async () => expect(await unjudged()).toBe(0), 10_000);

  test('says so, judges the one aimed at now and the others meanwhile, and tells when that is done', async () => {
    const before = await shellsIn(roundId);
    await yard.command('rounds.setTemperature', { roundId, boardId: null, woodTempC: 2 });
    const told = yard.heard('changed').length;
    const { summary, boards, aim } = await round(roundId);
    expect(summary).toMatchObject({ boards: MANY, probed: MANY });
    expect(inEnglish(summary.message)).toMatch(/\d\d being judged/);
    // Wood Handbook (FPL-GTR-190), ch. 13: added in colder wood.
    const aimed = boards.findIndex(({ boardId }) => boardId === aim?.boardId);
    expect(boards[aimed]?.finding?.shellPct).toBeGreaterThan(before[aimed]!);
    await vi.waitFor(() => expect(yard.heard('changed').length).toBeGreaterThan(told), 10_000);
    await allJudged();
    const after = await shellsIn(roundId);
    for (const [index, shellPct] of after.entries()) expect(shellPct).toBeGreaterThan(before[index]!);
    // The last few are judged for who looks before they are saved.
    await vi.waitFor(async () => expect(await listed()).toEqual(await findingsIn(roundId)), 10_000);
    expect(inEnglish((await round(roundId)).summary.message)).not.toMatch(/being judged/);
  });

  test('shows none by the rules of before', async () => {
    await yard.command('rounds.finish', { roundId });
    const judged = await findingsIn(roundId);
    onDisk(`UPDATE finding SET rules_version = 1, record = json_set(record, '$.averagePct', 55)`);
    expect(await unjudged()).toBe(MANY);
    await yard.command('rounds.open', { roundId });
    await allJudged();
    expect((await findingsIn(roundId)).map((finding) => finding?.averagePct)).toEqual(
      judged.map((finding) => finding?.averagePct),
    );
  });

  test('shows none from before its boards were moved elsewhere', async () => {
    await yard.command('rounds.finish', { roundId });
    const damp = await yard.command('places.add', {
      name: 'Damp shed',
      kind: 'open-shed',
      air: Array.from({ length: 12 }, () => ({ tempC: 10, rh: 0.95 })),
    });
    const boardIds = (await round(roundId)).boards.map(({ boardId }) => boardId);
    await yard.command('boards.move', {
      boardIds,
      placeId: damp.id,
      since: '2026-05-01T08:00:00.000Z',
      isInserted: true,
    });
    expect(await unjudged()).toBeGreaterThan(0);
    await allJudged();
    // What the place's boards tell of its air comes a little later, and judges them once more.
    await vi.waitFor(async () => expect(await findingsIn(roundId)).toEqual(await listed()), 15_000);
  });
});

test('boards left to judge when the app ends are judged when the yard is opened again', async () => {
  await addBoards(MANY);
  await walk();
  // What is asked next finds the last finding saved.
  await listed();
  onDisk(`UPDATE finding SET record = json_set(record, '$.averagePct', 55)`);
  const averages = async () => (await listed()).map((latest) => latest?.averagePct);
  expect(await averages()).toEqual(Array(MANY).fill(55));

  const { id, version } = yard.stack;
  await yard.command('stacks.edit', { id, basedOn: version, changed: { endUseId: 'interior-most-us' } });
  await openAgain();
  await vi.waitFor(async () => expect(await averages()).not.toContain(55), 15_000);
});
