import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { type AWindow, openWindow } from './a-window.ts';
import { aimAt, aimedSpot, aimOf, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

/** Two windows on one round over eight boards: `yard` is the first, which holds the meter. */
withYardOfTwo();

let second: AWindow;
let roundId: number;
let boardIds: number[];

beforeEach(async () => {
  const codes = ['WAL-03', 'WAL-04', 'WAL-05', 'WAL-06', 'WAL-07', 'WAL-08'];
  const added = await yard.command(
    'boards.add',
    codes.map((code) => yard.board(code)),
  );
  boardIds = [...yard.boards, ...added].map(({ id }) => id);
  roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
  second = openWindow(yard.app, 'window-2');
  await second.command('rounds.open', { roundId });
});

/** Raw values on disk, by board from 1 and spot. */
async function onRecord(): Promise<string[]> {
  const boards = await Promise.all(boardIds.map((id) => yard.query('boards.get', { id })));
  return boards.flatMap(({ readings }, index) =>
    readings
      .filter(({ excluded }) => excluded === null)
      .toSorted((a, b) => a.id - b.id)
      .map(({ raw, spotIndex }) => `board ${index + 1} spot ${spotIndex}: ${raw}`),
  );
}
async function withMeter() {
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
}
const heldIn = async (window: AWindow) => (await window.query('meter.state', {})).heldBy;

describe('each window has its own aim', () => {
  test('a value typed in the window at board 3 goes to board 3, while the other one is at board 7', async () => {
    await aimAt(roundId, 2);
    await aimAt(roundId, 6, null, second);
    await type(roundId, 12.4);
    await type(roundId, 9.1, second);
    expect(await onRecord()).toEqual(['board 3 spot 0: 12.4', 'board 7 spot 0: 9.1']);
    expect(await aimOf(roundId)).toEqual({ board: 2, spotIndex: 1 });
    expect(await aimOf(roundId, second)).toEqual({ board: 6, spotIndex: 1 });
  });

  test('a window hears of the other one’s readings, but not of its aim, and does not beep', async () => {
    await aimAt(roundId, 6, null, second);
    await type(roundId, 12.4);
    expect(second.heard('round.changed').at(-1)).toMatchObject({
      aim: { boardId: boardIds[6] },
      board: { boardId: boardIds[0], isRead: true },
      savedReadingId: null,
    });
  });

  test('what settles is saved, as an act, where the window with the meter aims, and nowhere else', async () => {
    await aimAt(roundId, 2);
    await withMeter();
    await aimAt(roundId, 6, null, second);
    yard.meter.show(11.8, 4);
    expect(await onRecord()).toEqual(['board 3 spot 0: 11.8']);
    const disk = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
    const act = disk.prepare('SELECT a.request, a.who FROM reading g JOIN act a ON a.id = g.act_id').get();
    disk.close();
    expect(act).toEqual({ request: 'rounds.saveSettled', who: 'window-1' });
  });

  test('what another window typed at that spot in mid-push is not doubled as the push settles', async () => {
    await aimAt(roundId, 2);
    await withMeter();
    await aimAt(roundId, 2, null, second);
    yard.meter.show(0, 1);
    yard.meter.show(11.8, 0.4);
    await type(roundId, 11.8, second);
    yard.meter.show(11.8, 4);
    expect(await onRecord()).toEqual(['board 3 spot 0: 11.8']);
    expect(yard.heard('round.notSaved').map(({ problem }) => problem.code)).toEqual(['refusal.spot-changed']);
    yard.meter.show(0, 1);
    yard.meter.show(12.2, 4);
    expect(await onRecord()).toHaveLength(2);
  });

  test('both at one spot: the second value for it is refused, as that window does not show the first', async () => {
    const shown = await aimedSpot(roundId, second);
    await type(roundId, 12.4);
    expect(await second.refusal('rounds.saveTyped', { ...shown, raw: 9.1 })).toMatch(
      /WAL-01 has another reading.*Nothing was saved/,
    );
    expect(await onRecord()).toEqual(['board 1 spot 0: 12.4']);
  });

  test('the same value sent twice under one act fills one spot', async () => {
    const sent = { ...(await aimedSpot(roundId)), raw: 12.4 };
    const act = randomUUID();
    const answers = [
      await yard.answer('rounds.saveTyped', sent, act),
      await yard.answer('rounds.saveTyped', sent, act),
    ];
    expect(answers[0]).toEqual(answers[1]);
    expect(await onRecord()).toEqual(['board 1 spot 0: 12.4']);
  });

  test('a window that is opened again goes on where it was closed', async () => {
    await aimAt(roundId, 4, 2, second);
    second.close();
    const again = openWindow(yard.app, 'window-3');
    await again.command('rounds.open', { roundId });
    expect(await aimOf(roundId, again)).toEqual({ board: 4, spotIndex: 2 });
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 0 });
  });

  test('two windows that lose the link and come back each go on at their own board', async () => {
    await aimAt(roundId, 2);
    await aimAt(roundId, 6, null, second);
    yard.close();
    second.close();
    const firstAgain = openWindow(yard.app, 'window-1');
    await firstAgain.command('rounds.open', { roundId });
    const secondAgain = openWindow(yard.app, 'window-2');
    await secondAgain.command('rounds.open', { roundId });
    expect(await aimOf(roundId, firstAgain)).toEqual({ board: 2, spotIndex: 0 });
    expect(await aimOf(roundId, secondAgain)).toEqual({ board: 6, spotIndex: 0 });
  });

  test('a yard that the other window left and opened again is gone on with at the same board', async () => {
    await aimAt(roundId, 4);
    await withMeter();
    await second.command('yard.openDemo', {});
    yard.meter.show(9.1, 4);
    yard.meter.lift();
    await second.command('yard.openOwn', {});
    expect(await aimOf(roundId)).toEqual({ board: 4, spotIndex: 0 });
    await yard.command('rounds.open', { roundId });
    yard.meter.show(11.8, 4);
    expect(await onRecord()).toEqual(['board 5 spot 0: 11.8']);
  });

  test('a round that the other window finished is asked for again', async () => {
    await yard.command('rounds.finish', { roundId });
    expect(second.heard('round.outdated')).toEqual([{ roundId, why: null }]);
    expect(await second.query('rounds.get', { roundId })).toMatchObject({ aim: null });
  });
});

