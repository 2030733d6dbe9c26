/**
 * The link over BlueZ's D-Bus interface, as Linux users without a special right have it: on a private bus, against the
 * BlueZ of python3-dbusmock (see `bluez-world.ts`).
 */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { BluetoothLink } from '../../electron/meter/bluetooth-link.ts';
import type { MeterDescription } from '../../shared-core/gatt/meter-description.ts';
import { plainDescription } from '../../shared-core/gatt/meter-description.ts';
import { BluezWorld, type MeterServices, meterServiceUuid, meterValueUuid } from './bluez-world.ts';
import { radioScript } from './emulated-radio.ts';
import { find, record, shortTiming, untilPhase, untilTrue } from './link-watch.ts';

let world: BluezWorld;
let link: BluetoothLink;

const plain = (uuid: string) => uuid.replaceAll('-', '');
const deviceId = 'aabbccddee01';
const value = { serviceUuid: plain(meterServiceUuid), characteristicUuid: plain(meterValueUuid) };

function newLink(): BluetoothLink {
  link = new BluetoothLink({ radioScript, env: world.env, timing: shortTiming });
  return link;
}

async function liveMeter(behavior: Parameters<BluezWorld['addMeter']>[1] = {}) {
  const meter = await world.addMeter({}, behavior);
  await find(newLink(), meter.name);
  link.connect(deviceId, null);
  await untilPhase(link, 'live');
  return meter;
}

const why = (code: string) => ({ facts: { trouble: { facts: { why: { code } } } } });

beforeEach(async () => {
  world = await BluezWorld.start();
  await world.addAdapter('hci0');
});
afterEach(async () => {
  await link?.close();
  await world.stop();
});

describe('finding and connecting', () => {
  test('a scan lists what is heard now, by the ids that noble gives, and leaves out devices of earlier times', async () => {
    await world.addMeter({ name: 'Silent', address: 'AA:BB:CC:DD:EE:02' }, { advertises: false });
    const meter = await world.addMeter();
    const heard: string[] = [];
    newLink().on('found', (found) => heard.push(found.name));
    expect(await find(link, meter.name)).toEqual({
      deviceId,
      name: meter.name,
      rssiDbm: -58,
      serviceUuids: [value.serviceUuid],
    });
    expect(link.adapter).toEqual({ usable: true, message: { code: 'meter.adapter.on' }, way: 'bluez' });
    expect(new Set(heard)).toEqual(new Set([meter.name]));
  });

  test('the meter describes itself, its battery is known, and every value comes once, in order', async () => {
    const meter = await liveMeter();
    expect(link.state.deviceName).toBe(meter.name);
    expect(link.described?.description).toMatchObject({ unit: 'pct', origin: 'self-described' });
    await untilTrue(link, 'battery level', () => link.batteryPct === 76);
    const received = record(link);
    await meter.stream(200, 100);
    // A read that proves that the meter is there changes the value for BlueZ; nobody sent it.
    await untilTrue(link, 'all 200', () => received.at(-1)?.value === 1.99);
    expect(received.map((n) => n.value)).toEqual(Array.from({ length: 200 }, (_, i) => i / 100));
  });

  test('leaving it: nothing is sent any more, the connection is ended, and it can be connected again', async () => {
    const meter = await liveMeter();
    await link.disconnect();
    expect(await meter.now()).toMatchObject({ connected: false, notifying: [] });
    link.connect(deviceId, null);
    await untilPhase(link, 'live');
    expect((await meter.now()).links).toBe(2);
  });

  test('a first try that fails at once is made again', async () => {
    expect((await (await liveMeter({ refusals: 2 })).now()).links).toBe(1);
  });

  test('one that connects and never lists its values: the attempt ends', async () => {
    const meter = await world.addMeter({}, { resolves: false });
    await find(newLink(), meter.name);
    link.connect(deviceId, null);
    expect((await untilPhase(link, 'failed')).message.facts).toMatchObject({
      why: { code: 'meter.why.no-answer' },
    });
  });
});

