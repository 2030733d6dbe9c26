/**
 * On Linux noble reaches the adapter through `@abandonware/bluetooth-hci-socket`, a native module that npm builds for
 * whatever Node runs npm, and that loads in no other version. This checks whether it loads in a given runtime and
 * builds it for that one if not. macOS and Windows use noble's own Node-API binaries, which need none of this.
 *
 * Run by hand: `npx node electron/meter/native-socket.ts`.
 */
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { nodeCache, nodePackage, nodePackageFolders } from '../node-package.ts';

const run = promisify(execFile);
const require = createRequire(import.meta.url);
const moduleName = '@abandonware/bluetooth-hci-socket';

/** The Node or Electron binary that will run the radio process. */
export interface Runtime {
  execPath: string;
  /** Version of Electron when `execPath` is one, such as "45.5.0"; null for Node. */
  electronVersion: string | null;
}

export type NativeSocketState = { ready: true; built: boolean } | { ready: false; detail: string };

/** Whether the native socket loads in a runtime: it is loaded there, in a separate process. */
export async function nativeSocketLoads(runtime: Runtime): Promise<{ loads: boolean; detail: string }> {
  if (process.platform !== 'linux') return { loads: true, detail: '' };
  try {
    await runIn(runtime, ['-e', `require(${JSON.stringify(require.resolve(moduleName))})`]);
    return { loads: true, detail: '' };
  } catch (error) {
    return { loads: false, detail: detailOf(error) };
  }
}

/**
 * Makes the native socket load in a runtime, building it if need be (some seconds; needs a C++ compiler, make and
 * Python, and Node's headers, which the `node` package ships or npm fetches).
 */
export async function ensureNativeSocket(runtime: Runtime): Promise<NativeSocketState> {
  const before = await nativeSocketLoads(runtime);
  if (before.loads) return { ready: true, built: false };
  let detail = before.detail;
  try {
    await build(runtime);
    const after = await nativeSocketLoads(runtime);
    if (after.loads) return { ready: true, built: true };
    detail = after.detail;
  } catch (error) {
    detail = detailOf(error);
  }
  return { ready: false, detail };
}

/** For whoever started the app at a terminal. */
export function reportNotReady(): void {
  console.error(
    'Bluetooth works only where the Bluetooth service (BlueZ) runs: the part without it could not be built for this Node. Typed readings still work. To build it, install a C++ compiler, make and Python 3, then start Pintally again.',
  );
}

async function build(runtime: Runtime): Promise<void> {
  const folder = dirname(require.resolve(`${moduleName}/package.json`));
  const builder = join(dirname(require.resolve('@mapbox/node-pre-gyp/package.json')), 'bin', 'node-pre-gyp');
  const settings: Record<string, string> =
    runtime.electronVersion === null
      ? { nodedir: await headersOf(runtime) }
      : { runtime: 'electron', target: runtime.electronVersion, disturl: 'https://electronjs.org/headers' };
  // Within an npm script the environment holds npm's own settings, and node-gyp lets those win over arguments: a
  // `nodedir` there would build for another version. So ours go both ways, and npm's are left out.
  const env = Object.fromEntries(
    Object.entries(process.env).filter(
      ([name]) => !/^npm_config_(nodedir|runtime|target|dist_?url)$/i.test(name),
    ),
  );
  for (const [name, value] of Object.entries(settings)) env[`npm_config_${name}`] = value;
  // Built by the very runtime that will load it, whichever Node is first on the path.
  await runIn(
    runtime,
    [
      builder,
      'install',
      '--build-from-source',
      ...Object.entries(settings).map(([name, value]) => `--${name}=${value}`),
    ],
    { cwd: folder, env },
  );
}

/** A folder with Node's headers for a Node runtime: beside the binary, in the `node` package, or fetched through npm. */
export async function headersOf(runtime: Runtime): Promise<string> {
  const { stdout } = await runIn(runtime, ['-p', 'process.version']);
  const version = stdout.trim().slice(1);
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const cache = nodeCache(root, version);
  const fetched = join(cache, 'node_modules', nodePackage);
  const folders = [
    join(dirname(runtime.execPath), '..'),
    join(dirname(runtime.execPath), '..', 'node_modules', nodePackage),
    ...nodePackageFolders(root, version),
  ];
  const found = folders.find((folder) => hasHeaders(folder, version));
  if (found !== undefined) return found;
  mkdirSync(cache, { recursive: true });
  await run('npm', [
    'install',
    '--no-save',
    '--ignore-scripts',
    '--prefix',
    cache,
    `${nodePackage}@${version}`,
  ]);
  if (!hasHeaders(fetched, version)) throw new Error(`npm brought no headers for Node ${version}`);
  return fetched;
}

function hasHeaders(folder: string, version: string): boolean {
  const file = join(folder, 'include', 'node', 'node_version.h');
  if (!existsSync(file)) return false;
  const text = readFileSync(file, 'utf8');
  const parts = ['MAJOR', 'MINOR', 'PATCH'].map(
    (part) => new RegExp(`#define NODE_${part}_VERSION (\\d+)`).exec(text)?.[1],
  );
  return parts.join('.') === version;
}

function runIn(
  runtime: Runtime,
  args: string[],
  { cwd, env = process.env }: { cwd?: string; env?: NodeJS.ProcessEnv } = {},
) {
  return run(runtime.execPath, args, {
    env: { ...env, ...(runtime.electronVersion !== null && { ELECTRON_RUN_AS_NODE: '1' }) },
    ...(cwd !== undefined && { cwd }),
    maxBuffer: 64 * 2 ** 20,
  });
}

function detailOf(error: unknown): string {
  const { stderr, message } = error as { stderr?: string; message: string };
  return (stderr || message).trim().slice(-4000);
}

if (import.meta.main) {
  const state = await ensureNativeSocket({ execPath: process.execPath, electronVersion: null });
  if (state.ready) {
    console.log(`Bluetooth socket: ${state.built ? 'built for' : 'loads in'} Node ${process.version}.`);
  } else {
    reportNotReady();
    console.error(state.detail);
    process.exitCode = 1;
  }
}
