import { copyFileSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';

const root = resolve(import.meta.dirname, '../..');
const folder = join(root, 'artifacts/demo-yard');
const FILE = 'demo-yard.sqlite';

/** Gives a data folder the demo yard as it is some seconds after it was made, with every board judged and forecast. */
export const giveDemoYard = (dataDir: string): void => copyFileSync(join(folder, FILE), join(dataDir, FILE));

/** Whether it was made on this day, by the app as it is: its readings are of the days before today. */
function isFresh(): boolean {
  const madeAt = statSync(join(folder, FILE), { throwIfNoEntry: false })?.mtime;
  if (madeAt?.toDateString() !== new Date().toDateString()) return false;
  return ['electron', 'shared-core', 'seeds'].every((sources) =>
    readdirSync(join(root, sources), { recursive: true, encoding: 'utf8' }).every(
      (file) => statSync(join(root, sources, file)).mtime < madeAt,
    ),
  );
}

/** Makes that demo yard, once for all browser tests: its forecasts take seconds, which each of them would wait for. */
export default async function makeReadyDemo(): Promise<void> {
  if (isFresh()) return;
  const making = `${folder}-making`;
  rmSync(making, { recursive: true, force: true });
  mkdirSync(making, { recursive: true });
  const app = createApp({ dataDir: making, links: noMeter, threads: threadSources, forecastAfterMs: 0 });
  await openWindow(app).command('yard.openDemo', {});
  const disk = new Database(join(making, FILE), { readonly: true });
  const due = disk
    .prepare('SELECT (SELECT count(*) FROM outlook) = 0 OR EXISTS (SELECT 1 FROM outlook_due)')
    .pluck();
  while (due.get() === 1) await pause(100);
  disk.close();
  await app.close();
  rmSync(folder, { recursive: true, force: true });
  renameSync(making, folder);
}
