/** The app as `npm run pack:electron` packed it, where it could. The workflow Package names its program. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from '@playwright/test';
import { startProgram } from './started-program.ts';
import { expectClosedWindow, probeDemoBoard } from './walk.ts';

const program = process.env.PINTALLY_PACKED;

test('the packed app opens closed to the outside, saves a reading and ends when it is closed', async () => {
  test.skip(program === undefined, 'PINTALLY_PACKED names no packed app');
  const { page, stop } = await startProgram(resolve(program!), {
    args: ['--lang=en-US'],
    env: { PINTALLY_DATA: mkdtempSync(join(tmpdir(), 'pintally-electron-')) },
  });
  await expect(page.getByRole('navigation')).toBeVisible();
  await expectClosedWindow(page);
  await probeDemoBoard(page);
  expect(await stop()).toBe(0);
});
