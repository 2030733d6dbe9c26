import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { probeWithMeter } from './kills-while-streaming.ts';
import { Ledger } from './ledger.ts';
import { inApp, type Opened } from './opened.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { addStack, readingsOf, startRound, stream } from './streaming.ts';

const HOUR_MS = 3_600_000;
const YEAR_MS = 365.25 * 24 * HOUR_MS;
const jumpsMs = [
  -60_000,
  -HOUR_MS,
  -24 * HOUR_MS,
  -2 * YEAR_MS,
  -20 * YEAR_MS,
  24 * HOUR_MS,
  2 * YEAR_MS,
  20 * YEAR_MS,
];
/** A simulated value settles within some three seconds. */
const SETTLES_WITHIN_MS = 10_000;

/**
 * The wall clock is set to another time during a round, and is right again at the next start: the meter goes on, a round
 * ends after it began, and a new backup has everything and stays.
 */
export const clockSet: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 4, (random, mine) =>
    inFolder(async (folder) => {
      const jumpMs = jumpsMs[mine % jumpsMs.length] as number;
      const lost = await setClock(join(folder, 'data'), jumpMs, 1500 * random());
      return lost.map((loss) => `the clock jumps by ${jumpMs / HOUR_MS} h: ${loss}`);
    }),
  );

async function setClock(data: string, jumpMs: number, afterMs: number): Promise<string[]> {
  mkdirSync(data);
  const host = new ShimmedHost(data);
  const typing = await host.window();
  const typed = await addStack(typing, 'Typed', 2);
  const metered = await addStack(typing, 'Metered', 2);
  const roundId = await startRound(typing, typed.stackId);
  const ledger = new Ledger();
  const readings = readingsOf(roundId, typed.boardIds, 10);
  await stream(typing, readings.slice(0, 4), ledger);
  const meter = new Ledger();
  await probeWithMeter(await host.window(), metered.stackId, meter);
  await pause(afterMs);
  host.disk.set({ clockMs: jumpMs });
  const lost: string[] = [];
  const giveUpAt = performance.now() + SETTLES_WITHIN_MS;
  while (meter.saved().length === 0 && performance.now() < giveUpAt) await pause(50);
  if (meter.saved().length === 0) lost.push('the meter stopped');

  await stream(typing, readings.slice(4), ledger);
  await typing.command('rounds.finish', { roundId });
  const { startedAt, finishedAt } = await typing.query('rounds.get', { roundId });
  if (finishedAt === null || Date.parse(finishedAt) < Date.parse(startedAt)) {
    lost.push(`the round ends at ${finishedAt} and begins at ${startedAt}`);
  }
  lost.push(...(await ledger.differences(typing)));
  await host.kill();
  return [...lost, ...(await inApp(data, (opened) => lostOnceRight(opened, ledger)))];
}

async function lostOnceRight({ window }: Opened, ledger: Ledger): Promise<string[]> {
  const lost = await ledger.differences(window);
  const all = (await window.query('boards.list', { stackId: null, search: '', offset: 0, limit: 500 })).rows;
  await window.command('backups.make', {});
  const [newest] = await window.query('backups.list', {});
  if (newest?.contents?.boards !== all.length)
    lost.push('the backup just made is not the newest of the list');
  if (Math.abs(Date.parse(newest?.at ?? '') - Date.now()) > HOUR_MS)
    lost.push(`the newest backup is of ${newest?.at}`);
  return lost;
}