describe('every way a meter can send its value', () => {
  const other = (last: string) => `7d0a1f1${last}-b2c9-4a6e-8f53-17c2a4e9d010`;
  const services: MeterServices[] = [
    {
      uuid: other('0'),
      characteristics: [
        { uuid: other('1'), flags: ['indicate'] },
        { uuid: other('2'), flags: ['read'], value: '0102' },
        { uuid: other('3'), flags: ['write'] },
      ],
    },
  ];

  const described = (source: MeterDescription['source']): MeterDescription =>
    plainDescription({
      source,
      value: { kind: 'number', format: 6, byteOffset: 0, exponent: -2, scale: 1, offset: 0 },
      unit: 'pct',
      range: { min: 0, max: 700 },
      origin: 'mapped-by-hand',
    });

  test('indications, reads and a start', async () => {
    const meter = await world.addMeter({}, { services });
    await find(newLink(), meter.name);
    const received = record(link);
    link.connect(deviceId, null);
    await untilPhase(link, 'needs-description');
    await untilTrue(link, 'a read', () => received.some((n) => n.bytes.length === 2));
    await meter.notify([7], meter.at(0, 0));
    await untilTrue(link, 'an indication', () => received.some((n) => n.bytes[0] === 7));

    const indicated = { serviceUuid: plain(other('0')), characteristicUuid: plain(other('1')) };
    link.describe({
      ...described({ kind: 'sent', ...indicated }),
      start: { ...indicated, characteristicUuid: plain(other('3')), bytesHex: '01ff', withResponse: true },
    });
    await untilPhase(link, 'live');
    expect(await meter.now()).toMatchObject({ written: ['01ff'], notifying: [meter.at(0, 0)] });
  });

  test('adverts, without connecting', async () => {
    const meter = await world.addMeter({}, { manufacturerData: { 65535: 'ec04' } });
    newLink();
    const received = record(link);
    link.connect(deviceId, described({ kind: 'manufacturer-data', companyId: 0xffff }));
    await untilPhase(link, 'live');
    await untilTrue(link, 'values', () => received.filter((n) => n.value === 12.6).length > 2);
    expect((await meter.now()).links).toBe(0);
    await meter.set({ advertises: false });
    expect((await untilPhase(link, 'reconnecting')).message).toMatchObject(why('meter.why.unheard'));
    await meter.set({ advertises: true });
    await untilPhase(link, 'live');
  });
});

test('a hygrometer is read over a second connection beside a live meter, and left', async () => {
  const sig = (uuid: string) => `0000${uuid}-0000-1000-8000-00805f9b34fb`;
  const hygrometer = await world.addMeter(
    { name: 'Loft', address: 'AA:BB:CC:DD:EE:02' },
    {
      services: [
        {
          uuid: sig('181a'),
          characteristics: [
            // -3.5 °C and 81.5 % (Bluetooth SIG, GATT Specification Supplement, from memory).
            { uuid: sig('2a6e'), flags: ['read'], value: 'a2fe' },
            { uuid: sig('2a6f'), flags: ['read'], value: 'd61f' },
          ],
        },
      ],
    },
  );
  const meter = await liveMeter();
  const received = record(link);
  const heard = new Promise<void>((resolve) => {
    link.on('overheard', (sensor) => sensor.name === 'Loft' && resolve());
  });
  const states = new Set<string>();
  link.on('state', ({ phase }) => states.add(phase));
  link.overhear(true);
  await heard;
  const streamed = meter.stream(100, 50);
  expect(await link.visit('aabbccddee02')).toEqual({ tempC: -3.5, rh: 0.815 });
  await streamed;
  await untilTrue(link, 'all 100', () => received.at(-1)?.value === 0.99);
  expect(received.map((n) => n.value)).toEqual(Array.from({ length: 100 }, (_, i) => i / 100));
  expect(await hygrometer.now()).toMatchObject({ connected: false, links: 1 });
  expect([...states]).toEqual([]);
});

test('one that advertises and lets nobody connect is listened to', async () => {
  const meter = await world.addMeter({}, { refusals: 99, serviceData: { [meterServiceUuid]: 'ec04' } });
  await find(newLink(), meter.name);
  const received = record(link);
  link.connect(deviceId, null);
  await untilPhase(link, 'needs-description');
  await untilTrue(link, 'bytes', () => received.length > 2);
  expect(received.at(-1)?.from).toEqual({ kind: 'service-data', serviceUuid: value.serviceUuid });
});

describe('pairing', () => {
  test('a meter that pairs without a code is paired', async () => {
    await liveMeter({ pairing: 'just-works' });
  });

  test('one that asks for a code is refused, and the sentence says what to do', async () => {
    const meter = await world.addMeter({}, { pairing: 'code' });
    await find(newLink(), meter.name);
    link.connect(deviceId, null);
    expect((await untilPhase(link, 'failed')).message.facts).toMatchObject({
      why: { code: 'meter.why.pairing' },
    });
  });

  test('Pintally pairs no device that asks by itself, and shows or confirms no code', async () => {
    await liveMeter();
    const device = '/org/bluez/hci0/dev_AA_BB_CC_DD_EE_02';
    const ask = async (member: string, signature: string, ...body: unknown[]) => {
      const answers = (await world.programs()).map((name) =>
        world.callOn(name, '/org/pintally/agent', 'org.bluez.Agent1', member, signature, body).then(
          () => 'allowed',
          (error: { dbusName?: string }) => error.dbusName,
        ),
      );
      return await Promise.all(answers);
    };
    const refused = 'org.bluez.Error.Rejected';
    expect(await ask('RequestAuthorization', 'o', device)).toContain(refused);
    expect(await ask('RequestPasskey', 'o', device)).toContain(refused);
    expect(await ask('RequestConfirmation', 'ou', device, 123_456)).toContain(refused);
    expect(await ask('RequestAuthorization', 'o', device)).not.toContain('allowed');
  });
});

