import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type App, createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { unknownProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import { fillYard } from '../bench/filled-yard.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { untilPhase } from './link-watch.ts';
import { link, meter, newLink, withMeterInReach } from './meter-in-reach.ts';

// From pushed pins to the saved reading, over emulated controllers: what happens to values on their way.

withMeterInReach();

let app: App;
let dataDir: string;
let window: ReturnType<typeof openWindow>;
let roundId: number;

beforeEach(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'pintally-pushes-'));
  fillYard(join(dataDir, 'yard.sqlite'), 20, 1, { name: 'Old meter', profile: unknownProfile }, 1);
  meter.tell({ type: 'rate', hz: 0 });
  newLink();
  app = createApp({
    dataDir,
    links: { ...noMeter, bluetooth: () => link },
    threads: threadSources,
    forecastAfterMs: 3_600_000,
  });
  window = openWindow(app);
  await window.command('settings.edit', { saveWhenSettled: true });
  ({ id: roundId } = await window.command('rounds.start', { stackId: 1, woodTempC: 20 }));
  const found = new Promise<string>((resolve) =>
    link.on('found', ({ name, deviceId }) => name === meter.name && resolve(deviceId)),
  );
  await window.command('meter.scan', {});
  await window.command('meter.connect', { deviceId: await found });
  await untilPhase(link, 'live');
});
afterEach(async () => {
  await app.close();
  rmSync(dataDir, { recursive: true, force: true });
});

const readings = async () =>
  (await window.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];

const bytesOf = (pct: number) => {
  const bytes = new Uint8Array(2);
  new DataView(bytes.buffer).setUint16(0, Math.round(100 * pct), true);
  return bytes;
};
/** Pins out, then in for so many values, 20 a second: within a second it comes to rest. */
const pushed = (restsAt: number, values: number) => [
  0,
  0,
  ...Array.from({ length: values }, (_, i) => restsAt - 3 * Math.exp(-i / 4) + 0.01 * Math.sin(i)),
];

/** What the controllers are given in place of each value of a push, in their order. */
async function give(packets: readonly (readonly Uint8Array[])[]): Promise<void> {
  for (const each of packets) {
    for (const bytes of each) meter.tell({ type: 'notify', bytes });
    await pause(50);
  }
}
const isSaved = () => expect.poll(async () => (await readings()).length, { timeout: 10_000 });

test('each value twice, and each two in the wrong order, are one reading of what the wood holds', async () => {
  const values = pushed(14, 80).map(bytesOf);
  const swapped = values.map((_, i) => values[i % 2 === 0 ? Math.min(i + 1, values.length - 1) : i - 1]!);
  await give(swapped.map((bytes) => [bytes, bytes]));
  await isSaved().toBe(1);
  const [reading] = await readings();
  expect(Math.abs(reading!.raw - 14)).toBeLessThan(0.1);
  expect(link.counts.refused).toBe(0);
});

test('half a packet between whole ones is refused, and the push is one reading', async () => {
  await give(pushed(14, 80).map((pct, i) => (i % 3 === 0 ? [bytesOf(pct).subarray(0, 1)] : [bytesOf(pct)])));
  await isSaved().toBe(1);
  expect(Math.abs((await readings())[0]!.raw - 14)).toBeLessThan(0.1);
  expect(link.counts.refused).toBe(28);
});

test('out of reach in the middle of a push, nothing of its half is saved; steady again, it is one reading', async () => {
  await give(pushed(14, 12).map((pct) => [bytesOf(pct)]));
  meter.tell({ type: 'advertise', on: false });
  meter.tell({ type: 'drop-link' });
  await untilPhase(link, 'reconnecting');
  await pause(2000);
  expect(link.state.phase).toBe('reconnecting');
  expect(await readings()).toEqual([]);
  meter.tell({ type: 'advertise', on: true });
  await untilPhase(link, 'live');
  // Too short to be at rest, but not with the values of before.
  await give(Array.from({ length: 8 }, () => [bytesOf(14)]));
  expect(await readings()).toEqual([]);
  await give(Array.from({ length: 80 }, () => [bytesOf(14)]));
  await isSaved().toBe(1);
  expect((await readings())[0]).toMatchObject({ raw: 14, how: 'settled' });
});
