import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { noteArrivals } from './arrivals.ts';
import type { EmulatedMeter } from './emulated-radio.ts';
import { find, record, untilPhase, untilTrue } from './link-watch.ts';
import { link, liveMeter, meter, newLink, radio, withMeterInReach } from './meter-in-reach.ts';
import type { GattLibrary } from './meter-server.ts';

withMeterInReach();

const others: EmulatedMeter[] = [];
afterEach(async () => {
  for (const other of others.splice(0)) await other.quit();
});
async function another(options: Parameters<typeof radio.startMeter>[0]): Promise<EmulatedMeter> {
  const other = await radio.startMeter(options);
  others.push(other);
  return other;
}
/** 1260 hundredths. */
const soundValue = Uint8Array.of(0xec, 0x04);
const accountedFor = () => {
  const { received, decoded, noReading, other, refused } = link.counts;
  return { received, sum: decoded + noReading + other + refused };
};

describe.each<GattLibrary>(['bleno', 'ble-host'])('a meter built on %s that starts again', (library) => {
  const name = `Starts again on ${library}`;

  test('with the address that it had is live again, and read as before', async () => {
    // A controller of the emulator that is free again has the address that it had.
    const first = await another({ name, library });
    const { deviceId } = await find(newLink(), first.name);
    link.connect(deviceId, null);
    await untilPhase(link, 'live');
    const { description } = link.described!;
    await first.quit();
    await untilPhase(link, 'reconnecting', 40_000);
    await another({ name, library });
    await untilPhase(link, 'live', 40_000);
    expect(link.state.deviceId).toBe(deviceId);
    expect(link.described).toMatchObject({ description });
    const received = record(link);
    await untilTrue(link, 'values', () => received.length > 2);
  });

  test('with another address is not taken for it: the link waits, and lists the other as another', async () => {
    const first = await another({ name, library });
    const { deviceId } = await find(newLink(), first.name);
    link.connect(deviceId, null);
    await untilPhase(link, 'live');
    first.freeze();
    const second = await another({ name, library });
    await untilPhase(link, 'reconnecting', 40_000);
    // Longer than a search lasts.
    await new Promise((resolve) => setTimeout(resolve, 4000));
    expect(link.state.phase).toBe('reconnecting');
    expect(second.links).toBe(0);
    await new Promise<void>((resolve) => {
      link.on('found', (each) => each.name === name && each.deviceId !== deviceId && resolve());
    });
  });

  test('with other services than before is to be confirmed, and its values are shown meanwhile', async () => {
    const other = await another({ name, library });
    const { deviceId } = await find(newLink(), other.name);
    link.connect(deviceId, null);
    await untilPhase(link, 'live');
    expect(link.described?.toConfirm).toBeUndefined();
    other.tell({ type: 'more-services', uuid: '181a' });
    other.tell({ type: 'drop-link' });
    await untilPhase(link, 'reconnecting');
    await untilPhase(link, 'live');
    expect(link.described?.toConfirm).toEqual({ before: null });
    const received = record(link);
    await untilTrue(link, 'values', () => received.some(({ value }) => value !== null));
  });
});

test('of two meters of one name the one that was chosen is connected, and no other', async () => {
  const twins = [
    await another({ name: 'Twin', library: 'ble-host', address: 'c2:00:00:00:00:01' }),
    await another({ name: 'Twin', library: 'ble-host', address: 'c2:00:00:00:00:02' }),
  ];
  const ids = new Set<string>();
  newLink().on('found', ({ name, deviceId }) => {
    if (name === 'Twin') ids.add(deviceId);
  });
  await find(link, 'Twin');
  await expect.poll(() => ids.size, { timeout: 20_000 }).toBe(2);
  link.connect('c20000000002', null);
  await untilPhase(link, 'live');
  expect(twins.map(({ links }) => links)).toEqual([0, 1]);
});

describe('what comes in', () => {
  test('twice is counted twice, and times and numbers only go up', async () => {
    await liveMeter();
    meter.tell({ type: 'rate', hz: 0 });
    const received = record(link);
    for (let times = 0; times < 20; times++) meter.tell({ type: 'notify', bytes: soundValue });
    await untilTrue(link, 'all', () => received.filter(({ value }) => value === 12.6).length === 20);
    const rising = (values: number[]) => values.every((value, i) => i === 0 || value >= values[i - 1]!);
    expect(rising(received.map(({ receivedAtMs }) => receivedAtMs))).toBe(true);
    expect(new Set(received.map(({ sequence }) => sequence)).size).toBe(received.length);
  });

  test('as a flood, a minute of 1,000 a second at once: each that arrives is received or counted as missed', async () => {
    let arrived = 0;
    let newestMs = 0;
    const H4_PATH = join(mkdtempSync(join(tmpdir(), 'pintally-flood-')), 'h4');
    // btvirt drops what its clients do not take at once.
    const relay = await noteArrivals(H4_PATH, radio.env.H4_PATH, () => {
      arrived++;
      newestMs = Date.now();
    });
    await liveMeter({ env: { ...radio.env, H4_PATH } });
    meter.tell({ type: 'rate', hz: 0 });
    const isSent = meter.until('streamed', 60_000);
    meter.tell({ type: 'stream', count: 60_000, hz: 6000 });
    await isSent;
    // A busy machine brings them much later than they were sent. How many come is the emulator's affair, and the last may be
    // among those that do not.
    await expect.poll(() => Date.now() - newestMs > 2000, { timeout: 180_000 }).toBe(true);
    expect(arrived).toBeGreaterThan(10_000);
    const { received: all, sum } = accountedFor();
    expect(all).toBe(sum);
    expect(all).toBe(arrived);
    relay.close();
    expect(link.state.phase).toBe('live');
  }, 300_000);
});

describe('a meter that asks for pairing', () => {
  test('and refuses it: the reason is shown, with what to do', async () => {
    const locked = await another({ name: 'Locked', library: 'ble-host', isLocked: true });
    const { deviceId } = await find(newLink(), locked.name);
    link.connect(deviceId, null);
    const why = { code: 'meter.why.pairing' };
    expect((await untilPhase(link, 'failed')).message).toMatchObject({ facts: { why } });
    // The radio is none the worse for it.
    await find(link, meter.name);
  });

  // The emulated controllers cannot encrypt.
  test('and never finishes it: the same', async () => {
    const locked = await another({ name: 'Pairs', library: 'bleno', isLocked: true });
    const { deviceId } = await find(newLink(), locked.name);
    link.connect(deviceId, null);
    const why = { code: 'meter.why.pairing' };
    expect((await untilPhase(link, 'failed')).message).toMatchObject({ facts: { why } });
  });
});
