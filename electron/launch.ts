/**
 * `npm start`: builds, then opens the Electron window, or serves the same app on loopback where Electron cannot run.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { dataDir } from './data-dir.ts';
import { ensureNativeSocket, type Runtime, reportNotReady } from './meter/native-socket.ts';
import { type RunningHost, runningHost } from './running-host.ts';
import { startPageFolder, writeStartPage } from './start-page.ts';

/** How long a browser may take to open the start page. */
const OPENING_MS = 60_000;
const LOOK_EVERY_MS = 250;

const root = resolve(import.meta.dirname, '..');
const electronDir = join(root, 'node_modules', 'electron');

const folder = dataDir();
const running = await runningHost(folder);
if (running !== null) {
  await openRunning(running);
  process.exit(0);
}

const built = spawnSync('npm run --silent build', { cwd: root, stdio: 'inherit', shell: true });
if (built.status !== 0) process.exit(built.status ?? 1);

const whyNot = electronProblem();
if (whyNot === null) {
  await prepareBluetooth({ execPath: electronBinary(), electronVersion: electronVersion() });
  openElectron();
} else {
  console.log(`No Electron window: ${whyNot}. Serving the same app on this machine only.`);
  await prepareBluetooth({ execPath: process.execPath, electronVersion: null });
  serveLoopback();
}

/** Opens another window of the host that is already running: it has the yard. */
async function openRunning({ startLink }: RunningHost): Promise<void> {
  console.log(`Pintally is already running: ${startLink}`);
  console.log('The address works once.');
  const browser = browserCommand();
  if (browser === null) return;
  const page = writeStartPage(startLink, startPageFolder(folder));
  openBrowser(browser, page.file);
  for (let waitedMs = 0; waitedMs < OPENING_MS; waitedMs += LOOK_EVERY_MS) {
    await setTimeout(LOOK_EVERY_MS);
    if ((await runningHost(folder))?.startLink !== startLink) break;
  }
  page.remove();
}

/** Where Linux has a Bluetooth adapter, makes noble's native part fit the runtime, and says so where it cannot. */
async function prepareBluetooth(runtime: Runtime): Promise<void> {
  const adapters = '/sys/class/bluetooth';
  if (process.platform !== 'linux' || !existsSync(adapters) || readdirSync(adapters).length === 0) return;
  const state = await ensureNativeSocket(runtime);
  if (!state.ready) reportNotReady();
}

function electronBinary(): string {
  return join(electronDir, 'dist', readFileSync(join(electronDir, 'path.txt'), 'utf8'));
}

function electronVersion(): string {
  return JSON.parse(readFileSync(join(electronDir, 'package.json'), 'utf8')).version;
}

/** Why the Electron window cannot open here, or null when it can. Fetches Electron's binary on the first start. */
function electronProblem(): string | null {
  const headless = process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY;
  if (headless) return 'there is no display';
  if (process.platform === 'linux' && process.getuid?.() === 0)
    return 'it does not run as root with its sandbox on';
  if (!existsSync(join(electronDir, 'path.txt'))) {
    console.log("Fetching Electron's binary (once) …");
    const fetched = spawnSync(process.execPath, [join(electronDir, 'install.js')], {
      stdio: 'pipe',
      timeout: 300_000,
    });
    if (fetched.status !== 0) return 'its binary could not be fetched';
  }
  return null;
}

function openElectron(): void {
  spawn(electronBinary(), [root], { stdio: 'inherit' }).on('exit', (code) => process.exit(code ?? 0));
}

function serveLoopback(): void {
  const browser = browserCommand();
  const host = spawn(process.execPath, [join(root, 'out/main/loopback.js')], {
    stdio: ['inherit', 'inherit', 'inherit', ...(browser === null ? [] : (['ipc'] as const))],
  });
  host.on('message', ({ startPage }: { startPage: string }) => {
    if (browser !== null) openBrowser(browser, startPage);
  });
  host.on('exit', (code) => process.exit(code ?? 0));
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
