/**
 * A round of eight hours from a meter over emulated controllers, its link lost every half hour. Time is compressed by
 * sending its values faster. Needs btvirt and gcc. Run:
 *
 *     npx node tests/bench/eight-hours.bench.ts [values a second, 4] [losses from one push to the next, 1]
 *
 * Each value is a number, and counted where the meter's program gives it, where its library hands it to its controller,
 * where it arrives at the radio process, and in the host. A library that sends faster than the link takes keeps values,
 * and drops them with the link; what its controller has then is lost as well. From its arrival on none may be lost.
 * After a loss the pins are pushed in: that reading must be saved.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import Database from 'better-sqlite3';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { BluetoothLink } from '../../electron/meter/bluetooth-link.ts';
import { unknownProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import { noteArrivals } from '../ble/arrivals.ts';
import { EmulatedRadio, radioScript } from '../ble/emulated-radio.ts';
import { shortTiming, untilPhase } from '../ble/link-watch.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { figure } from './figure.ts';
import { fillYard } from './filled-yard.ts';

const HALF_HOURS = 16;
const [valuesASecond = 4, lossesAPush = 1] = process.argv.slice(2).map(Number);
const VALUES = valuesASecond * 1800;
const SENT_A_SECOND = 4000;
const PUSHES = Math.floor(HALF_HOURS / lossesAPush);
/** The last ones are on their way so long. */
const ARRIVE_MS = 500;
/** The library keeps what its controller does not take yet; every other loss waits for that. */
const SENT_WITHIN_MS = 60_000;
const PUSHED_PCT = 12;
const SAVED_WITHIN_MS = 10_000;
/** Code is compiled and caches are filled by then. */
const WARM_AFTER = 4;
const GOAL_MB = { host: 5, radio: 15 };

setFlagsFromString('--expose_gc');
const collect = runInNewContext('gc') as () => void;

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
fillYard(join(dataDir, 'yard.sqlite'), 20, 2, { name: 'Old meter', profile: unknownProfile }, 2);
const radio = await EmulatedRadio.start();
const counted = { left: 0, arrived: 0 };
const [meterPath, radioPath] = [join(dataDir, 'meter'), join(dataDir, 'radio')];
const relays = [
  await noteArrivals(
    meterPath,
    radio.controllerPath,
    () => undefined,
    () => counted.left++,
  ),
  await noteArrivals(radioPath, radio.env.H4_PATH, () => counted.arrived++),
];
const meter = await radio.startMeter({ name: 'Bench meter' }, meterPath);
meter.tell({ type: 'rate', hz: 0 });
const link = new BluetoothLink({
  radioScript,
  env: { ...radio.env, H4_PATH: radioPath },
  timing: shortTiming,
});
const app = createApp({
  dataDir,
  links: { ...noMeter, bluetooth: () => link },
  threads: threadSources,
  forecastAfterMs: 3_600_000,
});
const { command, forgetEvents } = openWindow(app);
const { id: roundId, boards } = await command('rounds.start', { stackId: 1, woodTempC: 12 });
await command('meter.scan', {});
const deviceId = await new Promise<string>((resolve) =>
  link.on('found', (found) => found.name === meter.name && resolve(found.deviceId)),
);
await command('meter.connect', { deviceId });
await untilPhase(link, 'live');

/** In use after a collection, and what the system gives the radio process, MB. */
function megabytes() {
  forgetEvents();
  collect();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  const status = readFileSync(`/proc/${link.radioPid}/status`, 'utf8');
  return { host: (heapUsed + arrayBuffers) / 1e6, radio: Number(/VmRSS:\s+(\d+)/.exec(status)![1]) / 1e3 };
}

const yard = new Database(join(dataDir, 'yard.sqlite'), { readonly: true });
const saved = yard.prepare<[], number>('SELECT count(*) FROM reading').pluck();
const savedBefore = saved.get()!;

async function until(holds: () => boolean, limitMs: number): Promise<void> {
  for (let ms = 0; ms < limitMs && !holds(); ms += 50) await pause(50);
}

