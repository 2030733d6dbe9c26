import { type ChildProcess, fork, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { test as base, type Page } from '@playwright/test';
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
  await enter(page, await addressOf(host));
  return {
    page,
    dataDir,
    stall: stallOf(host),
    stop: async () => {
      host.kill('SIGTERM');
      await new Promise((resolve) => host.once('exit', resolve));
    },
  };
}

async function enter(page: Page, address: string): Promise<void> {
  watchRequests(page);
  await page.goto(address);
  // The start link's page takes the ticket and leads on to the window.
  await page.waitForURL(({ pathname }) => pathname === '/');
}

const stallOf = (host: ChildProcess) => (ms: number) => {
  host.kill('SIGSTOP');
  setTimeout(() => host.kill('SIGCONT'), ms);
};

function addressOf(host: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = '';
    host.stdout?.on('data', (data) => {
      printed += data;
      const address = /http:\/\/127\.0\.0\.1:\S+/.exec(printed)?.[0];
      if (address !== undefined) resolve(address);
    });
    host.once('exit', (code) => reject(new Error(`Pintally ended with ${code} before it gave its address.`)));
  });
}

/** A host that opens one data folder after the other; see `kept-host.ts`. */
interface KeptHost {
  stall: RunningPintally['stall'];
  /** @returns the address that opens the window */
  open(dataDir: string): Promise<string>;
  close(): Promise<void>;
}

/** A test with Pintally running on an empty yard, with a demo yard that was made before. A fault on the page fails the test. */
export const test = base.extend<{ pintally: RunningPintally }, { keptHost: KeptHost }>({
  keptHost: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of what a fixture needs
    async ({}, use) => {
      const host = fork(join(import.meta.dirname, 'kept-host.ts'), { execArgv: [] });
      const ask = async (dataDir: string | null): Promise<string> => {
        const waits = new AbortController();
        const answered = once(host, 'message', waits);
        const ended = once(host, 'exit', waits).then(([code]) => {
          throw new Error(`Pintally ended with ${code}.`);
        });
        host.send(dataDir as string);
        const [answer] = await Promise.race([answered, ended]);
        waits.abort();
        return answer;
      };
      await use({
        stall: stallOf(host),
        open: ask,
        close: async () => void (await ask(null)),
      });
      host.disconnect();
    },
    { scope: 'worker' },
  ],
  pintally: async ({ page, keptHost }, use) => {
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
    await enter(page, await keptHost.open(dataDir));
    await use({ page, dataDir, stall: keptHost.stall });
    // Everything said before this answer has arrived. What the left page still asks for is nobody's fault.
    await page.evaluate(() => document.readyState);
    isLeft = true;
    // The window goes first: one that is left open would rightly complain that its machine is gone.
    await page.goto('about:blank');
    await keptHost.close();
    if (faults.length > 0) throw new Error(`Faults on the page:\n${faults.join('\n')}`);
  },
});
