import { spawn } from 'node:child_process';
import { constants } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import { runningHost } from './running-host.ts';
import { startPageFolder, writeStartPage } from './start-page.ts';

/** How long a browser may take to open the start page. */
const OPENING_MS = 60_000;
const LOOK_EVERY_MS = 250;

/**
 * Opens another window of the host that already serves a data folder: it has the yard.
 * @returns  whether there is one
 */
export async function showRunning(folder: string): Promise<boolean> {
  const running = await runningHost(folder);
  if (running === null) return false;
  const { startLink } = running;
  console.log(`Pintally is already running: ${startLink}`);
  console.log('The address works once.');
  const browser = browserCommand();
  if (browser === null) return true;
  const page = writeStartPage(startLink, startPageFolder(folder));
  openBrowser(browser, page.file);
  for (let waitedMs = 0; waitedMs < OPENING_MS; waitedMs += LOOK_EVERY_MS) {
    await setTimeout(LOOK_EVERY_MS);
    if ((await runningHost(folder))?.startLink !== startLink) break;
  }
  page.remove();
  return true;
}

/**
 * Serves the app on this machine, and opens its window in the browser. This process ends with the host.
 * @param hostScript  `loopback.js` as it was built
 */
export function serveInBrowser(hostScript: string): void {
  const browser = browserCommand();
  const host = spawn(process.execPath, [hostScript], {
    stdio: ['inherit', 'inherit', 'inherit', ...(browser === null ? [] : (['ipc'] as const))],
  });
  host.on('message', ({ startPage }: { startPage: string }) => {
    if (browser !== null) openBrowser(browser, startPage);
  });
  // A shell gives a program that a signal ended this number, too.
  host.on('exit', (code, signal) => process.exit(code ?? 128 + constants.signals[signal!]));
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => host.kill(signal));
}

/** What opens a file in the default browser; null where there is no display for one. */
function browserCommand(): string | null {
  if (process.platform === 'darwin') return 'open';
  if (process.platform === 'win32') return 'explorer';
  return process.env.DISPLAY || process.env.WAYLAND_DISPLAY ? 'xdg-open' : null;
}

/** Where it does not open, the printed address is enough. */
function openBrowser(command: string, startPage: string): void {
  spawn(command, [startPage], { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}
