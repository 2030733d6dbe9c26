import { afterEach, describe, expect, test, vi } from 'vitest';
import { createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { SimulatedLink } from '../../../electron/meter/simulated-link.ts';
import { SimulatedSensors } from '../../../electron/meter/simulated-sensors.ts';
import { message } from '../../../shared-core/words/message.ts';
import { openWindow } from './a-window.ts';
import { folderWithNewYard } from './new-yard.ts';
import { MeterBesideSensors, TestSensors } from './sensors-in-reach.ts';

let close: (() => Promise<unknown>) | undefined;
afterEach(async () => {
  await close?.();
  close = undefined;
});

async function yardWithSensors() {
  const radio = new TestSensors();
  const meter = new MeterBesideSensors();
  let now = new Date('2026-06-01T08:20:00.000Z');
  const app = createApp({
    dataDir: folderWithNewYard(),
    links: {
      none: () => new NoLink(),
      bluetooth: () => meter,
      simulated: () => new SimulatedLink({ seed: 1 }),
      sensors: { real: () => radio, simulated: () => new SimulatedSensors() },
    },
    threads: threadSources,
    clock: () => now,
    forecastAfterMs: 600_000,
  });
  close = () => app.close();
  const window = openWindow(app);
  const place = await window.command('places.add', {
    name: 'Shop',
    kind: 'shop',
    air: Array.from({ length: 12 }, () => ({ tempC: 18, rh: 0.5 })),
  });
  const add = (kind: 'air' | 'probe' = 'air') =>
    window.command('sensors.add', {
      name: 'Wall',
      deviceId: 's1',
      kind,
      placeId: kind === 'air' ? place.id : null,
    });
  const days = async () => (await window.query('air.ofPlace', { placeId: place.id })).days;
  const setClock = (to: string): void => {
    now = new Date(to);
  };
  return { ...window, radio, meter, place, add, days, setClock };
}

test('a sensor that was just added is read at once, and logged once in its hour', async () => {
  const { add, days, radio, command } = await yardWithSensors();
  const { id } = await add();
  await vi.waitFor(async () => expect(await days()).toMatchObject([{ values: 1, tempC: 18, rh: 0.6 }]));
  await command('sensors.read', { id });
  expect(radio.reads).toBe(2);
  expect(await days()).toMatchObject([{ values: 1 }]);
});

test('one that a person has read is logged, though it did not answer just before', async () => {
  const { add, days, radio, command } = await yardWithSensors();
  radio.says = null;
  const { id } = await add();
  await expect(command('sensors.read', { id })).rejects.toThrow('Wall did not answer');
  radio.says = { tempC: 18, rh: 0.6 };
  await command('sensors.read', { id });
  expect(await days()).toMatchObject([{ values: 1, tempC: 18, rh: 0.6 }]);
});

test('its log goes on after the clock was a year ahead', async () => {
  const { add, days, command, query, place, setClock } = await yardWithSensors();
  const readDue = () => command('sensors.search', { isOn: false });
  await add();
  await vi.waitFor(async () => expect(await days()).toMatchObject([{ values: 1 }]));
  setClock('2027-06-01T08:20:00.000Z');
  await readDue();
  await vi.waitFor(async () => expect(await days()).toHaveLength(2));
  setClock('2026-06-01T10:20:00.000Z');
  await readDue();
  await vi.waitFor(async () =>
    expect(await days()).toMatchObject([
      { values: 2, doubt: null },
      { values: 1, doubt: 'later' },
    ]),
  );
  const { last, usedDays } = await query('air.ofPlace', { placeId: place.id });
  expect({ last, usedDays }).toMatchObject({ last: { at: '2026-06-01T10:20:00.000Z' }, usedDays: 1 });
});

test('days of its log are excluded and included again, and what is typed of such a day counts', async () => {
  const { add, days, query, place, command, setClock, radio } = await yardWithSensors();
  const { id: placeId } = place;
  const doubts = async () => (await days()).map(({ doubt }) => doubt);
  await add();
  await vi.waitFor(async () => expect(await days()).toHaveLength(1));
  for (const day of ['02', '03']) {
    setClock(`2026-06-${day}T08:20:00.000Z`);
    radio.says = { tempC: 18 + Number(day) / 10, rh: 0.6 };
    await command('sensors.search', { isOn: false });
    await vi.waitFor(async () => expect(await days()).toHaveLength(Number(day)));
  }
  const period = { placeId, fromOn: '2026-06-02', toOn: '2026-06-09' };
  expect(await command('air.exclude', period)).toMatchObject({ days: 2 });
  expect(await doubts()).toEqual([null, 'excluded', 'excluded']);
  await expect(command('air.exclude', period)).rejects.toThrow('No sensor values on these days');
  expect((await query('air.ofPlace', { placeId })).usedDays).toBe(1);
  expect(await command('air.include', { ...period, fromOn: '2026-06-03' })).toMatchObject({ days: 1 });
  expect(await doubts()).toEqual([null, 'excluded', null]);
  const typed = { placeId, measuredOn: '2026-06-02', tempC: 19, rh: 0.55 };
  await command('air.type', typed);
  expect((await days())[1]).toMatchObject({ doubt: null, rh: 0.55, values: 2 });
  await command('air.type', { ...typed, measuredOn: '2026-06-01' });
  expect((await days())[0]).toMatchObject({ doubt: null, rh: 0.55, values: 2 });
  await expect(command('air.include', { ...period, toOn: '2026-06-01' })).rejects.toThrow(
    'No sensor values on these days',
  );
});

test('one that was added in a search is read once that ends', async () => {
  const { add, days, command } = await yardWithSensors();
  await command('sensors.search', { isOn: true });
  await add();
  expect(await days()).toEqual([]);
  await command('sensors.search', { isOn: false });
  await vi.waitFor(async () => expect(await days()).toHaveLength(1));
});

test('its log counts at the place where it was moved to, from that day on', async () => {
  const { add, days, command } = await yardWithSensors();
  const { id } = await add();
  await vi.waitFor(async () => expect(await days()).toHaveLength(1));
  await command('sensors.move', { id, placeId: null, sinceOn: '2026-06-01' });
  expect(await days()).toEqual([]);
});

test('adding it is undone and redone, with what it logged meanwhile', async () => {
  const { add, days, query, command } = await yardWithSensors();
  await add();
  await vi.waitFor(async () => expect(await days()).toHaveLength(1));
  const [newest] = (await query('acts.list', { before: null, limit: 1, boardId: null })).acts;
  await command('acts.undo', { act: newest!.id, work: null });
  expect(await query('sensors.list', {})).toEqual([]);
  expect(await days()).toEqual([]);
  await command('acts.redo', { act: newest!.id, work: null });
  expect(await query('sensors.list', {})).toMatchObject([{ name: 'Wall' }]);
  expect(await days()).toHaveLength(1);
});

test('one that is not there, or was removed, is neither renamed, moved nor removed', async () => {
  const { add, command } = await yardWithSensors();
  const { id, version } = await add('probe');
  await command('sensors.remove', { id, basedOn: version });
  for (const each of [id, 40]) {
    const edit = { id: each, basedOn: 1 };
    for (const refused of [
      command('sensors.edit', { ...edit, changed: { name: 'Loft' } }),
      command('sensors.move', { id: each, placeId: null, sinceOn: '2026-06-01' }),
      command('sensors.remove', edit),
    ])
      await expect(refused).rejects.toThrow('That record is not in this yard');
  }
});

test('a probe is read when a person asks, and never logged', async () => {
  const { add, command, days, radio } = await yardWithSensors();
  const { id } = await add('probe');
  radio.says = { tempC: 12, rh: null };
  expect(await command('sensors.read', { id })).toMatchObject({ tempC: 12, rh: null });
  radio.says = null;
  await expect(command('sensors.read', { id })).rejects.toThrow('Wall did not answer');
  expect(await days()).toEqual([]);
});

test('a search says why nothing can be heard', async () => {
  const { command, query, radio } = await yardWithSensors();
  await command('sensors.search', { isOn: true });
  expect(await query('sensors.near', {})).toMatchObject({ problem: null });
  radio.emit('adapter', { usable: false, message: message('meter.adapter.stopped'), way: null });
  expect(await query('sensors.near', {})).toMatchObject({ problem: { code: 'meter.adapter.stopped' } });
});

test('a meter uses Bluetooth first', async () => {
  const { add, command, query, radio, meter } = await yardWithSensors();
  const { id } = await add('probe');
  await command('sensors.search', { isOn: true });
  expect(await query('sensors.near', {})).toMatchObject({ isSearching: true, sensors: [{ name: 'Wall' }] });
  await command('meter.scan', {});
  expect(radio.releases).toBeGreaterThan(0);
  expect(await query('sensors.near', {})).toMatchObject({ isSearching: false, busyWith: 'meter-search' });
  await expect(command('sensors.read', { id })).rejects.toThrow(
    'Pintally is looking for meters, so Wall cannot be read. On the Meter page, press Stop,',
  );
  meter.beConnecting();
  expect(await query('sensors.near', {})).toMatchObject({ busyWith: 'meter' });
  await expect(command('sensors.read', { id })).rejects.toThrow(
    'Bluetooth is in use for a meter, so Wall cannot be read. On the Meter page, press Disconnect',
  );
});

test('a search for meters that failed leaves Bluetooth to the sensors', async () => {
  const { add, command, query, meter } = await yardWithSensors();
  const { id } = await add('probe');
  await command('meter.scan', {});
  meter.failToSearch();
  expect(await query('sensors.near', {})).toMatchObject({ busyWith: null });
  expect(await command('sensors.search', { isOn: true })).toMatchObject({ isSearching: true });
  await command('sensors.search', { isOn: false });
  expect(await command('sensors.read', { id })).toMatchObject({ tempC: 18 });
});

const wall = { name: 'Wall', rssiDbm: -60 };
describe('beside a meter', () => {
  async function withMeter() {
    const yard = await yardWithSensors();
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    return yard;
  }

  test('a sensor that advertises is logged, once it said both values', async () => {
    const { add, days, meter, radio } = await withMeter();
    await add();
    await vi.waitFor(() => expect(meter.overhears).toBe(true));
    meter.emit('overheard', { ...wall, deviceId: 's1', tempC: 18, rh: null });
    meter.emit('overheard', { ...wall, deviceId: 's2', tempC: 18, rh: 0.9 });
    expect(await days()).toEqual([]);
    meter.emit('overheard', { ...wall, deviceId: 's1', tempC: null, rh: 0.6 });
    expect(await days()).toMatchObject([{ values: 1, tempC: 18, rh: 0.6 }]);
    expect(meter.overhears).toBe(false);
    meter.emit('overheard', { ...wall, deviceId: 's1', tempC: 19, rh: 0.6 });
    expect(await days()).toMatchObject([{ values: 1 }]);
    expect(radio.reads).toBe(0);
  });

  test('one that says its values over a connection is visited, after it was heard', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'], shouldAdvanceTime: true });
    try {
      const { add, days, meter, radio } = await withMeter();
      await add();
      await vi.waitFor(() => expect(meter.overhears).toBe(true));
      meter.emit('overheard', { ...wall, deviceId: 's1', tempC: null, rh: null });
      vi.advanceTimersByTime(4000);
      await vi.waitFor(async () => expect(await days()).toMatchObject([{ tempC: 17, rh: 0.7 }]));
      expect({ visited: meter.visited, overhears: meter.overhears }).toEqual({
        visited: ['s1'],
        overhears: false,
      });
      expect(radio.reads).toBe(0);
    } finally {
      vi.useRealTimers();
    }
  });

  test('one is read and looked for when a person asks, but not while pins are in', async () => {
    const { add, command, query, meter } = await withMeter();
    await command('sensors.search', { isOn: true });
    meter.emit('overheard', { ...wall, deviceId: 's1', tempC: null, rh: null });
    expect(await query('sensors.near', {})).toMatchObject({
      isSearching: true,
      busyWith: null,
      sensors: [{ name: 'Wall' }],
    });
    await command('sensors.search', { isOn: false });
    const { id } = await add('probe');
    meter.says = { tempC: 12, rh: null };
    const reading = command('sensors.read', { id });
    await vi.waitFor(() => expect(meter.overhears).toBe(true));
    meter.emit('overheard', { ...wall, deviceId: 's1', tempC: null, rh: null });
    expect(await reading).toMatchObject({ tempC: 12, rh: null });
    meter.says = null;
    const silent = command('sensors.read', { id });
    await vi.waitFor(() => expect(meter.overhears).toBe(true));
    meter.emit('overheard', { ...wall, deviceId: 's1', tempC: null, rh: null });
    await expect(silent).rejects.toThrow('Wall did not answer while the meter is connected');
    meter.isEnded = false;
    meter.show(12, 0.1);
    expect(meter.isEnded).toBe(true);
    await expect(command('sensors.read', { id })).rejects.toThrow('Pins are in');
  });

  test('a value that settles, and a link in trouble, end listening at once', async () => {
    const { add, command, meter } = await withMeter();
    const { id, version } = await add();
    await vi.waitFor(() => expect(meter.overhears).toBe(true));
    meter.show(12, 0.1);
    expect(meter.overhears).toBe(false);
    meter.lift();
    await command('sensors.remove', { id, basedOn: version });
    await command('sensors.add', { name: 'Wall', deviceId: 's2', kind: 'air', placeId: 1 });
    await vi.waitFor(() => expect(meter.overhears).toBe(true));
    meter.leaveReach(1);
    expect(meter.overhears).toBe(false);
  });
});
