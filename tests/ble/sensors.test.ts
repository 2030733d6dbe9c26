import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { BluetoothLink } from '../../electron/meter/bluetooth-link.ts';
import type { MeterNotification } from '../../electron/meter/meter-link.ts';
import { BluetoothSensorRadio, type HeardSensor } from '../../electron/meter/sensor-radio.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { folderWithNewYard } from '../unit/app/new-yard.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { type EmulatedMeter, type EmulatedRadio, radioScript, startMeterServer } from './emulated-radio.ts';
import { describing, find, record, shortTiming, untilPhase, untilTrue } from './link-watch.ts';
import { advertServiceUuid } from './meter-server.ts';

// A hygrometer beside a meter, over the real radio process. Formats: `tests/unit/gatt/environment.test.ts`.
let radio: EmulatedRadio;
let meter: EmulatedMeter;
beforeAll(async () => {
  ({ radio, meter } = await startMeterServer());
});
afterAll(() => radio.stop());

let sensors: BluetoothSensorRadio;
let hygrometer: EmulatedMeter;
afterEach(async () => {
  await sensors.release();
  await hygrometer.quit();
});

async function heardOf(name: string): Promise<HeardSensor> {
  sensors = new BluetoothSensorRadio({ radioScript, env: radio.env, timing: shortTiming });
  const heard = new Promise<HeardSensor>((resolve) => {
    sensors.on('heard', (sensor) => {
      expect(sensor.name).not.toBe(meter.name);
      if (sensor.name === name) resolve(sensor);
    });
  });
  sensors.scan(true);
  const found = await heard;
  sensors.scan(false);
  return found;
}

