import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { probeWithMeter } from './kills-while-streaming.ts';
import { Ledger } from './ledger.ts';
import { inApp } from './opened.ts';
import { oneOf } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { addStack, readingsOf, startRound, stream } from './streaming.ts';

const HOUR_MS = 3_600_000;
const jumpsMs = [
  -60_000,
  -HOUR_MS,
  -24 * HOUR_MS,
  -400 * 24 * HOUR_MS,
  -20 * 365 * 24 * HOUR_MS,
  24 * HOUR_MS,
];
/** A simulated value settles within some three seconds. */
const SETTLES_WITHIN_MS = 10_000;

/** The wall clock is set to another time during a round: the meter goes on, and a round ends after it began. */
export const clockSetBack: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 4, (random) =>
    inFolder(async (folder) => {
      const jumpMs = oneOf(random, jumpsMs);
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
  return [...lost, ...(await inApp(data, ({ window }) => ledger.differences(window)))];
}
