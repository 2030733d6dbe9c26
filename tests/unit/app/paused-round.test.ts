import { beforeEach, expect, test } from 'vitest';
import { type AWindow, openWindow } from './a-window.ts';
import { aimAt, aimedSpot, aimOf, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

/** A live meter saves only while the round is on screen in the window that has the meter. */
withYardOfTwo();

let roundId: number;

beforeEach(async () => {
  roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
});

/** Raw values of the round, by board from 1 and spot. */
async function saved(): Promise<string[]> {
  const found = await Promise.all(yard.boards.map(({ id }) => yard.query('boards.get', { id })));
  return found.flatMap(({ readings }, index) =>
    readings.map(({ raw, spotIndex }) => `board ${index + 1} spot ${spotIndex}: ${raw}`),
  );
}
function push(pct: number): void {
  yard.meter.lift();
  yard.meter.show(pct, 4);
}

test('what settles while another screen is open is not saved; back on the round it goes on where it was', async () => {
  await aimAt(roundId, 1, 2);
  await yard.command('rounds.leave', { roundId });
  push(11.8);
  push(12.2);
  expect(await saved()).toEqual([]);
  await yard.command('rounds.open', { roundId });
  expect(await aimOf(roundId)).toEqual({ board: 1, spotIndex: 2 });
  push(12.6);
  expect(await saved()).toEqual(['board 2 spot 2: 12.6']);
});

test('a value that had begun to settle before the round was left is not saved', async () => {
  yard.meter.lift();
  yard.meter.show(11.8, 0.5);
  await yard.command('rounds.leave', { roundId });
  yard.meter.show(11.8, 4);
  await yard.command('rounds.open', { roundId });
  yard.meter.show(11.8, 4);
  expect(await saved()).toEqual([]);
});

test('a typed value that arrives after the round was left is saved, and the meter still waits', async () => {
  const spot = await aimedSpot(roundId);
  await yard.command('rounds.leave', { roundId });
  await yard.command('rounds.saveTyped', { ...spot, raw: 12.4 });
  push(11.8);
  expect(await saved()).toEqual(['board 1 spot 0: 12.4']);
  await yard.command('rounds.open', { roundId });
  expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 1 });
});

test('a press that arrives after the round was left aims no meter', async () => {
  await yard.command('rounds.leave', { roundId });
  await aimAt(roundId, 1);
  push(11.8);
  expect(await saved()).toEqual([]);
  await yard.command('rounds.open', { roundId });
  expect(await aimOf(roundId)).toEqual({ board: 1, spotIndex: 0 });
});

test('a window that left another round goes on in this one', async () => {
  await yard.command('rounds.leave', { roundId: roundId + 1 });
  push(11.8);
  expect(await saved()).toEqual(['board 1 spot 0: 11.8']);
});

test('the round on another window’s screen takes nothing while the window with the meter shows something else', async () => {
  const second: AWindow = openWindow(yard.app, 'window-2');
  await second.command('rounds.open', { roundId });
  await yard.command('rounds.leave', { roundId });
  push(11.8);
  expect(await saved()).toEqual([]);
  await type(roundId, 12.4, second);
  await second.command('meter.hold', {});
  push(12.6);
  expect(await saved()).toEqual(['board 1 spot 0: 12.4', 'board 1 spot 1: 12.6']);
});
