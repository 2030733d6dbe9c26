import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron, expect, test } from '@playwright/test';
import { expectClosedWindow } from './walk.ts';

const root = resolve(import.meta.dirname, '../..');
const pathFile = join(root, 'node_modules/electron/path.txt');
const binary = existsSync(pathFile)
  ? join(root, 'node_modules/electron/dist', readFileSync(pathFile, 'utf8'))
  : null;

test('the Electron window opens on the same app, sandboxed and closed to the outside', async () => {
  test.skip(binary === null || !existsSync(binary), 'the Electron binary is not on this machine');
  const app = await _electron.launch({
    executablePath: binary as string,
    args: [root],
    env: {
      ...(process.env as Record<string, string>),
      PINTALLY_DATA: mkdtempSync(join(tmpdir(), 'pintally-electron-')),
    },
  });
  const page = await app.firstWindow();
  await expect(page.getByRole('navigation')).toBeVisible();
  await expectClosedWindow(page);
  await app.close();
});