describe('a board that leaves the stack while a round is open', () => {
  const remove = async (index: number) => {
    const other = await second.command('stacks.add', {
      name: 'Elsewhere',
      placeId: yard.place.id,
      endUseId: 'furniture',
      topCover: 'covered',
      note: '',
    });
    const { board } = await second.query('boards.get', { id: boardIds[index]! });
    await second.command('boards.edit', {
      id: board.id,
      basedOn: board.version,
      changed: { stackId: other.id },
    });
  };

  test('shifts no aim: the next value goes to the board on screen', async () => {
    await aimAt(roundId, 4);
    await remove(1);
    await type(roundId, 12.4);
    expect(await onRecord()).toEqual(['board 5 spot 0: 12.4']);
    expect((await yard.query('rounds.get', { roundId })).boards).toHaveLength(7);
  });

  test('and is aimed at: the aim moves to the next open board, and says so', async () => {
    await aimAt(roundId, 4);
    const shown = await aimedSpot(roundId);
    await remove(4);
    expect(yard.heard('round.outdated').at(-1)?.why).toEqual({
      code: 'round.board-left',
      facts: { boardCode: 'WAL-05', nextCode: 'WAL-06' },
    });
    expect((await yard.query('rounds.get', { roundId })).aim).toEqual({ boardId: boardIds[5], spotIndex: 0 });
    expect(await yard.refusal('rounds.saveTyped', { ...shown, raw: 12.4 })).toMatch(
      /WAL-05 is no longer in this stack.*Nothing was saved/,
    );
    expect(await onRecord()).toEqual([]);
  });
});

test('a stack that is emptied while the meter is live is said to be, and nothing is saved', async () => {
  await withMeter();
  yard.meter.show(11.8, 0.3);
  const place = { placeId: yard.place.id, endUseId: 'furniture', topCover: 'covered' as const, note: '' };
  const other = await second.command('stacks.add', { name: 'Elsewhere', ...place });
  for (const id of boardIds) {
    await second.command('boards.edit', { id, basedOn: 1, changed: { stackId: other.id } });
  }
  expect(yard.heard('round.outdated').at(-1)?.why?.code).toBe('round.stack-emptied');
  yard.meter.show(11.8, 4);
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(await onRecord()).toEqual([]);
});

describe('one window holds the meter', () => {
  test('the first that opened a round does; the other one takes it by a press', async () => {
    await withMeter();
    expect([await heldIn(yard), await heldIn(second)]).toEqual(['this-window', 'another-window']);
    await second.command('meter.hold', {});
    expect([await heldIn(yard), await heldIn(second)]).toEqual(['another-window', 'this-window']);
    expect(yard.heard('meter.state').at(-1)?.heldBy).toBe('another-window');
    await aimAt(roundId, 6, null, second);
    yard.meter.show(11.8, 4);
    expect(await onRecord()).toEqual(['board 7 spot 0: 11.8']);
  });

  test('Space in another window saves nothing of it', async () => {
    await withMeter();
    yard.meter.show(11.8, 0.3);
    expect(await second.refusal('rounds.saveLive', await aimedSpot(roundId, second))).toMatch(
      /Another window is using the meter\. Nothing was saved/,
    );
    expect(await onRecord()).toEqual([]);
  });

  test('only it hears the live value, corrected for its own board', async () => {
    await withMeter();
    yard.meter.show(11.8, 0.3);
    await vi.waitFor(() => expect(yard.heard('meter.live').length).toBeGreaterThan(0));
    expect(yard.heard('meter.live').at(-1)?.corrected?.mcPct).toBeGreaterThan(5);
    expect(second.heard('meter.live')).toEqual([]);
  });

  test('nobody does once it is closed, and nothing saves itself until a window takes it', async () => {
    await withMeter();
    yard.close();
    expect(await heldIn(second)).toBe('nobody');
    yard.meter.show(11.8, 4);
    yard.meter.lift();
    await second.command('meter.hold', {});
    yard.meter.show(12.4, 4);
    const { probed } = await second.query('rounds.get', { roundId });
    expect(probed?.assessment?.readings.map(({ raw }) => raw)).toEqual([12.4]);
  });
});
