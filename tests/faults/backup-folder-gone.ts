import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Backup } from '../../shared-core/contract/backups.ts';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { allThere, someReadings } from './killed-work.ts';
import { sentencesIn } from './opened.ts';
import { oneOf, type Random, wholeBetween } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';

/** What happens to the folder with the backups, as where its disk is unplugged. */
const ways: Record<string, (folder: string) => void> = {
  deleted: (folder) => rmSync(folder, { recursive: true, force: true }),
  'an empty folder': (folder) => {
    renameSync(folder, `${folder}-away`);
    mkdirSync(folder);
  },
  'a file': (folder) => {
    renameSync(folder, `${folder}-away`);
    writeFileSync(folder, 'not a folder');
  },
};
/** A backup of a yard this small changes the disk about so often. */
const CHANGES = 60;
const PATIENCE_MS = 5000;

/**
 * The folder that the person chose goes away in the middle of a backup. The app goes on and says that it is away, and the
 * backup is in the usual folder, whole.
 */
export const backupFolderGone: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 2, (random, mine) =>
    inFolder(async (folder) => {
      const names = Object.keys(ways);
      const name = names[mine % names.length] as string;
      const lost = await goneDuring(join(folder, 'data'), random, (chosen) => ways[name]?.(chosen));
      return lost.map((loss) => `${name}: ${loss}`);
    }),
  );

async function goneDuring(data: string, random: Random, remove: (chosen: string) => void): Promise<string[]> {
  const ledger = await someReadings(data);
  const chosen = join(dirname(data), 'chosen');
  const host = new ShimmedHost(data);
  const window = await host.window();
  await window.command('backups.setFolder', { folder: chosen });
  const said: string[] = [];
  const ask = async (): Promise<void> => {
    const answer = await window.answer('backups.make', {});
    if (!answer.ok) said.push(...sentencesIn(answer.problem));
  };
  const removeAt = host.disk.get('changes') + wholeBetween(random, 1, CHANGES);
  const asked = ask();
  await changesReach(host, removeAt);
  remove(chosen);
  await asked;
  if (host.hasEnded()) return ['the process ended'];
  const lost: string[] = [];
  if (!(await window.query('backups.state', {})).isAway) lost.push('the folder is not said to be away');

  const before = (await window.query('backups.list', {})).map(({ file }) => file);
  await ask();
  const [newest] = await window.query('backups.list', {});
  if (newest === undefined || before.includes(newest.file) || !isWhole(newest, data))
    lost.push('no new, whole backup is in the usual folder');
  lost.push(...said.filter((sentence) => sentence.includes('Something went wrong')));
  await oneOf(random, [() => host.kill(), () => host.stop()])();
  return [...lost, ...(await allThere(data, ledger))];
}

const isWhole = ({ file, contents }: Backup, data: string): boolean =>
  contents !== null && existsSync(file) && dirname(file) === join(data, 'backups');

async function changesReach(host: ShimmedHost, changes: number): Promise<void> {
  const giveUpAt = performance.now() + PATIENCE_MS;
  while (host.disk.get('changes') < changes && performance.now() < giveUpAt) {
    await new Promise((resolve) => setImmediate(resolve));
  }
}
