import { beforeEach, expect, test } from 'vitest';
import { meterFileOf } from '../../../shared-core/contract/meter-file.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { confirmed } from '../../../shared-core/gatt/recognize-meter.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { message } from '../../../shared-core/words/message.ts';
import { handHeld } from './hand-held-meter.ts';
import { aimedSpot, saveLive } from './in-round.ts';
import { doing, lines, redo, undo } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const characteristics = ['2a6f', '2a6e'].map((characteristicUuid) => ({
  serviceUuid: '181a',
  characteristicUuid,
  canNotify: true,
  canRead: false,
  canWrite: false,
  presentationFormat: null,
  userDescription: 'Moisture',
  validRange: null,
}));
const setUp = { ...handHeld, origin: 'mapped-by-hand' } as const;
const tenths: MeterDescription = { ...setUp, value: { ...setUp.value, exponent: -1 } };

/** What the device calls itself. */
let ownName = 'Hand-held';

beforeEach(() => {
  ownName = 'Hand-held';
  const { meter } = yard;
  const show = (description: MeterDescription | null): void => {
    meter.described = {
      description: description && confirmed(characteristics, description),
      characteristics,
      remarks: [],
    };
    meter.emit('described', meter.described);
  };
  meter.describe = show;
  meter.recall = show;
  meter.undescribe = () => show(null);
  // It does not say how it is read.
  meter.connect = (deviceId: string, known: MeterDescription | null = null) => {
    meter.state = {
      phase: 'live',
      message: message('meter.state.live', { meterName: ownName }),
      deviceId,
      deviceName: ownName,
    };
    meter.described = null;
    meter.emit('state', meter.state);
    show(known);
  };
});

const names = async () => (await yard.query('meters.list', {})).map(({ name }) => name);
const state = () => yard.query('meter.state', {});
const readNow = async () => (await state()).description?.value.exponent ?? null;
const connect = (deviceId = 'hand') => yard.command('meter.connect', { deviceId });
const disconnect = () => yard.command('meter.disconnect', {});
async function reconnect(deviceId = 'hand') {
  await disconnect();
  await yard.command('meter.scan', {});
  yard.meter.emit('found', { deviceId, name: ownName, rssiDbm: -60, serviceUuids: [] });
  return connect(deviceId);
}
async function setUpBy(description: MeterDescription) {
  await yard.command('meter.scan', {});
  await connect();
  return doing('meter.describe', description);
}

test('setting up an unknown meter is in History; undone, the meter is unknown again', async () => {
  const { act } = await setUpBy(setUp);
  expect(await names()).toEqual(['Hand-held']);
  expect((await lines())[0]).toBe('Hand-held set up.');
  await undo(act);
  expect(await names()).toEqual([]);
  expect(await state()).toMatchObject({ description: null, meterId: null });
  expect((await reconnect()).description).toBeNull();
  await redo(act);
  expect(await readNow()).toBe(-2);
  expect(await names()).toEqual(['Hand-held']);
  expect((await reconnect()).description).toMatchObject({ value: setUp.value });
});

test('an unknown meter that was set up and undone is set up again', async () => {
  const { act } = await setUpBy(setUp);
  await undo(act);
  await doing('meter.describe', tenths);
  expect(await names()).toEqual(['Hand-held']);
  expect((await reconnect()).description?.value.exponent).toBe(-1);
});

test('set up otherwise, the meter is read as before once that is undone, also where it left meanwhile', async () => {
  await setUpBy(setUp);
  const { act } = await doing('meter.describe', tenths);
  expect(await readNow()).toBe(-1);
  await undo(act);
  expect(await readNow()).toBe(-2);
  await redo(act);
  await disconnect();
  await undo(act);
  await yard.command('meter.scan', {});
  await connect();
  expect(await readNow()).toBe(-2);
});

test('watched again and kept, nothing is lost of how it was read', async () => {
  const { output } = await setUpBy(setUp);
  await yard.command('meter.watch', {});
  expect(await readNow()).toBeNull();
  await doing('meter.describe', output.description!);
  expect((await lines()).filter((line) => line === 'Hand-held set up.')).toHaveLength(1);
  expect((await reconnect()).description).toMatchObject({ value: setUp.value });
});

