/**
 * `npm start`: builds where a source is newer than the build, then opens the Electron window, or serves the same app on loopback where Electron cannot run.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { isBuilt } from './built-from.ts';
import { dataDir } from './data-dir.ts';
import { serveInBrowser, showRunning } from './loopback-window.ts';
import { ensureNativeSocket, type Runtime, reportNotReady } from './meter/native-socket.ts';

const root = resolve(import.meta.dirname, '..');
const electronDir = join(root, 'node_modules', 'electron');

if (await showRunning(dataDir())) process.exit(0);

if (!isBuilt(root)) {
  const built = spawnSync('npm run --silent build', { cwd: root, stdio: 'inherit', shell: true });
  if (built.status !== 0) process.exit(built.status ?? 1);
}

const whyNot = electronProblem();
if (whyNot === null) {
  await prepareBluetooth({ execPath: electronBinary(), electronVersion: electronVersion() });
  openElectron();
} else {
  console.log(`No Electron window: ${whyNot}. Serving the same app on this machine only.`);
  await prepareBluetooth({ execPath: process.execPath, electronVersion: null });
  serveInBrowser(join(root, 'out/main/loopback.js'));
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
