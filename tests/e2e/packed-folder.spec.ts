/** The folder that `npm run pack:folder` makes: everything that is needed is in it, and nothing else. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, globSync, mkdtempSync, renameSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from '@playwright/test';
import { nodeFileTrace } from '@vercel/nft';
import { packFolder } from '../../electron/packing/packed-folder.ts';
import { startScript } from '../../electron/packing/start-script.ts';
import { addressOf } from '../address-of.ts';
import { giveDemoYard } from './ready-demo.ts';
import { openDemoYard } from './walk.ts';

const root = resolve(import.meta.dirname, '../..');
test.describe.configure({ mode: 'serial' });
let packed = '';
const folders = (): string[] => globSync('{,**/}', { cwd: packed }).map((folder) => join(packed, folder));
test.beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-packed-'));
  await packFolder(root, join(folder, 'made here'));
  packed = join(folder, 'moved to another place');
  renameSync(join(folder, 'made here'), packed);
});

const filesOf = (folder: string): string[] =>
  globSync('**/*', { cwd: folder, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name).slice(folder.length + 1))
    .sort();

test('starts without a path, npm or a right to write, shows the first screen and makes a PDF', async ({
  page,
}) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-e2e-'));
  giveDemoYard(dataDir);
  // Root may write there all the same: then what Node compiles is kept beside the build.
  const state = () =>
    filesOf(packed)
      .filter((file) => !file.startsWith('app/out/compile-cache/'))
      .map((file) => [file, statSync(join(packed, file)).mtimeMs]);
  const before = state();
  // What was built here is in it, but not what was compiled here.
  expect(filesOf(packed).filter((file) => /^app\/out\/(?!main|preload|renderer)/.test(file))).toEqual([]);
  for (const folder of folders()) chmodSync(folder, 0o555);
  const host = spawn(join(packed, startScript(process.platform).name), {
    cwd: '/',
    env: { PATH: '', HOME: dataDir, PINTALLY_DATA: dataDir },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  process.once('exit', () => host.kill());
  await page.goto(await addressOf(host));
  await openDemoYard(page);
  // The fonts, the libraries and the thread of PDFs are found by name.
  await page.evaluate(() => (location.hash = '#/report/1?kind=passport'));
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  expect(statSync(await (await download).path()).size).toBeGreaterThan(10_000);
  await page.goto('about:blank');
  host.kill('SIGTERM');
  expect(await once(host, 'exit')).toEqual([0, null]);
  expect(state()).toEqual(before);
  for (const folder of folders()) chmodSync(folder, 0o755);
});

test('has every file that the built app can load, as another tool finds them', async () => {
  // https://github.com/vercel/nft follows imports and requires as Node resolves them.
  const { fileList } = await nodeFileTrace(
    globSync('out/main/*.js', { cwd: root }).map((file) => join(root, file)),
    {
      base: '/',
      conditions: ['node', 'import'],
      ignore: ['**/node_modules/electron/**'],
      // Without these it follows code alone. What is found by name is in the test above.
      analysis: { emitGlobs: false, computeFileReferences: false, evaluatePureExpressions: false },
    },
  );
  const files = [...fileList].map((file) => /(?:^|\/)((?:out|node_modules)\/.*)$/.exec(file)?.[1]);
  expect(files.filter((file) => file?.startsWith('node_modules/')).length).toBeGreaterThan(100);
  expect(files.filter((file) => file !== undefined && !existsSync(join(packed, 'app', file)))).toEqual([]);
});

test('has no sources, maps, tests or tools of ours, and no more fonts and native parts than it can use', () => {
  const files = filesOf(packed);
  expect(files.filter((file) => /\.(map|tsx?|mts|cts)$|(^|\/)tests?\//.test(file))).toEqual([]);
  for (const name of ['typescript', 'vite', 'electron', 'node-gyp', '@playwright', 'react']) {
    expect(existsSync(join(packed, 'app/node_modules', name)), name).toBe(false);
  }
  const { platform, arch } = process;
  const natives = files.filter((file) => file.endsWith('.node') && file.includes('prebuilds/'));
  expect(natives).toEqual([`app/node_modules/better-sqlite3/prebuilds/${platform}-${arch}.node`]);
  const bytes = files.reduce((sum, file) => sum + statSync(join(packed, file)).size, 0);
  // Node itself is 127 MB of it.
  expect(bytes / 1e6).toBeLessThan(175);
});