test('undoing a file of a meter that is away puts back how it was read, also after it was connected by the file', async () => {
  const { output } = await setUpBy(setUp);
  const meterId = output.meterId!;
  await disconnect();
  // Another source: what the meter says of that is known only once it is connected.
  const source = { kind: 'sent', serviceUuid: '181a', characteristicUuid: '2a6e' } as const;
  const file = meterFileOf({ ...tenths, source }, null);
  const { act } = await doing('meters.useFile', { meterId, file });
  expect((await reconnect()).description?.value.exponent).toBe(-1);
  await disconnect();
  await undo(act);
  expect((await reconnect()).description?.value.exponent).toBe(-2);
  await redo(act);
  expect((await reconnect()).description?.value.exponent).toBe(-1);
});

test('"Another meter" is an act: undone, it is asked again', async () => {
  const { output } = await setUpBy(setUp);
  await reconnect('c0ffee00beef');
  const { act, output: after } = await doing('meter.isAnother', { deviceId: 'c0ffee00beef' });
  expect((await lines())[0]).toBe('Meter added: Hand-held beef.');
  expect(await names()).toEqual(['Hand-held', 'Hand-held beef']);
  expect(after).toMatchObject({ description: null, toConfirm: null });
  await undo(act);
  await redo(act);
  expect(await state()).toMatchObject({ description: null, toConfirm: null, meterId: after.meterId });
  await undo(act);
  expect(await names()).toEqual(['Hand-held']);
  const asked = {
    what: 'meter',
    ownName: null,
    sameAs: [{ meterId: output.meterId, meterName: 'Hand-held' }],
  };
  expect((await state()).toConfirm).toEqual(asked);
  // The other answer now.
  await yard.command('meters.recognize', { meterId: output.meterId!, deviceId: 'c0ffee00beef' });
  expect((await state()).toConfirm).toBeNull();
  expect(await names()).toEqual(['Hand-held']);
  expect((await lines())[0]).toBe('Hand-held recognized under a new address.');
});

test('a device with a known address and another name is asked about, and nothing is saved until then', async () => {
  const { output } = await setUpBy(setUp);
  await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  ownName = 'Yard meter';
  const { toConfirm, meterId } = await reconnect();
  expect(toConfirm).toEqual({
    what: 'meter',
    ownName: 'Yard meter',
    sameAs: [{ meterId: output.meterId, meterName: 'Hand-held' }],
  });
  expect(meterId).toBe(output.meterId);
  expect(await names()).toEqual(['Hand-held']);
  const [round] = await yard.query('stacks.list', {});
  yard.meter.lift();
  yard.meter.show(13, 4);
  await expect(saveLive(round!.openRoundId!)).rejects.toThrow('Answer what is asked about it');
});

test('the same meter goes on under its new name, which undoing takes back', async () => {
  const { output } = await setUpBy(setUp);
  ownName = 'Yard meter';
  await reconnect();
  const { act } = await doing('meters.recognize', { meterId: output.meterId!, deviceId: 'hand' });
  expect(await names()).toEqual(['Yard meter']);
  expect((await lines())[0]).toBe('Yard meter recognized under a new name.');
  expect((await reconnect()).toConfirm).toBeNull();
  await undo(act);
  expect(await names()).toEqual(['Hand-held']);
  expect((await state()).toConfirm).toMatchObject({ what: 'meter' });
});

test('another meter at that address has its own row, and the first keeps its readings and how it is read', async () => {
  const { output } = await setUpBy(setUp);
  ownName = 'Yard meter';
  await reconnect();
  const { act, output: after } = await doing('meter.isAnother', { deviceId: 'hand' });
  expect(await names()).toEqual(['Hand-held', 'Yard meter']);
  expect(after.meterId).not.toBe(output.meterId);
  await undo(act);
  expect(await state()).toMatchObject({ toConfirm: { what: 'meter' }, description: { value: setUp.value } });
  await redo(act);
  await yard.command('meter.describe', tenths);
  const { description } = await yard.query('meters.file', { meterId: output.meterId! });
  expect(description?.value.exponent).toBe(-2);
  expect((await reconnect()).toConfirm).toBeNull();
  await expect(undo(act)).rejects.toThrow();
});