describe('faults', () => {
  test('a dropped connection is made again, with nothing counted twice', async () => {
    const meter = await liveMeter();
    await meter.dropLink();
    expect((await untilPhase(link, 'reconnecting')).message).toMatchObject(why('meter.why.dropped'));
    await untilPhase(link, 'live');
    const received = record(link);
    await meter.stream(50, 100);
    await untilTrue(link, 'all 50', () => received.at(-1)?.value === 0.49);
    expect(received.map((n) => n.value)).toEqual(Array.from({ length: 50 }, (_, i) => i / 100));
  });

  test('BlueZ stopped and started again: the meter is live again', async () => {
    await liveMeter();
    await world.stopService();
    await untilPhase(link, 'reconnecting');
    await world.startService();
    await world.addAdapter('hci0');
    await world.addMeter();
    await untilPhase(link, 'live');
  });

  test('BlueZ answers nothing: the attempt ends, and the next one works', async () => {
    await liveMeter();
    world.freeze();
    expect((await untilPhase(link, 'reconnecting')).message).toMatchObject(
      why('meter.why.stopped-answering'),
    );
    world.wake();
    await untilPhase(link, 'live', 60_000);
  });

  test('the bus goes away while a meter is live: it is reported, and the link goes on trying', async () => {
    await liveMeter();
    await world.stopBus();
    await untilPhase(link, 'reconnecting');
    await untilTrue(link, 'what to do', () => link.adapter?.usable === false);
  });

  test('the meter is forgotten by BlueZ, or lists other values, while live: it is connected to again', async () => {
    const meter = await liveMeter();
    await meter.remove(meter.at(0, 0));
    await untilPhase(link, 'reconnecting');
    await meter.remove();
    const again = await world.addMeter();
    await untilPhase(link, 'live');
    expect((await again.now()).connected).toBe(true);
  });

  test('properties and values of another type than documented are passed over', async () => {
    const odd = await world.addMeter({ name: 'Odd', address: 'AA:BB:CC:DD:EE:03' });
    await odd.distort(odd.path, 'org.bluez.Device1', 'Name', 'number');
    await odd.distort(odd.path, 'org.bluez.Device1', 'UUIDs', 'text');
    await odd.distort(odd.path, 'org.bluez.Device1', 'Address', 'texts');
    const meter = await liveMeter();
    await meter.distort(meter.at(0, 0), 'org.bluez.GattCharacteristic1', 'Value', 'text');
    await meter.distort(meter.path, 'org.bluez.Device1', 'Connected', 'number');
    await meter.distort(meter.path, 'org.bluez.Battery1', 'Percentage', 'text');
    const received = record(link);
    await meter.notify([0xec, 0x04]);
    await untilTrue(link, 'a value', () => received.at(-1)?.value === 12.6);
    expect(link.counts.refused).toBe(0);
  });

  test('2,000 values a second for two seconds: each is received or counted as missed', async () => {
    const meter = await liveMeter();
    const before = link.counts.received;
    await meter.stream(4000, 2000);
    await untilTrue(link, 'all 4000', () => link.counts.received - before >= 4000, 40_000);
    expect(link.counts.received - before).toBe(4000);
  });
});

describe('adapters', () => {
  test('off, then turned on: the scan goes on', async () => {
    await world.setPowered('hci0', false);
    const meter = await world.addMeter();
    newLink().startScan();
    await untilTrue(link, 'off', () => link.state.message.code === 'meter.adapter.off-linux');
    await world.setPowered('hci0', true);
    await find(link, meter.name);
  });

  test('the one in use is pulled out: another one that is on takes over', async () => {
    await world.addAdapter('hci1');
    await liveMeter();
    await world.addMeter({ adapter: 'hci1' });
    await world.removeAdapter('hci0');
    await untilPhase(link, 'reconnecting');
    await untilPhase(link, 'live');
  });

  test('none: the sentence says so', async () => {
    await world.removeAdapter('hci0');
    newLink().startScan();
    expect((await untilPhase(link, 'failed')).message.code).toBe('meter.adapter.missing');
  });
});

test('a bus that lets this user ask BlueZ nothing: the raw socket is tried, and the reason is said', async () => {
  await world.stop();
  world = await BluezWorld.start({
    rules: '<deny send_destination="org.bluez" send_interface="org.freedesktop.DBus.ObjectManager"/>',
  });
  newLink().startScan();
  await untilTrue(link, 'its way', () => link.adapter?.way === 'hci-beside-bluez');
});

test('no BlueZ on the bus: the raw socket is used', async () => {
  await world.stop();
  world = await BluezWorld.start({ service: false });
  newLink().startScan();
  await untilTrue(link, 'its way', () => link.adapter?.way === 'hci');
});
