/** How the window is let in: by the start link once, from another tab, and not by the address alone. */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect } from '@playwright/test';
import { WebSocketServer } from 'ws';
import { startPintally, test } from './pintally.ts';
import { openDemoYard, picture } from './walk.ts';

test('the start link opens the window; its address has no secret, and a reload works', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  expect(new URL(page.url()).search).toBe('');
  expect(await page.context().cookies()).toEqual([]);
  const secrets = await page.evaluate(() =>
    Object.values(sessionStorage)
      .join(' ')
      .match(/[0-9a-f]{64}/g),
  );
  expect(secrets).toHaveLength(2);
  for (const secret of secrets ?? []) expect(page.url()).not.toContain(secret);
  await page.reload();
  await expect(page.getByText('Demo yard: invented data.')).toBeVisible();
});

test('the page that the browser opens leads to the window, and is removed', async ({ page }) => {
  const host = fork(resolve(import.meta.dirname, '../../out/main/loopback.js'), {
    env: { ...process.env, PINTALLY_DATA: mkdtempSync(join(tmpdir(), 'pintally-e2e-')) },
    silent: true,
  });
  const [{ startPage }] = (await once(host, 'message')) as [{ startPage: string }];
  await page.goto(pathToFileURL(startPage).href);
  await openDemoYard(page);
  expect(existsSync(dirname(startPage))).toBe(false);
  await page.goto('about:blank');
  host.kill('SIGTERM');
  await once(host, 'exit');
});

test('a second tab opens by the address alone, a browser of its own does not', async ({
  pintally: { page },
  browser,
}) => {
  await openDemoYard(page);
  const second = await page.context().newPage();
  await second.goto(page.url());
  await expect(second.getByText('Demo yard: invented data.')).toBeVisible();
  await second.close();

  const other = await browser.newContext({ locale: 'en-CA', viewport: { width: 800, height: 600 } });
  const stranger = await other.newPage();
  await stranger.goto(page.url());
  await expect(stranger.getByRole('heading', { name: 'Use the start link to open Pintally' })).toBeVisible();
  await expect(stranger.getByText('If not, restart Pintally.')).toBeVisible();
  await picture(stranger, 'locked');
  await other.close();
});

test('a window whose host is gone says so, and trusts no other program at its address', async ({ page }) => {
  const { stop } = await startPintally(page);
  await openDemoYard(page);
  const port = Number(new URL(page.url()).port);
  await stop();
  await expect(page.getByRole('alert')).toContainText('Pintally is not responding.');
  await picture(page, 'host-gone');

  const other = new WebSocketServer({ host: '127.0.0.1', port });
  const session = { key: 'a'.repeat(64), hostMark: 'b'.repeat(64) };
  other.on('connection', (socket) => socket.on('message', () => socket.send(JSON.stringify({ session }))));
  await expect(page.getByRole('alert')).toContainText('Another program answers at this address.');
  await picture(page, 'host-foreign');
  await page.goto('about:blank');
  other.close();
});