test('another meter is not read as the one that it was taken for, also where its values are sent alike', async () => {
  const { output } = await setUpBy(setUp);
  await reconnect('c0ffee00beef');
  const { output: after } = await doing('meter.isAnother', { deviceId: 'c0ffee00beef' });
  expect(after.description).toBeNull();
  expect((await reconnect('c0ffee00beef')).description).toBeNull();
  expect((await state()).toConfirm).toBeNull();
  await yard.command('meter.describe', tenths);
  expect((await reconnect('c0ffee00beef')).description?.value.exponent).toBe(-1);

  ownName = 'Yard meter';
  await reconnect();
  expect((await doing('meter.isAnother', { deviceId: 'hand' })).output.description).toBeNull();
  expect((await reconnect()).description).toBeNull();
  const { description } = await yard.query('meters.file', { meterId: output.meterId! });
  expect(description?.value.exponent).toBe(-2);
});

test('a device that takes its old name back can be said to be the meter of that name', async () => {
  const { output } = await setUpBy(setUp);
  const meterId = output.meterId!;
  ownName = 'Brand new';
  await reconnect();
  const { output: brandNew } = await doing('meter.isAnother', { deviceId: 'hand' });
  await yard.command('meter.describe', tenths);
  ownName = 'Hand-held';
  const asked = {
    what: 'meter',
    ownName: 'Hand-held',
    sameAs: [
      { meterId: brandNew.meterId, meterName: 'Brand new' },
      { meterId, meterName: 'Hand-held' },
    ],
  };
  expect((await reconnect()).toConfirm).toEqual(asked);
  const { act } = await doing('meters.recognize', { meterId, deviceId: 'hand' });
  expect(await state()).toMatchObject({ toConfirm: null, meterId });
  expect(await readNow()).toBe(-2);
  expect(await names()).toEqual(['Hand-held', 'Brand new']);
  await undo(act);
  expect((await state()).toConfirm).toEqual(asked);
  await redo(act);
  expect(await reconnect()).toMatchObject({ toConfirm: null, meterId, description: { value: setUp.value } });
});

test('a meter that is no longer owned leaves the lists, its readings keep it, and connected it comes back', async () => {
  const { output } = await setUpBy(setUp);
  const meterId = output.meterId!;
  await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  yard.meter.lift();
  // Saved once settled.
  yard.meter.show(13, 4);
  await expect(yard.command('meters.close', { meterId })).rejects.toThrow('Hand-held is in use');
  await disconnect();
  await yard.command('meters.close', { meterId });
  expect((await lines())[0]).toBe('Hand-held removed.');
  expect(await names()).toEqual([]);
  expect(await yard.query('meters.closed', {})).toMatchObject([{ id: meterId, name: 'Hand-held' }]);
  const [reading] = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
  expect(reading).toMatchObject({ raw: 13, meterId });
  expect(await reconnect()).toMatchObject({ meterId, description: { value: setUp.value } });
  expect(await names()).toEqual(['Hand-held']);
});

test('a removed meter is not set up, named, or typed from in a window that still shows it', async () => {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
  await yard.command('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw: 12.4, meterId });
  await yard.command('meters.close', { meterId });
  const removed = 'Old one was removed. Nothing was changed.';
  const file = meterFileOf(null, unknownProfile);
  expect(await yard.refusal('meters.useFile', { meterId, file })).toContain(removed);
  expect(await yard.refusal('meters.typeFrom', { meterId })).toContain(removed);
  expect(await yard.refusal('meters.close', { meterId })).toContain(removed);
  const edit = { id: meterId, basedOn: 2, changed: { name: 'Other' } };
  expect(await yard.refusal('meters.edit', edit)).toContain(removed);
  const typed = { ...(await aimedSpot(roundId)), raw: 13.1 };
  expect(await yard.refusal('rounds.saveTyped', { ...typed, meterId })).toContain('Choose another meter');
  await yard.command('rounds.saveTyped', { ...typed, meterId: null });
  const { readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
  expect(readings.map(({ raw, meterId: of }) => [raw, of])).toEqual([
    [12.4, meterId],
    [13.1, null],
  ]);
});

test('a name that an advert cut short is the same name', async () => {
  await setUpBy(setUp);
  ownName = 'Hand-h';
  expect((await reconnect()).toConfirm).toBeNull();
});