describe('a hygrometer', () => {
  const air = { tempC: -3.5, rh: 0.815 };

  test('is found among others, read over a connection, and left', async () => {
    hygrometer = await radio.startMeter({ name: 'Wall', air, batteryPct: null });
    const { deviceId } = await heardOf('Wall');
    expect(await sensors.read(deviceId)).toEqual(air);
    // Again, as in the next hour.
    expect(await sensors.read(deviceId)).toEqual(air);
  });

  test('that is looked for while another is read is found once that is left', async () => {
    hygrometer = await radio.startMeter({ name: 'Wall', air, batteryPct: null });
    const { deviceId } = await heardOf('Wall');
    const second = await radio.startMeter({ name: 'Ridge', air, batteryPct: null });
    try {
      const reading = sensors.read(deviceId);
      const found = new Promise<void>((resolve) => {
        reading.then(() => sensors.on('heard', ({ name }) => name === 'Ridge' && resolve()));
      });
      sensors.scan(true);
      expect(await reading).toEqual(air);
      await found;
    } finally {
      await second.quit();
    }
  });

  test('that only advertises is heard without a connection', async () => {
    hygrometer = await radio.startMeter({
      name: 'Beam',
      air,
      gives: 'service-data',
      library: 'ble-host',
      isConnectable: false,
      batteryPct: null,
    });
    const { deviceId } = await heardOf('Beam');
    expect(await sensors.read(deviceId)).toEqual(air);
    expect(hygrometer.links).toBe(0);
  });

  test('that advertises is heard beside a live meter, which goes on', async () => {
    hygrometer = await radio.startMeter({
      name: 'Post',
      air,
      gives: 'service-data',
      library: 'ble-host',
      isConnectable: false,
      batteryPct: null,
    });
    const { deviceId } = await heardOf('Post');
    await sensors.release();
    const link = new BluetoothLink({ radioScript, env: radio.env, timing: shortTiming });
    try {
      link.connect((await find(link, meter.name)).deviceId, null);
      await untilPhase(link, 'live');
      const states = new Set<string>();
      link.on('state', ({ phase }) => states.add(phase));
      const received = record(link);
      const heard = new Promise<unknown>((resolve) => {
        link.on('overheard', (sensor) => {
          if (sensor.deviceId === deviceId) resolve(sensor);
        });
      });
      link.overhear(true);
      expect(await heard).toMatchObject({ deviceId, ...air });
      link.overhear(false);
      const before = received.length;
      await untilTrue(link, 'more values', () => received.length > before + 10);
      expect([...states]).toEqual([]);
      expect(hygrometer.links).toBe(0);
    } finally {
      await link.close();
    }
  });

  test('that does not advertise values is read beside a meter that is only listened to, which is heard on', async () => {
    hygrometer = await radio.startMeter({ name: 'Loft', air, batteryPct: null });
    const { deviceId } = await heardOf('Loft');
    await sensors.release();
    const broadcaster = await radio.startMeter({
      name: 'Beacon',
      gives: 'service-data',
      library: 'ble-host',
      isConnectable: false,
      batteryPct: null,
    });
    const link = new BluetoothLink({ radioScript, env: radio.env, timing: shortTiming });
    try {
      link.listen((await find(link, broadcaster.name)).deviceId);
      await untilPhase(link, 'needs-description');
      link.describe(describing({ kind: 'service-data', serviceUuid: advertServiceUuid }));
      await untilPhase(link, 'live');
      const states = new Set<string>();
      link.on('state', ({ phase }) => states.add(phase));
      const received = record(link);
      const heard = new Promise<void>((resolve) => {
        link.on('overheard', (sensor) => sensor.deviceId === deviceId && resolve());
      });
      link.overhear(true);
      await heard;
      link.overhear(false);
      expect(await link.visit(deviceId)).toEqual(air);
      const before = received.length;
      await untilTrue(link, 'more values', () => received.length > before + 5);
      expect([...states]).toEqual([]);
      expect(hygrometer).toMatchObject({ links: 1, linked: false });
    } finally {
      await link.close();
      await broadcaster.quit();
    }
  });

  describe('that does not advertise values, beside a live meter', () => {
    let link: BluetoothLink;
    let deviceId: string;
    let received: MeterNotification[];
    let states: Set<string>;
    beforeEach(async () => {
      hygrometer = await radio.startMeter({ name: 'Loft', air, batteryPct: null });
      ({ deviceId } = await heardOf('Loft'));
      await sensors.release();
      link = new BluetoothLink({ radioScript, env: radio.env, timing: shortTiming });
      link.connect((await find(link, meter.name)).deviceId, null);
      await untilPhase(link, 'live');
      states = new Set();
      link.on('state', ({ phase }) => states.add(phase));
      received = record(link);
      await isHeard();
    });
    afterEach(async () => {
      await link.close();
      meter.tell({ type: 'rate', hz: 10 });
    });

    async function isHeard(): Promise<void> {
      const heard = new Promise<unknown>((resolve) => {
        link.on('overheard', (sensor) => {
          if (sensor.deviceId === deviceId) resolve(sensor);
        });
      });
      link.overhear(true);
      expect(await heard).toMatchObject({ name: 'Loft', tempC: null, rh: null });
      link.overhear(false);
    }

    /** The meter is heard through all of it, and the hygrometer was connected to so often and is free again. */
    async function isLeft(links: number): Promise<void> {
      await expect.poll(() => hygrometer, { timeout: 10_000 }).toMatchObject({ links, linked: false });
      const after = received.length;
      await untilTrue(link, 'more values', () => received.length > after + 10);
      expect([...states]).toEqual([]);
    }

    test('is read twice and left while 50 values a second come in, and none is lost', async () => {
      meter.tell({ type: 'rate', hz: 0 });
      const isStreamed = meter.until('streamed', 30_000);
      meter.tell({ type: 'stream', count: 500, hz: 50 });
      await untilTrue(link, 'the stream', () => received.at(-1)?.value === 0.2);
      expect(await link.visit(deviceId)).toEqual(air);
      await isHeard();
      expect(await link.visit(deviceId)).toEqual(air);
      // The visits fell into the stream.
      expect(received.at(-1)!.value).toBeLessThan(4.99);
      await isStreamed;
      await untilTrue(link, 'all 500', () => received.at(-1)?.value === 4.99);
      expect(received.slice(-500).map(({ value }) => value)).toEqual(
        Array.from({ length: 500 }, (_, i) => i / 100),
      );
      meter.tell({ type: 'rate', hz: 10 });
      await isLeft(2);
    });

    test('is left where it does not answer', async () => {
      hygrometer.freeze();
      const before = received.length;
      expect(await link.visit(deviceId)).toBeNull();
      expect(received.length).toBeGreaterThan(before + 10);
      hygrometer.wake();
      await isLeft(1);
    });

    test('is left as soon as pins go in', async () => {
      // Frozen, it cannot answer before the visit is ended.
      hygrometer.freeze();
      const given = link.visit(deviceId);
      const before = received.length;
      await untilTrue(link, 'a connection meanwhile', () => received.length > before + 15);
      link.endVisit();
      expect(await given).toBeNull();
      hygrometer.wake();
      await isLeft(1);
      // It was not left for its silence: the next visit brings its values.
      await isHeard();
      expect(await link.visit(deviceId)).toEqual(air);
      await isLeft(2);
    });
  });

  test('that does not advertise values is logged beside a live meter, and left', async () => {
    hygrometer = await radio.startMeter({ name: 'Loft', air, batteryPct: null });
    const { deviceId } = await heardOf('Loft');
    await sensors.release();
    const link = new BluetoothLink({ radioScript, env: radio.env, timing: shortTiming });
    const app = createApp({
      dataDir: folderWithNewYard(),
      links: { ...noMeter, bluetooth: () => link },
      threads: threadSources,
      forecastAfterMs: 3_600_000,
    });
    try {
      const window = openWindow(app);
      const place = await window.command('places.add', {
        name: 'Shop',
        kind: 'shop',
        air: Array.from({ length: 12 }, () => ({ tempC: 18, rh: 0.5 })),
      });
      const found = new Promise<string>((resolve) => {
        link.on('found', (each) => each.name === meter.name && resolve(each.deviceId));
      });
      await window.command('meter.scan', {});
      await window.command('meter.connect', { deviceId: await found });
      await untilPhase(link, 'live');
      await window.command('sensors.add', { name: 'Loft', deviceId, kind: 'air', placeId: place.id });
      const days = async () => (await window.query('air.ofPlace', { placeId: place.id })).days;
      await expect.poll(days, { timeout: 20_000 }).toMatchObject([{ values: 1, ...air }]);
      await expect.poll(() => hygrometer, { timeout: 10_000 }).toMatchObject({ links: 1, linked: false });
      expect(link.state.phase).toBe('live');
    } finally {
      await app.close();
    }
  });

  test('out of reach says nothing, and a release ends a visit', async () => {
    hygrometer = await radio.startMeter({ name: 'Far', air, batteryPct: null });
    const { deviceId } = await heardOf('Far');
    hygrometer.tell({ type: 'advertise', on: false });
    const reading = sensors.read(deviceId);
    await sensors.release();
    expect(await reading).toBeNull();
  });
});
