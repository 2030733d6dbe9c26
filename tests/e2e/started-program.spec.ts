/** What drives the packed app where Electron's binary can be had, tried on Chromium: it takes the same switch. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from '@playwright/test';
import { addressOf } from '../address-of.ts';
import { startProgram } from './started-program.ts';
import { probeDemoBoard } from './walk.ts';

const root = resolve(import.meta.dirname, '../..');

test('a started program is driven by its debugging port, and ends when it is stopped', async () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-e2e-'));
  const host = spawn(process.execPath, [join(root, 'out/main/loopback.js')], {
    env: { ...process.env, PINTALLY_DATA: dataDir },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  process.once('exit', () => host.kill());
  const profile = `--user-data-dir=${join(dataDir, 'chromium')}`;
  const { page, stop } = await startProgram('/usr/bin/chromium', {
    args: ['--headless', '--no-sandbox', '--disable-gpu', '--lang=en-US', profile, await addressOf(host)],
  });
  await probeDemoBoard(page);
  expect(await stop()).toBe(0);
  host.kill('SIGTERM');
  await once(host, 'exit');
});

test('a program that ends before it can be driven says why', async () => {
  // Node knows no such switch, and says so.
  await expect(startProgram(process.execPath)).rejects.toThrow(/ended with 9:\n.*bad option/);
});
