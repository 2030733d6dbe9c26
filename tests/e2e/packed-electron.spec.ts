/** What electron-builder packs, with a stand-in for Electron's binary */
import { existsSync, globSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { listPackage } from '@electron/asar';
import { FuseState, FuseV1Options, getCurrentFuseWire } from '@electron/fuses';
import { expect, test } from '@playwright/test';
import { APP_FOLDER } from '../../electron/packing/builder-config.ts';
import { packElectron } from '../../electron/packing/electron-app.ts';

const root = resolve(import.meta.dirname, '../..');

/** A program with the fuses that @electron/fuses looks for: its mark, their version, how many, and each. */
function standInForElectron(): string {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-electron-'));
  mkdirSync(join(folder, 'resources'));
  const fuses = Buffer.from('\u0001\u0009101011000');
  const mark = Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX');
  writeFileSync(join(folder, 'electron'), Buffer.concat([mark, fuses]), { mode: 0o755 });
  for (const file of ['version', 'LICENSE', 'LICENSES.chromium.html'])
    writeFileSync(join(folder, file), file);
  return folder;
}

test('the archive has every file of the app, native parts lie beside it, and the fuses are set', async () => {
  // It reads and writes some 2,000 files, on a disk that others use.
  test.setTimeout(300_000);
  test.skip(process.platform !== 'linux', 'the stand-in is laid out as on Linux');
  await packElectron(root, { electronDist: standInForElectron(), onlyFolder: true });
  const made = join(root, 'dist/electron/linux-unpacked');
  const archive = join(made, 'resources/app.asar');
  const listed = new Set(listPackage(archive, { isPack: false }));
  const files = globSync('**/*', { cwd: join(root, APP_FOLDER), withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name).slice(join(root, APP_FOLDER).length));
  expect(files.length).toBeGreaterThan(1000);
  expect(files.filter((file) => !listed.has(file))).toEqual([]);
  const natives = files.filter((file) => file.endsWith('.node'));
  expect(natives.some((file) => file.includes('better-sqlite3'))).toBe(true);
  expect(natives.filter((file) => !existsSync(join(`${archive}.unpacked`, file)))).toEqual([]);
  expect([...listed].filter((file) => /\/node_modules\/(react|electron|vite)\//.test(file))).toEqual([]);
  expect(readFileSync(join(root, 'dist/electron-resources/icon.png')).subarray(1, 4).toString()).toBe('PNG');

  const fuses = await getCurrentFuseWire(join(made, 'pintally'));
  for (const [fuse, state] of [
    [FuseV1Options.RunAsNode, FuseState.DISABLE],
    [FuseV1Options.EnableNodeOptionsEnvironmentVariable, FuseState.DISABLE],
    [FuseV1Options.EnableNodeCliInspectArguments, FuseState.DISABLE],
    [FuseV1Options.EnableEmbeddedAsarIntegrityValidation, FuseState.ENABLE],
    [FuseV1Options.OnlyLoadAppFromAsar, FuseState.ENABLE],
  ] as const) {
    expect(fuses[fuse], FuseV1Options[fuse]).toBe(state);
  }
});
