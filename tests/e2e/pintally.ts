import { spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { test as base, type Page } from '@playwright/test';
import { addressOf } from '../address-of.ts';
import { giveDemoYard } from './ready-demo.ts';
import { watchRequests } from './unanswered.ts';

const root = resolve(import.meta.dirname, '../..');
const newDataDir = (): string => mkdtempSync(join(tmpdir(), 'pintally-e2e-'));

export interface RunningPintally {
  page: Page;
  dataDir: string;
  /** The host does nothing for so long, as on a busy computer. */
  stall(ms: number): void;
}

/**
 * Starts the built loopback host on an empty data folder and opens its window, as `npm start` does where there is no
 * Electron. `nodeOptions` reach the host's child processes: the Bluetooth tests put the emulated radio in through it.
 */
export async function startPintally(
  page: Page,
  { dataDir = newDataDir(), env = {} }: { dataDir?: string; env?: NodeJS.ProcessEnv } = {},
): Promise<RunningPintally & { stop(): Promise<void> }> {
  const host = spawn(process.execPath, [join(root, 'out/main/loopback.js')], {
    env: { ...process.env, ...env, PINTALLY_DATA: dataDir },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  // Where a test fails on the way, its host would go on and slow the others down.
  process.once('exit', () => host.kill());
  watchRequests(page);
  await page.goto(await addressOf(host));
  // The start link's page takes the ticket and leads on to the window.
  await page.waitForURL(({ pathname }) => pathname === '/');
  // Nobody does anything before the window is let in: one that is loaded again before has lost its ticket.
  await page.waitForFunction(() => sessionStorage.length > 0);
  return {
    page,
    dataDir,
    stall: (ms) => {
      host.kill('SIGSTOP');
      setTimeout(() => host.kill('SIGCONT'), ms);
    },
    stop: async () => {
      host.kill('SIGTERM');
      await new Promise((resolve) => host.once('exit', resolve));
    },
  };
}

/** A test with Pintally running on an empty yard, with a demo yard that was made before. A fault on the page fails the test. */
export const test = base.extend<{ pintally: RunningPintally }>({
  pintally: async ({ page }, use) => {
    const faults: unknown[] = [];
    let isLeft = false;
    page.on('pageerror', (error) => faults.push(error));
    page.on('console', (message) => {
      // Chromium blames the next page where one is left while its icon is on its way. A missing icon is a fault.
      const said = `${message.text()} ${message.location().url}`;
      const isLateIcon = /origin 'null'|net::ERR_FAILED/.test(said) && said.includes('/assets/icon-');
      if (message.type() === 'error' && !isLateIcon && !isLeft) faults.push(message.text());
    });
    const dataDir = newDataDir();
    giveDemoYard(dataDir);
    const running = await startPintally(page, { dataDir });
    await use(running);
    // Everything said before this answer has arrived. What the left page still asks for is nobody's fault.
    await page.evaluate(() => document.readyState);
    isLeft = true;
    // The window goes first: one that is left open would rightly complain that its machine is gone.
    await page.goto('about:blank');
    await running.stop();
    if (faults.length > 0) throw new Error(`Faults on the page:\n${faults.join('\n')}`);
  },
});
