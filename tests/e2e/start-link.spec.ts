/** How the window is let in: by the start link once, from another tab, and not by the address alone. */
import { fork, spawn } from 'node:child_process';
import { on, once } from 'node:events';
import { existsSync, mkdtempSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as pause } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { expect } from '@playwright/test';
import { WebSocketServer } from 'ws';
import { startPintally, test } from './pintally.ts';
import { goTo, openDemoYard, picture, startRound } from './walk.ts';

const root = resolve(import.meta.dirname, '../..');

test('the start link opens the window; its address has no secret, and a reload works', {
  tag: '@core',
}, async ({ pintally: { page } }) => {
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
  const host = fork(join(root, 'out/main/loopback.js'), {
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
  await expect(
    stranger.getByText('If not, start Pintally again, or press Enter in its terminal.'),
  ).toBeVisible();
  await picture(stranger, 'locked');
  await other.close();
});

test('a window whose host is gone says so, and trusts no other program at its address', async ({ page }) => {
  const { stop } = await startPintally(page);
  await openDemoYard(page);
  const port = Number(new URL(page.url()).port);
  await stop();
  // A call that the host left unanswered may have an alert of its own.
  await expect(page.getByRole('alert').filter({ hasText: 'Pintally is not responding.' })).toBeVisible();
  await picture(page, 'host-gone');

  const other = new WebSocketServer({ host: '127.0.0.1', port });
  const session = { key: 'a'.repeat(64), hostMark: 'b'.repeat(64) };
  other.on('connection', (socket) => socket.on('message', () => socket.send(JSON.stringify({ session }))));
  await expect(
    page.getByRole('alert').filter({ hasText: 'Another program answers at this address.' }),
  ).toBeVisible();
  await picture(page, 'host-foreign');
  await page.goto('about:blank');
  other.close();
});

/** Pintally as `npm start` begins it, with what it prints and a way to press Enter. */
async function startHost(dataDir = mkdtempSync(join(tmpdir(), 'pintally-e2e-'))) {
  const host = spawn(process.execPath, [join(root, 'out/main/loopback.js')], {
    env: { ...process.env, PINTALLY_DATA: dataDir },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const links = on(createInterface(host.stdout), 'line')[Symbol.asyncIterator]();
  const nextLink = async (): Promise<string> => {
    const [line] = (await links.next()).value as [string];
    return /http:\S+/.exec(line)?.[0] ?? nextLink();
  };
  return {
    dataDir,
    link: await nextLink(),
    pressEnter: () => {
      host.stdin.write('\n');
      return nextLink();
    },
    /** @returns the exit code, and the signal that ended it */
    end: async (...signals: ('SIGINT' | 'SIGTERM' | 'SIGKILL')[]): Promise<unknown[]> => {
      const ended = once(host, 'exit');
      for (const signal of signals) {
        host.kill(signal);
        // Two that come at the same moment are one.
        await pause(20);
      }
      return ended;
    },
  };
}

test('after the last tab was closed, Enter in the terminal opens another', async ({ page }) => {
  const host = await startHost();
  await page.goto(host.link);
  await openDemoYard(page);
  await page.close();
  const again = await page.context().browser()!.newPage();
  await again.goto(await host.pressEnter());
  await expect(again.getByText('Demo yard: invented data.')).toBeVisible();
  await again.close();
  await host.end('SIGTERM');
});

test('stopped by a terminal, which reaches it twice, it closes its file as it should', async ({ page }) => {
  const host = await startHost();
  await page.goto(host.link);
  await openDemoYard(page);
  await page.goto('about:blank');
  expect(await host.end('SIGINT', 'SIGINT')).toEqual([0, null]);
  expect(readdirSync(host.dataDir).filter((file) => /-(wal|shm)$/.test(file))).toEqual([]);
});

test('a second start opens a window of the one that runs, and starts nothing', async ({ page }) => {
  const host = await startHost();
  await page.goto(host.link);
  await openDemoYard(page);
  const { DISPLAY: _, WAYLAND_DISPLAY: __, ...env } = process.env;
  const second = spawn(process.execPath, [join(root, 'electron/launch.ts')], {
    env: { ...env, PINTALLY_DATA: host.dataDir },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let printed = '';
  second.stdout.on('data', (data) => {
    printed += data;
  });
  expect(await once(second, 'close')).toEqual([0, null]);
  const other = await page.context().browser()!.newPage();
  await other.goto(/http:\S+/.exec(printed)?.[0] ?? '');
  await expect(other.getByText('Demo yard: invented data.')).toBeVisible();
  await other.close();
  await page.goto('about:blank');
  await host.end('SIGTERM');
});

test('killed in a round, everything goes on in the same window once Pintally runs again', {
  tag: '@core',
}, async ({ page }) => {
  const killed = await startHost();
  await page.goto(killed.link);
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  const field = page.getByLabel('Reading on the meter, %');
  await field.pressSequentially('12.4', { delay: 60 });
  await killed.end('SIGKILL');
  await expect(page.getByRole('alert')).toHaveCount(1);
  await expect(page.getByRole('alert')).toContainText('Pintally is not responding.');
  await expect(page.getByRole('button', { name: 'Save', exact: true })).toBeDisabled();
  await field.press('Enter');
  await expect(field).toHaveValue('12.4');
  await picture(page, 'host-killed-in-round');

  const again = await startHost(killed.dataDir);
  expect(new URL(again.link).port).toBe(new URL(killed.link).port);
  await expect(page.getByRole('alert').filter({ hasText: 'Pintally was restarted.' })).toBeVisible();
  const fresh = await page.context().newPage();
  await fresh.goto(again.link);
  // Pintally starts with the person's own yard. What was done in the demo yard is still there.
  await expect(fresh.getByRole('button', { name: 'Open the demo yard' })).toBeVisible();
  await expect(page.getByText('Your own yard is open now.')).toBeVisible();
  await fresh.getByRole('button', { name: 'Open the demo yard' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(field).toHaveValue('12.4');
  await field.press('Enter');
  await expect(field).toHaveValue('');
  await page.goto('about:blank');
  await fresh.goto('about:blank');
  await again.end('SIGTERM');
});

test('a screen that was not seen yet comes once Pintally runs again', async ({ page }) => {
  // As if Pintally ended before the window had brought it by itself.
  const notYet = /assets\/PlacesScreen/;
  await page.route(notYet, (route) => route.abort());
  const ended = await startHost();
  await page.goto(ended.link);
  await openDemoYard(page);
  await ended.end('SIGTERM');
  await expect(page.getByRole('alert')).toContainText('Pintally is not responding.');
  await goTo(page, 'Places');
  await expect(page.getByRole('main')).toHaveText('Loading …');
  await picture(page, 'screen-to-come');
  await page.unroute(notYet);

  const again = await startHost(ended.dataDir);
  const fresh = await page.context().newPage();
  await fresh.goto(again.link);
  await openDemoYard(fresh);
  await expect(page.getByRole('heading', { name: 'Places', level: 1 })).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await page.goto('about:blank');
  await fresh.goto('about:blank');
  await again.end('SIGTERM');
});

test('a screen that does not come says what to do', async ({ page }) => {
  const missing = /assets\/PlacesScreen/;
  await page.route(missing, (route) => route.fulfill({ status: 404 }));
  const host = await startHost();
  await page.goto(host.link);
  await openDemoYard(page);
  await goTo(page, 'Places');
  await expect(page.getByRole('alert')).toContainText('This screen could not be loaded.');
  await picture(page, 'screen-missing');
  await page.unroute(missing);
  await page.getByRole('button', { name: 'Reload' }).click();
  await expect(page.getByRole('heading', { name: 'Places', level: 1 })).toBeVisible();
  await page.goto('about:blank');
  await host.end('SIGTERM');
});
