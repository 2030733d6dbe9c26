/**
 * Memory of the host and of the radio process over a round of eight hours: four values a second from a meter over
 * emulated controllers, its link lost every half hour. Time is compressed by sending them faster. Needs btvirt and gcc.
 * Run: `npx node tests/bench/eight-hours.bench.ts`.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { BluetoothLink } from '../../electron/meter/bluetooth-link.ts';
import { unknownProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import { radioScript, startMeterServer } from '../ble/emulated-radio.ts';
import { shortTiming, untilPhase } from '../ble/link-watch.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { fillYard } from './filled-yard.ts';

const HALF_HOURS = 16;
const VALUES_A_SECOND = 4;
const VALUES = VALUES_A_SECOND * 1800;
const SENT_A_SECOND = 4000;
/** The last ones are on their way so long. What the server still has when the link is lost is never sent. */
const ARRIVE_MS = 500;
/** Code is compiled and caches are filled by then. */
const WARM_AFTER = 4;
const GOAL_MB = { host: 5, radio: 15 };

setFlagsFromString('--expose_gc');
const collect = runInNewContext('gc') as () => void;

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
fillYard(join(dataDir, 'yard.sqlite'), 20, 2, { name: 'Old meter', profile: unknownProfile }, 2);
const { radio, meter, stop } = await startMeterServer({ name: 'Bench meter' });
const link = new BluetoothLink({ radioScript, env: radio.env, timing: shortTiming });
const app = createApp({
  dataDir,
  links: { ...noMeter, bluetooth: () => link },
  threads: threadSources,
  forecastAfterMs: 3_600_000,
});
const { command, forgetEvents } = openWindow(app);
await command('rounds.start', { stackId: 1, woodTempC: 12 });
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

let warm = megabytes();
const pid = link.radioPid;
for (let half = 1; half <= HALF_HOURS; half++) {
  const streamed = meter.until('streamed', 60_000);
  meter.tell({ type: 'stream', count: VALUES, hz: SENT_A_SECOND });
  await streamed;
  await pause(ARRIVE_MS);
  meter.tell({ type: 'drop-link' });
  await untilPhase(link, 'reconnecting', 60_000);
  await untilPhase(link, 'live', 60_000);
  const now = megabytes();
  if (half === WARM_AFTER) warm = now;
  console.log(
    `${(half / 2).toFixed(1).padStart(4)} h  host ${now.host.toFixed(1)} MB, radio ${now.radio.toFixed(1)} MB`,
  );
}
const end = megabytes();
const { received, decoded, noReading, other, refused } = link.counts;
await app.close();
await stop();
rmSync(dataDir, { recursive: true, force: true });

const grown = { host: end.host - warm.host, radio: end.radio - warm.radio };
console.log(
  `\n${received} of ${VALUES * HALF_HOURS} values came, ${refused} refused. From hour ${WARM_AFTER / 2} to hour ${HALF_HOURS / 2}: host ` +
    `${grown.host.toFixed(1)} MB more (goal: at most ${GOAL_MB.host}), radio process ${grown.radio.toFixed(1)} MB ` +
    `more (goal: at most ${GOAL_MB.radio})`,
);
const isSound = received === decoded + noReading + other + refused && link.radioPid === pid;
if (!isSound || grown.host > GOAL_MB.host || grown.radio > GOAL_MB.radio) process.exitCode = 1;
