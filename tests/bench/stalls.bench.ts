/**
 * How long the host's thread is busy at once with acts on much: others wait so long. It counts the thread's own time, so
 * that a busy computer makes it no longer. Run: `npx node tests/bench/stalls.bench.ts`; with `--boards 100000` for more.
 */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { openYard } from '../../electron/store/yard.ts';
import type { PastPage } from '../../shared-core/contract/requests/past-rounds.ts';
import { unknownProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import { HOUR_MS, isoOf } from '../../shared-core/time.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { HandHeldMeter } from '../unit/app/hand-held-meter.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { workedAtOnce } from './at-once.ts';
import { figure } from './figure.ts';
import { fillYard } from './filled-yard.ts';

const { values } = parseArgs({ options: { boards: { type: 'string', default: '10000' } } });
const BOARDS = Number(values.boards);
const GOAL_MS = 50;

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
const old = { name: 'Old meter', profile: unknownProfile };
fillYard(join(dataDir, 'yard.sqlite'), BOARDS, 2, old, 2);
const shedId = logYear(join(dataDir, 'yard.sqlite'));
const meterInHand = new HandHeldMeter();
const links = { ...noMeter, bluetooth: () => meterInHand };
const app = createApp({ dataDir, links, threads: threadSources, forecastAfterMs: 3_600_000 });
const window = openWindow(app);
const { command, query } = window;
await command('settings.edit', { sound: true });
console.log(`${BOARDS} boards, ${BOARDS * 8} readings`);

await busy('air.ofPlace of a year of hours', () => query('air.ofPlace', { placeId: shedId }));
const page: PastPage = {
  stackId: 1,
  startedAt: '2026-01-15T18:00:00.000Z',
  meterId: null,
  unit: 'pct',
  woodTempC: 12,
  airTempC: null,
  depths: [8, 8, 13, 13],
};
const { boards } = await busy('pastRounds.page of 1,000 boards', () => query('pastRounds.page', page));
const lines = boards.map(({ boardId }) => ({ boardId, raws: [14.1, 14.2, 15.3, 15.4] }));
for (const [index, when] of ['first', 'later'].entries()) {
  await busy(`pastRounds.check, the ${when}`, () =>
    query('pastRounds.check', { ...page, line: lines[index]! }),
  );
}
const saved = await busy('pastRounds.save of 4,000 readings', () =>
  command('pastRounds.save', { ...page, isDayOnly: true, lines, work: randomUUID() }),
);
await busy('undo of that page', () => command('acts.undo', { act: saved.act, work: randomUUID() }));
await busy('redo of that page', () => command('acts.redo', { act: saved.act, work: randomUUID() }));

const [meter] = await query('meters.list', {});
const profile = { ...unknownProfile, pins: { lengthMm: 13, insulated: true } };
const meterId = meter!.id;
await command('meters.edit', { id: meterId, basedOn: meter!.version, changed: { profile } });
const moved = await busy('meters.updateEarlier of all readings', () =>
  command('meters.updateEarlier', { meterId, work: randomUUID() }),
);
await busy('undo of that update', () => command('acts.undo', { act: moved.act, work: randomUUID() }));

const [place, other] = await query('places.list', {});
await busy('places.edit', () =>
  command('places.edit', { id: place!.id, basedOn: place!.version, changed: { name: 'Field' } }),
);
const merged = await busy('places.merge', async () => {
  const { version } = (await query('places.list', {})).find(({ id }) => id === place!.id)!;
  const asked = { id: place!.id, basedOn: version, intoId: other!.id, air: 'into' as const };
  const act = randomUUID();
  await command('places.merge', { ...asked, work: randomUUID() }, act);
  return act;
});
await busy('undo of that merge', () => command('acts.undo', { act: merged, work: randomUUID() }));
const empty = await command('places.add', { name: 'Loft', kind: 'shop', air: place!.air });
await busy('places.close, of one that is empty', () =>
  command('places.close', { id: empty.id, basedOn: empty.version }),
);
await command('meter.scan', {});
await command('meter.connect', { deviceId: 'hand' });
const { rows } = await query('boards.list', { stackId: null, search: '', offset: 0, limit: 1 });
// As the radio process passes them on: what came within 8 ms at once.
const flood = async (aTurn: number): Promise<void> => {
  for (let turn = 0; turn < 250; turn++) {
    meterInHand.show(turn % 50 < 5 ? 0 : 12 + (turn % 50) / 100, aTurn / 10);
    await pause(8);
  }
};
const { id: roundId } = await command('rounds.start', { stackId: rows[0]!.stackId, woodTempC: 12 });
await busy('rounds.get of 1,000 boards', () => query('rounds.get', { roundId }));
for (const which of ['first', 'second', 'third']) {
  await busy(`a value that settles and is saved, the ${which}`, async () => meterInHand.show(14.2, 4));
  meterInHand.lift();
}
const { readings } = await query('boards.get', { id: rows[0]!.id });
await busy('a reading left out, and 1,000 compared', async () => {
  window.forgetEvents();
  const { id: readingId, roundId: comparedId } = readings.find((each) => each.roundId !== roundId)!;
  await command('readings.exclude', { readingId, why: { text: 'Bench' } });
  // Where it has news of many boards, everything may have changed.
  const isCompared = ({ topics }: { topics: readonly string[] }): boolean =>
    !topics.includes('acts') && (topics.includes(`round:${comparedId}`) || topics.includes('yard'));
  while (!window.heard('changed').some(isCompared)) await pause(50);
});
for (const which of ['first', 'later'])
  await busy(`boards.forecast, the ${which}`, () => query('boards.forecast', { id: rows[0]!.id }));
await busy('a meter that sends 1,000 values a second', () => flood(8));
await busy('a meter that sends 10,000 values a second', () => flood(80));
await app.close();
rmSync(dataDir, { recursive: true });

/** Fills the log of a new place with a year of hours. @returns its id */
function logYear(file: string): number {
  const yard = openYard(file);
  // A large file is first looked through elsewhere; this one was made just now.
  yard.allowWriting();
  const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.6 }));
  const shed = { name: 'Shed', kind: 'open-shed', air, airSource: null, airMovement: null } as const;
  const placeId = yard.transaction(() => {
    const id = yard.places.add(shed);
    for (let hour = 0; hour < 365 * 24; hour++) {
      const at = isoOf(Date.UTC(2025, 0, 1) + hour * HOUR_MS);
      const rh = 0.6 + 0.2 * Math.cos(hour / 4);
      yard.airLogs.add({ placeId: id, sensorId: null, at, tempC: 12 + 4 * Math.sin(hour / 4), rh });
    }
    return id;
  });
  yard.close();
  return placeId;
}

/** Does it, and prints how long this thread worked at most before others had their turn. */
async function busy<T>(what: string, work: () => Promise<T>): Promise<T> {
  const { output, atOnceMs, workedMs, tookMs } = await workedAtOnce(work);
  figure({ what: `host at once: ${what}`, value: atOnceMs, unit: 'ms', goal: { most: GOAL_MS } });
  console.log(`  of ${workedMs.toFixed(0)} ms in ${(tookMs / 1000).toFixed(1)} s`);
  return output;
}
