import { copyFileSync, cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { Ledger } from './ledger.ts';
import { inApp, yardFileIn } from './opened.ts';
import { type Random, wholeBetween } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { addStack, readingsOf, startRound, stream } from './streaming.ts';

/** A task that writes for a while. */
export interface Work {
  name: string;
  /** @returns what must be there whenever the work is ended */
  prepare(data: string): Promise<Ledger>;
  /** What the host does before it may be killed; without it, that is from its first moment on. */
  begin?(host: ShimmedHost): Promise<unknown>;
  /** What the host does until it is killed. */
  run(host: ShimmedHost): Promise<unknown>;
  /** What is not as it should be after the next start. */
  check(data: string, ledger: Ledger): Promise<string[]>;
}

export async function someReadings(data: string): Promise<Ledger> {
  const ledger = new Ledger();
  await inApp(data, async ({ window }) => {
    const { stackId, boardIds } = await addStack(window, 'Typed', 6);
    const roundId = await startRound(window, stackId);
    await stream(window, readingsOf(roundId, boardIds, 10), ledger);
  });
  return ledger;
}

export const allThere = (data: string, ledger: Ledger): Promise<string[]> =>
  inApp(data, ({ window }) => ledger.differences(window));

/** A page of the yard file is other bytes: SQLite finds the damage when it looks through the file. */
export async function damagedYard(data: string): Promise<Ledger> {
  await someReadings(data);
  const bytes = readFileSync(yardFileIn(data));
  bytes.fill(0xff, 8192, 12_288);
  bytes.fill(0xff, 20_480, 28_672);
  writeFileSync(yardFileIn(data), bytes);
  copyFileSync(yardFileIn(data), `${data}.damaged`);
  return new Ledger();
}

/** The host is killed at some write of one work after the other. */
export const killsIn =
  (works: readonly Work[]): Fault =>
  (howMany, seed) =>
    tryOften(howMany, seed, 2, async (random, mine) => {
      const work = works[mine % works.length] as Work;
      return inFolder(async (folder) => {
        const lost = await killDuring(work, join(folder, 'data'), random);
        return lost.map((loss) => `${work.name}: ${loss}`);
      });
    });

async function killDuring(work: Work, data: string, random: Random): Promise<string[]> {
  mkdirSync(data, { recursive: true });
  const ledger = await work.prepare(data);
  const spare = `${data}.spare`;
  cpSync(data, spare, { recursive: true });
  const whole = new ShimmedHost(spare);
  await work.begin?.(whole);
  const changesBefore = work.begin ? whole.disk.get('changes') : 0;
  await work.run(whole);
  await whole.kill();
  const killIn = wholeBetween(random, 1, whole.disk.get('changes') - changesBefore + 1);

  const host = new ShimmedHost(data, work.begin ? {} : { control: { killIn } });
  if (work.begin) {
    await work.begin(host);
    host.disk.set({ killIn });
  }
  await work.run(host).catch(() => undefined);
  await host.kill();
  return work.check(data, ledger);
}