/** Pins into this board until the reading is saved, and out again. */
async function push(boardId: number): Promise<void> {
  await command('rounds.aim', { roundId, boardId, spotIndex: null });
  const before = saved.get();
  meter.tell({ type: 'rate', hz: 10 });
  meter.press(PUSHED_PCT);
  await until(() => saved.get() !== before, SAVED_WITHIN_MS);
  meter.lift();
  await pause(ARRIVE_MS);
  meter.tell({ type: 'rate', hz: 0 });
  await pause(ARRIVE_MS);
}

let warm = megabytes();
const pid = link.radioPid;
/** Of the losses that came when the meter had nothing left to send. */
const lostInQuiet = { onAir: 0, inApp: 0 };
const total = { given: 0, left: 0, arrived: 0, received: 0 };
for (let half = 1; half <= HALF_HOURS; half++) {
  const isQuiet = half % 2 === 0;
  Object.assign(counted, { left: 0, arrived: 0 });
  const before = link.counts.received;
  const streamed = meter.until('streamed', 60_000);
  meter.tell({ type: 'stream', count: VALUES, hz: SENT_A_SECOND });
  await streamed;
  if (isQuiet) {
    await until(() => counted.left === VALUES, SENT_WITHIN_MS);
    await pause(ARRIVE_MS);
  }
  meter.tell({ type: 'drop-link' });
  await untilPhase(link, 'reconnecting', 60_000);
  await pause(ARRIVE_MS);
  const { left, arrived } = counted;
  const received = link.counts.received - before;
  if (isQuiet) {
    lostInQuiet.onAir += left - arrived;
    lostInQuiet.inApp += arrived - received;
  }
  total.given += VALUES;
  total.left += left;
  total.arrived += arrived;
  total.received += received;
  await untilPhase(link, 'live', 60_000);
  if (half % lossesAPush === 0) await push(boards[half]!.boardId);
  const now = megabytes();
  if (half === WARM_AFTER) warm = now;
  console.log(
    `${(half / 2).toFixed(1).padStart(4)} h  given ${VALUES}, handed to the controller ${left}, arrived ${arrived}, ` +
      `in the host ${received}; host ${now.host.toFixed(1)} MB, radio ${now.radio.toFixed(1)} MB`,
  );
}
const end = megabytes();
const { received, decoded, noReading, other, refused } = link.counts;
const kept = saved.get()! - savedBefore;
const isSameRadio = link.radioPid === pid;
yard.close();
await app.close();
await radio.stop();
for (const relay of relays) relay.close();
rmSync(dataDir, { recursive: true, force: true });

const grown = { host: end.host - warm.host, radio: end.radio - warm.radio };
const lostInApp = total.arrived - total.received;
const share = (lost: number) => `${lost} (${((100 * lost) / total.given).toFixed(1)} %)`;
console.log(`
Of ${total.given} values, lost in the meter's program ${share(total.given - total.left)}, between the controllers
${share(total.left - total.arrived)}, between arrival and host ${lostInApp} of them.
Where the meter had sent all before the link was lost: ${lostInQuiet.onAir} lost between the controllers, ${lostInQuiet.inApp} after that.
Values refused: ${refused}.
`);
const round = `round of ${HALF_HOURS / 2} h`;
const fromWarm = `from hour ${WARM_AFTER / 2} to ${HALF_HOURS / 2}`;
const isMet = [
  figure({ what: `${round}: values lost in the app`, value: lostInApp, unit: '', goal: { most: 0 } }),
  figure({
    what: `${round}: pushes after a loss saved`,
    value: kept,
    unit: '',
    goal: { least: PUSHES, most: PUSHES },
  }),
  figure({
    what: `${round}: host grows ${fromWarm}`,
    value: grown.host,
    unit: 'MB',
    goal: { most: GOAL_MB.host },
  }),
  figure({
    what: `${round}: radio grows ${fromWarm}`,
    value: grown.radio,
    unit: 'MB',
    goal: { most: GOAL_MB.radio },
  }),
];
const isSound = received === decoded + noReading + other + refused && isSameRadio;
// A test runs this bench.
if (!isSound || isMet.includes(false)) process.exitCode = 1;
