/**
 * How soon a board's forecast is on screen: from its address until the window shows when the board is likely ready in
 * each place, and has time for a press. Of the boards of the demo yard, each opened from the list, for the first time. Needs
 * Debian's chromium. Run it with
 *
 *     npx node tests/bench/board-shown.bench.ts [boards, 40]
 *
 * Bare is what the browser takes to show the same screen once it is there as HTML.
 */
import { execSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { chromium } from '@playwright/test';
import Database from 'better-sqlite3';
import { english } from '../../shared-core/words/en/index.ts';
import { addressOf } from '../address-of.ts';
import makeReadyDemo, { giveDemoYard } from '../e2e/ready-demo.ts';
import { openDemoYard } from '../e2e/walk.ts';
import { figure } from './figure.ts';

const BOARDS = Number(process.argv[2] ?? 40);
const GOAL_MS = 300;
/** Until code is compiled, in the window and in the thread that forecasts. */
const WARM = 4;

const root = resolve(import.meta.dirname, '../..');
execSync('npm run --silent build', { cwd: root, stdio: 'inherit' });
await makeReadyDemo();
const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
giveDemoYard(dataDir);
const disk = new Database(join(dataDir, 'demo-yard.sqlite'), { readonly: true });
const boards = disk
  .prepare<[number], { id: number; code: string }>(
    `SELECT board.id, code FROM board JOIN outlook ON outlook.board_id = board.id
     WHERE archived_at IS NULL AND latest_round_id IS NOT NULL ORDER BY board.id LIMIT ?`,
  )
  .all(WARM + BOARDS);
disk.close();
const host = spawn(process.execPath, [join(root, 'out/main/loopback.js')], {
  env: { ...process.env, PINTALLY_DATA: dataDir },
  stdio: ['ignore', 'pipe', 'inherit'],
});
process.once('exit', () => host.kill());
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 860 }, locale: 'en-US' });
  await page.goto(await addressOf(host));
  await page.waitForURL(({ pathname }) => pathname === '/');
  await openDemoYard(page);
  const shown: number[] = [];
  for (const { id, code } of boards) {
    await page.goto(`${new URL(page.url()).origin}/#/boards`);
    await page.getByRole('table').first().waitFor({ timeout: 60_000 });
    // What the list asks for is answered by then.
    await pause(500);
    shown.push(
      await page.evaluate(
        async ({ id, code, heading }) => {
          const began = performance.now();
          location.hash = `#/boards/${id}`;
          const isShown = (): boolean =>
            document.querySelector('h1')?.textContent === code &&
            document.querySelector('main .loading') === null &&
            [...document.querySelectorAll('main h2')].some((each) => each.textContent === heading);
          while (!isShown()) await new Promise(requestAnimationFrame);
          await new Promise((resolve) => setTimeout(resolve));
          return performance.now() - began;
        },
        { id, code, heading: english['forecast.places'] },
      ),
    );
  }
  const bareMs = await page.evaluate(async () => {
    const main = document.querySelector('main')!;
    const screen = main.innerHTML;
    main.textContent = '';
    await new Promise(requestAnimationFrame);
    const began = performance.now();
    main.innerHTML = screen;
    await new Promise(requestAnimationFrame);
    await new Promise((resolve) => setTimeout(resolve));
    return performance.now() - began;
  });
  const sorted = shown.slice(WARM).toSorted((a, b) => a - b);
  console.log(
    `the first ${shown[0]!.toFixed(0)} ms, p50 ${sorted[Math.floor(0.5 * sorted.length)]!.toFixed(0)} ms`,
  );
  figure({
    what: 'a board’s forecast on screen, p95',
    value: sorted[Math.floor(0.95 * sorted.length)]!,
    unit: 'ms',
    goal: { most: GOAL_MS },
    bare: bareMs,
    missesBecause:
      'of a board that is the first of its log, all its siblings are prepared before its forecast',
  });
} finally {
  await browser.close();
  host.kill('SIGTERM');
  rmSync(dataDir, { recursive: true, force: true });
}
