import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { BluetoothLink } from '../../electron/meter/bluetooth-link.ts';
import { BluetoothSensorRadio, type HeardSensor } from '../../electron/meter/sensor-radio.ts';
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

  // The emulated controllers carry no data over a second link of one adapter: to the meter, that is one that fails.
  test('that does not answer over a connection beside a live meter is left, and the meter goes on', async () => {
    hygrometer = await radio.startMeter({ name: 'Loft', air, batteryPct: null });
    const { deviceId } = await heardOf('Loft');
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
      expect(await heard).toMatchObject({ name: 'Loft', tempC: null, rh: null });
      link.overhear(false);
      const before = received.length;
      expect(await link.visit(deviceId)).toBeNull();
      expect(hygrometer.links).toBe(1);
      expect(received.length).toBeGreaterThan(before + 10);
      // Pins go in.
      const given = link.visit(deviceId);
      link.endVisit();
      expect(await given).toBeNull();
      const after = received.length;
      await untilTrue(link, 'more values', () => received.length > after + 10);
      expect([...states]).toEqual([]);
    } finally {
      await link.close();
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
