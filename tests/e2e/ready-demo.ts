import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';

const folder = resolve(import.meta.dirname, '../../artifacts/demo-yard');
const FILE = 'demo-yard.sqlite';

/** Gives a data folder the demo yard as it is some seconds after it was made, with every board judged and forecast. */
export const giveDemoYard = (dataDir: string): void => copyFileSync(join(folder, FILE), join(dataDir, FILE));

/** Makes that demo yard, once for all browser tests: its forecasts take seconds, which each of them would wait for. */
export default async function makeReadyDemo(): Promise<void> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const app = createApp({ dataDir: folder, links: noMeter, threads: threadSources, forecastAfterMs: 0 });
  await openWindow(app).command('yard.openDemo', {});
  const disk = new Database(join(folder, FILE), { readonly: true });
  const due = disk
    .prepare('SELECT (SELECT count(*) FROM outlook) = 0 OR EXISTS (SELECT 1 FROM outlook_due)')
    .pluck();
  while (due.get() === 1) await pause(100);
  disk.close();
  await app.close();
}
