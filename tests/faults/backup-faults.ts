import { globSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { errno, FOREVER, kinds } from './disk-shim.ts';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { allThere, killsIn, someReadings, type Work } from './killed-work.ts';
import type { Ledger } from './ledger.ts';
import { inApp, sentencesIn, yardFileIn } from './opened.ts';
import { oneOf, type Random, wholeBetween } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { type AnyWindow, addStack, readingsOf, startRound, stream } from './streaming.ts';

/** Something done with backups, which the person asks for. */
interface BackupWork {
  name: string;
  prepare(data: string): Promise<Ledger>;
  ask(window: AnyWindow): Promise<unknown>;
}

const restoreNewest = async (window: AnyWindow) => {
  const [backup] = await window.query('backups.list', {});
  return window.command('backups.restore', { file: backup?.file ?? '' });
};

/** A yard with a backup, and readings after it. */
async function yardAndBackup(data: string): Promise<Ledger> {
  const ledger = await someReadings(data);
  await inApp(data, async ({ window }) => {
    await window.command('backups.make', {});
    const { stackId, boardIds } = await addStack(window, 'Later', 2);
    const roundId = await startRound(window, stackId);
    await stream(window, readingsOf(roundId, boardIds, 30), ledger);
  });
  return ledger;
}

async function restoredYard(data: string): Promise<Ledger> {
  const ledger = await yardAndBackup(data);
  await inApp(data, ({ window }) => restoreNewest(window));
  return ledger;
}

/** Its backup has every reading. */
async function damagedWithBackup(data: string): Promise<Ledger> {
  const ledger = await someReadings(data);
  await inApp(data, ({ window }) => window.command('backups.make', {}));
  const bytes = readFileSync(yardFileIn(data)).fill(0xff, 4096, 40_960);
  writeFileSync(yardFileIn(data), bytes);
  writeFileSync(`${data}.damaged`, bytes);
  return ledger;
}

const works: BackupWork[] = [
  { name: 'backing up', prepare: yardAndBackup, ask: (window) => window.command('backups.make', {}) },
  { name: 'restoring', prepare: yardAndBackup, ask: restoreNewest },
  {
    name: 'undoing a restore',
    prepare: restoredYard,
    ask: (window) => window.command('backups.undoRestore', {}),
  },
  { name: 'restoring over a damaged yard', prepare: damagedWithBackup, ask: restoreNewest },
];

/**
 * Whatever became of it, the person comes back to every reading: in the yard, by undoing the restore, or by restoring
 * over the damaged file. Every backup of the list can be read, and a damaged file is still somewhere.
 */
async function lostAfter(data: string, ledger: Ledger): Promise<string[]> {
  const lost = await inApp(data, async ({ window }) => {
    const list = await window.query('backups.list', {});
    const torn = list.filter(({ contents }) => contents === null).map(({ file }) => `${file} cannot be read`);
    if (list.length === 0) torn.push('no backup is left');
    if ((await window.query('yard.info', {})).problem !== null) await restoreNewest(window);
    // The undo of a restore over a damaged yard brings the damaged one back.
    const { restored } = await window.query('backups.state', {});
    if (restored && !restored.wasDamaged) await window.command('backups.undoRestore', {});
    await window.command('backups.make', {});
    return torn;
  });
  const left = globSync(['*.restor*', 'backups/*.part*'], { cwd: data });
  return [
    ...lost,
    ...left.map((file) => `${file} is left`),
    ...lostDamaged(data),
    ...(await allThere(data, ledger)),
  ];
}

function lostDamaged(data: string): string[] {
  const [damaged] = globSync(`${data}.damaged`).map((file) => readFileSync(file));
  if (damaged === undefined) return [];
  const isThere = globSync('yard.sqlite*', { cwd: data }).some((file) =>
    readFileSync(join(data, file)).equals(damaged),
  );
  return isThere ? [] : ['the damaged file is gone'];
}

/** The host is killed at some write while it copies, restores or renames. */
export const killsInBackups: Fault = killsIn(
  works.map(
    ({ name, prepare, ask }): Work => ({
      name,
      prepare,
      run: async (host) => ask(await host.window()),
      check: lostAfter,
    }),
  ),
);

const failures = [
  { kinds: kinds.grows | kinds.creates, error: errno.ENOSPC },
  { kinds: kinds.writes | kinds.creates, error: errno.ENOSPC },
  { kinds: kinds.writes | kinds.creates | kinds.names, error: errno.EROFS },
  { kinds: kinds.names, error: errno.EACCES },
  { kinds: kinds.syncs, error: errno.EIO },
  { kinds: kinds.writes | kinds.grows | kinds.syncs, error: errno.EIO },
];

/** The disk is full, read-only or failing from some write on while Pintally copies, restores or renames. */
export const disksInBackups: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 2, (random, mine) =>
    inFolder(async (folder) => {
      const work = works[mine % works.length] as BackupWork;
      const lost = await failDuring(work, join(folder, 'data'), random);
      return lost.map((loss) => `${work.name}: ${loss}`);
    }),
  );

async function failDuring({ prepare, ask }: BackupWork, data: string, random: Random): Promise<string[]> {
  mkdirSync(data, { recursive: true });
  const ledger = await prepare(data);
  const host = new ShimmedHost(data);
  const window = await host.window();
  const { restored } = await window.query('backups.state', {});
  host.disk.set({ ...oneOf(random, failures), passFirst: wholeBetween(random, 0, 60), failFor: FOREVER });
  const refusal = await ask(window).then(
    () => '',
    (error: unknown) => String(error),
  );
  host.disk.set({ kinds: 0, failFor: 0 });
  const lost: string[] = [];
  if (host.hasEnded()) lost.push('the process ended');
  if (refusal.includes('Something went wrong')) lost.push(`a failing disk was not named: ${refusal}`);
  const said = sentencesIn(await window.query('backups.state', {}));
  if (said.some((sentence) => sentence.includes('Something went wrong'))) lost.push(said.join(' '));
  const after = await window.query('backups.state', {});
  if (refusal !== '' && restored === null && after.restored !== null) lost.push('refused, and yet restored');
  await oneOf(random, [() => host.kill(), () => host.stop()])();
  return [...lost, ...(await lostAfter(data, ledger))];
}
