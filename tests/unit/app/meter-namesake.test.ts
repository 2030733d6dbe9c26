import { expect, test, vi } from 'vitest';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { aTestBlock } from './a-test-block.ts';
import { openWindow } from './a-window.ts';
import { handHeld } from './hand-held-meter.ts';
import { saveLive, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// The address that a device may make up at each start: a static random address (Core Specification, Vol 6 Part B 1.3.2.1).

withYardOfTwo();

const otherId = 'c0ffee00beef';
const thirdId = 'c0ffee00f00d';

async function connectTo(deviceId: string) {
  await yard.command('meter.scan', {});
  yard.meter.emit('found', { deviceId, name: 'Hand-held', rssiDbm: -60, serviceUuids: [] });
  const connect = vi.spyOn(yard.meter, 'connect');
  const state = await yard.command('meter.connect', { deviceId });
  return { ...state, asked: connect.mock.lastCall };
}

/** The meter of the yard, met under its first address. */
async function metBefore(): Promise<number> {
  const { meterId } = await connectTo('hand');
  await yard.command('meter.disconnect', {});
  return meterId!;
}

const meters = () => yard.query('meters.list', {});
const names = async () => (await meters()).map(({ name }) => name);
const state = () => yard.query('meter.state', {});
const readings = async (roundId: number) =>
  (await yard.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];

async function inRound(): Promise<number> {
  await yard.command('settings.edit', { saveWhenSettled: true });
  return (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
}

test('whether a meter of the same name and values under another address is the same is asked, in every window', async () => {
  const meterId = await metBefore();
  const second = openWindow(yard.app, 'window-2');
  const { asked, toConfirm } = await connectTo(otherId);
  expect(asked).toEqual([otherId, handHeld]);
  const question = { what: 'meter', ownName: null, sameAs: [{ meterId, meterName: 'Hand-held' }] };
  expect(toConfirm).toEqual(question);
  expect((await second.query('meter.state', {})).toConfirm).toEqual(question);
  expect(await names()).toEqual(['Hand-held']);

  await second.command('meters.recognize', { meterId, deviceId: otherId });
  await expect.poll(async () => (await state()).toConfirm).toBeNull();
  expect(yard.heard('meter.state').at(-1)?.toConfirm).toBeNull();
  await expect(yard.command('meters.recognize', { meterId, deviceId: otherId })).rejects.toThrow(
    'was answered already',
  );
  expect(await yard.refusal('meter.isAnother', { deviceId: otherId })).toContain('was answered already');
  second.close();
});

test('until that is answered its value is shown, nothing of it is saved, and readings can be typed', async () => {
  const meterId = await metBefore();
  const roundId = await inRound();
  await connectTo(otherId);
  yard.meter.lift();
  yard.meter.show(13, 4);
  await expect.poll(() => yard.heard('meter.live').at(-1)).toMatchObject({ raw: 13, phase: 'settled' });
  await expect(saveLive(roundId)).rejects.toThrow('Answer what is asked about it');
  expect(await readings(roundId)).toEqual([]);
  await type(roundId, 12.1);
  expect(await readings(roundId)).toMatchObject([{ raw: 12.1, how: 'typed' }]);

  await yard.command('meters.recognize', { meterId, deviceId: otherId });
  yard.meter.lift();
  yard.meter.show(14, 4);
  await expect
    .poll(() => readings(roundId))
    .toMatchObject([{ how: 'typed' }, { raw: 14, how: 'settled', meterId }]);
});

test('the same meter goes on under its new address: its profile, its block, and its name', async () => {
  const meterId = await metBefore();
  await yard.command('meters.edit', {
    id: meterId,
    basedOn: 1,
    changed: { profile: { ...unknownProfile, sdPct: 0.7 } },
  });
  await yard.command('testBlocks.add', aTestBlock(meterId));
  await connectTo(otherId);
  const { act } = await yard.command('meters.recognize', { meterId, deviceId: otherId });
  expect((await state()).meterId).toBe(meterId);
  expect(await meters()).toMatchObject([{ id: meterId, name: 'Hand-held', profile: { sdPct: 0.7 } }]);
  expect(await yard.query('meterChecks.list', {})).toMatchObject([{ block: { meterId } }]);

  const { acts } = await yard.query('acts.list', { before: null, limit: 1, boardId: null });
  expect(acts).toMatchObject([
    { id: act, line: { code: 'act.meter.recognized', facts: { recordName: 'Hand-held' } } },
  ]);
  await yard.command('meter.disconnect', {});
  expect((await connectTo(otherId)).toConfirm).toBeNull();
});

test('undone while it is connected, it is asked again; redone, it is not', async () => {
  const meterId = await metBefore();
  await connectTo(otherId);
  const { act } = await yard.command('meters.recognize', { meterId, deviceId: otherId });
  await yard.command('acts.undo', { act });
  expect((await state()).toConfirm).toMatchObject({ what: 'meter', sameAs: [{ meterId }] });
  yard.meter.show(13, 4);
  await yard.command('acts.redo', { act });
  expect(await state()).toMatchObject({ toConfirm: null, meterId });
});

test('another meter is one of its own, and is not asked about again', async () => {
  const meterId = await metBefore();
  await connectTo(otherId);
  const { toConfirm, meterId: own } = await yard.command('meter.isAnother', { deviceId: otherId });
  expect(toConfirm).toBeNull();
  expect(own).not.toBe(meterId);
  expect(await names()).toEqual(['Hand-held', 'Hand-held beef']);
  await yard.command('meter.disconnect', {});
  expect((await connectTo(otherId)).toConfirm).toBeNull();
  expect(await names()).toEqual(['Hand-held', 'Hand-held beef']);
});

test('of several of its name, each is offered', async () => {
  const meterId = await metBefore();
  await connectTo(otherId);
  const { meterId: other } = await yard.command('meter.isAnother', { deviceId: otherId });
  await yard.command('meter.disconnect', {});
  const { asked, toConfirm } = await connectTo(thirdId);
  expect(asked).toEqual([thirdId, handHeld]);
  expect(toConfirm).toEqual({
    what: 'meter',
    ownName: null,
    sameAs: [
      { meterId, meterName: 'Hand-held' },
      { meterId: other, meterName: 'Hand-held beef' },
    ],
  });
  await yard.command('meters.recognize', { meterId: other!, deviceId: thirdId });
  expect(await names()).toEqual(['Hand-held', 'Hand-held f00d']);
});

test('one that was removed while it was asked about is owned again where it is the same', async () => {
  await metBefore();
  await connectTo(otherId);
  const { meterId: other } = await yard.command('meter.isAnother', { deviceId: otherId });
  await yard.command('meter.disconnect', {});
  await connectTo(thirdId);
  await yard.command('meters.close', { meterId: other! });
  await yard.command('meters.recognize', { meterId: other!, deviceId: thirdId });
  expect(await names()).toEqual(['Hand-held', 'Hand-held f00d']);
});

test('a meter that is met at an address which another had before is a meter of its own', async () => {
  const meterId = await metBefore();
  await connectTo(otherId);
  const { act } = await yard.command('meters.recognize', { meterId, deviceId: otherId });
  await yard.command('meter.disconnect', {});
  await connectTo('hand');
  await yard.command('meter.isAnother', { deviceId: 'hand' });
  expect(await names()).toEqual(['Hand-held', 'Hand-held hand']);
  // The address that undoing it would give back has a meter.
  await expect(yard.command('acts.undo', { act })).rejects.toThrow('Hand-held');
  expect((await state()).toConfirm).toBeNull();
});

test('a meter of the same name that is read otherwise is another, without a question', async () => {
  await metBefore();
  const describeIt = yard.meter.describe.bind(yard.meter);
  vi.spyOn(yard.meter, 'describe').mockImplementation((described) =>
    describeIt({ ...described, value: { ...described.value, exponent: -1 } }),
  );
  expect((await connectTo(otherId)).toConfirm).toBeNull();
  expect(await names()).toEqual(['Hand-held', 'Hand-held beef']);
});

test('while a meter does not answer, only what is heard then is in reach', async () => {
  await connectTo('hand');
  const heard = { deviceId: otherId, name: 'Hand-held', rssiDbm: -60, serviceUuids: [] };
  yard.meter.emit('found', { ...heard, deviceId: thirdId });
  const seen: string[][] = [];
  yard.meter.once('state', () => yard.meter.emit('found', heard));
  yard.meter.on('found', async () => seen.push((await state()).devices.map(({ deviceId }) => deviceId)));
  yard.meter.leaveReach(5);
  await expect.poll(() => seen).toEqual([[otherId]]);
});

test('a list says which meters were used before', async () => {
  await metBefore();
  await yard.command('meter.scan', {});
  yard.meter.emit('found', { deviceId: otherId, name: 'Hand-held', rssiDbm: -60, serviceUuids: [] });
  const { devices } = await state();
  expect(devices.map(({ deviceId, isKnown }) => [deviceId, isKnown])).toEqual([
    ['hand', true],
    [otherId, false],
  ]);
});
