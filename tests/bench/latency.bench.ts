/**
 * How old a live value is when it is drawn, and how long after it settled "saved" is drawn: over the emulated link, through
 * the built host, in Chromium; without other work, and while forecasts and comparisons of 1,000 boards run in the host.
 * Needs Debian's bluez-test-tools, gcc and chromium. Run:
 *
 *     npx node tests/bench/latency.bench.ts [part of the usual length, 1]
 *
 * Goals: a value is drawn after less than 25 ms (p50) and 40 ms (p99), and "saved" within 60 ms.
 *
 * A value's time begins when its packet is handed to the radio process (`arrivals.ts`). It ends once the frame with it is
 * painted: a task that follows the first animation frame after the change. Waiting for that frame, of which there are 60 a
 * second, is part of it. "On a screen" is when the frame after that begins: a 60 Hz screen shows the painted one from then on. Where
 * values come so fast that frames follow each other, that is half a frame and a whole one, 25 ms, for any page. `bare` is
 * what a page that only shows numbers from a web socket takes at the same rate, just before: where that is late, the
 * machine is busy with something else. All ends read the machine's monotonic
 * clock: Chromium says at which of its times the page began.
 */
import { execSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { chromium, type Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { WebSocketServer } from 'ws';
import { monotonicMs } from '../../electron/monotonic.ts';
import { unknownProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import { startSettling, step } from '../../shared-core/probing/readings/settle.ts';
import { addressOf } from '../address-of.ts';
import { noteArrivals } from '../ble/arrivals.ts';
import { EmulatedRadio } from '../ble/emulated-radio.ts';
import { connectWindow, type SocketWindow } from '../faults/socket-window.ts';
import { figure } from './figure.ts';
import { fillYard } from './filled-yard.ts';

const GOAL_MS = { p50: 25, p99: 40, saved: 60 };
const WAITS_FOR_A_CORE =
  'no task of the page takes more than 14 ms of the processor: it waits for one of two cores, which the host’s threads, Chromium’s processes, and the emulated radio share';
const PART = Number(process.argv[2] ?? 1);
const RATES = [
  { hz: 4, values: 120 },
  { hz: 10, values: 200 },
  { hz: 50, values: 500 },
];
/** With three spots each: 102 saves say something of the slowest in a hundred. A quarter of the usual length has all. */
const BOARDS_PUSHED = Math.max(1, Math.round(34 * Math.min(1, 4 * PART)));
const BOARDS = 2000;
/** How long all boards may be forecast first, so that nothing else is under way. */
const QUIET_WITHIN_MS = 400_000;
const SPOTS_A_BOARD = 3;

const root = resolve(import.meta.dirname, '../..');
execSync('npm run --silent build', { cwd: root, stdio: 'inherit' });
const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
const file = join(dataDir, 'yard.sqlite');
fillYard(file, BOARDS, 4, { name: 'Meter', profile: unknownProfile });

const radio = await EmulatedRadio.start();
/** What arrived, in its order. */
let arrived: { value: number; atMs: number }[] = [];
const h4Path = join(dataDir, 'h4');
const relay = await noteArrivals(h4Path, radio.env.H4_PATH, (value, atMs) => arrived.push({ value, atMs }));
const meter = await radio.startMeter({ name: 'Yard meter' });
meter.tell({ type: 'rate', hz: 0 });

const host = spawn(process.execPath, [join(root, 'out/main/loopback.js')], {
  env: { ...process.env, ...radio.env, H4_PATH: h4Path, PINTALLY_DATA: dataDir },
  stdio: ['ignore', 'pipe', 'inherit'],
});
process.once('exit', () => host.kill());
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
const context = await browser.newContext({ viewport: { width: 1280, height: 860 }, locale: 'en-US' });
try {
  const page = await context.newPage();
  await page.goto(await addressOf(host));
  await page.waitForURL(({ pathname }) => pathname === '/');
  await page.getByRole('navigation').first().waitFor();
  const origin = new URL(page.url()).origin;
  const key = await page.evaluate(() => JSON.parse(sessionStorage.getItem('pintally.session') ?? '').key);
  const { window: other } = await connectWindow(origin, { key });

  await page.goto(`${origin}/#/meter`);
  await page.getByRole('button', { name: 'Look for Bluetooth meters' }).click();
  await page.getByRole('button', { name: 'Connect Yard meter' }).click({ timeout: 20_000 });
  await page.getByRole('button', { name: 'Disconnect' }).waitFor({ timeout: 20_000 });
  const { id: roundId } = await other.command('rounds.start', { stackId: 2, woodTempC: 15 });
  await page.goto(`${origin}/#/round/${roundId}`);
  await page.getByText('Pins out').first().waitFor({ timeout: 20_000 });

  const clock = await clockOf(page);
  await watchValues(page);
  console.log(`commit of one row on this disk: ${commitMs().toFixed(1)} ms`);
  await untilQuiet();
  await measure('without other work', page, clock);
  const stopWork = keepBusy(other);
  await pause(2000);
  await measure('with other work', page, clock);
  console.log(await stopWork());
} finally {
  host.kill('SIGTERM');
  await browser.close();
  await radio.stop();
  relay.close();
  rmSync(dataDir, { recursive: true, force: true });
}

async function measure(what: string, page: Page, clock: number): Promise<void> {
  const bare = await bareOf(await context.newPage());
  await page.bringToFront();
  for (const { hz, values } of RATES) {
    const { painted, onScreen, drawn, sent } = await agesAt(page, clock, hz, Math.round(values * PART));
    const at = bare.get(hz)!;
    console.log(
      `${`${hz} values a second, ${what}`.padEnd(44)} p50 ${ms(painted.p50)}, p99 ${ms(painted.p99)}, most ${ms(painted.most)} ms; on a screen ${ms(onScreen.p50)}, ${ms(onScreen.p99)}; bare ${ms(at.p50)}, ${ms(at.p99)}; ${drawn} of ${sent} drawn as numbers, ${await traced(page)} of ${Math.min(sent, 240)} in the trace; load ${loadavg()[0]!.toFixed(1)}`,
    );
    for (const part of ['p50', 'p99'] as const)
      figure({
        what: `value drawn, ${hz} a second, ${what}, ${part}`,
        value: painted[part],
        unit: 'ms',
        goal: { most: GOAL_MS[part] },
        bare: at[part],
        missesBecause: WAITS_FOR_A_CORE,
      });
    await liftPins(page);
  }
  const saves = await savesOf(page, clock, SPOTS_A_BOARD * BOARDS_PUSHED);
  console.log(
    `${`"saved" ${what}`.padEnd(44)} p50 ${ms(saves.p50)}, p99 ${ms(saves.p99)}, most ${ms(saves.most)} ms of ${saves.count}; load ${loadavg()[0]!.toFixed(1)}`,
  );
  figure({
    what: `"saved" drawn, ${what}, p99`,
    value: saves.p99,
    unit: 'ms',
    goal: { most: GOAL_MS.saved },
    missesBecause: WAITS_FOR_A_CORE,
  });
}

/** Sends values that hop, so that they never settle, and takes the age of each that was drawn. */
async function agesAt(page: Page, clock: number, hz: number, count: number) {
  arrived = [];
  await page.evaluate(() => window.taken.splice(0));
  for (let n = 0; n < count; n++) {
    // Tenths from 10.0 to 34.9 %, each of 250 once before one comes again.
    send(1000 + 10 * ((n * 37) % 250));
    await pause(1000 / hz);
  }
  await pause(300);
  const drawn = await page.evaluate(() => window.taken);
  const painted: number[] = [];
  const onScreen: number[] = [];
  for (const { text, paintedMs, onScreenMs } of drawn) {
    const value = Math.round(100 * Number.parseFloat(text));
    const own = arrived.findLast(({ value: each, atMs }) => each === value && atMs < paintedMs + clock);
    if (own === undefined) continue;
    painted.push(paintedMs + clock - own.atMs);
    onScreen.push(onScreenMs + clock - own.atMs);
  }
  return {
    painted: figures(painted),
    onScreen: figures(onScreen),
    drawn: drawn.length,
    sent: arrived.length,
  };
}

/** How many values the trace of the newest push shows. */
function traced(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      (document.querySelector('svg.trace path:nth-of-type(2)')?.getAttribute('d')?.match(/[ML]/g) ?? [])
        .length,
  );
}

/** Pins go in and come to rest, again and again: from the value that the detector takes as settled to "saved". */
async function savesOf(page: Page, clock: number, count: number) {
  const taken: number[] = [];
  for (let n = 0; n < count; n++) {
    arrived = [];
    await page.evaluate(() => window.taken.splice(0));
    let savedMs: number | null = null;
    page
      .evaluate(() => window.nextSaved())
      .then((atMs) => {
        savedMs = atMs;
      })
      // Where the wait below gives up, the page goes first.
      .catch(() => undefined);
    for (let tries = 0; savedMs === null && tries < 100; tries++) {
      send(1200 + 10 * (n % 20) + (tries % 2));
      await pause(100);
    }
    if (savedMs === null) throw new Error('Nothing was saved within 10 s.');
    let settling = startSettling('pct', { min: 0, max: 100 });
    const settled = arrived.find(({ value, atMs }) => {
      const came = step(settling, { atMs, value: value / 100 });
      settling = came.state;
      return came.settledNow;
    });
    if (settled !== undefined) taken.push(savedMs + clock - settled.atMs);
    await liftPins(page);
    if ((n + 1) % SPOTS_A_BOARD === 0) {
      await page.keyboard.press('PageDown');
      await pause(500);
    }
  }
  return { ...figures(taken), count: taken.length };
}

async function liftPins(page: Page): Promise<void> {
  for (let n = 0; n < 3; n++) {
    send(0);
    await pause(100);
  }
  await page.getByText('Pins out').first().waitFor();
}

/** uint16 in hundredths of a percent. */
function send(hundredths: number): void {
  const bytes = Buffer.alloc(2);
  bytes.writeUInt16LE(hundredths);
  meter.tell({ type: 'notify', bytes });
}

/** In the page's time, ms. */
interface Drawn {
  paintedMs: number;
  onScreenMs: number;
}

declare global {
  interface Window {
    /** What the page drew, each with the page's time, ms. */
    taken: ({ text: string } & Drawn)[];
    /** Resolves with the page's time when the next reading is shown as saved. */
    nextSaved(): Promise<number>;
  }
}

/** From now on the page remembers when it drew which number. */
function watchValues(page: Page): Promise<void> {
  return page.evaluate(() => {
    const drawn = (): Promise<Drawn> =>
      new Promise((resolve) => {
        requestAnimationFrame(() => {
          let paintedMs = 0;
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => {
            paintedMs = performance.now();
          };
          port2.postMessage(null);
          requestAnimationFrame(() => {
            const onScreenMs = performance.now();
            // On a busy machine the next frame may come before that task.
            resolve({ paintedMs: paintedMs || onScreenMs, onScreenMs });
          });
        });
      });
    const panel = document.querySelector('section[aria-label="Reading"]')!;
    const numberOf = () => panel.querySelector('[data-size=huge] [class*=rawNumber]')?.textContent ?? '';
    const noteOf = () => panel.querySelector('p[aria-live] strong')?.closest('p') ?? null;
    let shown = numberOf();
    let note = noteOf();
    let onSaved: ((atMs: number) => void) | null = null;
    window.taken = [];
    window.nextSaved = () =>
      new Promise((resolve) => {
        onSaved = resolve;
      });
    new MutationObserver(() => {
      const text = numberOf();
      if (text !== shown) {
        shown = text;
        void drawn().then((at) => window.taken.push({ text, ...at }));
      }
      const newest = noteOf();
      if (newest !== note) {
        note = newest;
        if (note !== null) void drawn().then(({ paintedMs }) => onSaved?.(paintedMs));
      }
    }).observe(panel, { subtree: true, childList: true, characterData: true });
  });
}

/** What to add to the page's times to have the machine's monotonic clock, ms. */
async function clockOf(page: Page): Promise<number> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable');
  const { metrics } = await devtools.send('Performance.getMetrics');
  await devtools.detach();
  const beganMs = 1000 * metrics.find(({ name }) => name === 'NavigationStart')!.value;
  const before = monotonicMs();
  const now = beganMs + (await page.evaluate(() => performance.now()));
  if (now < before - 1 || now > monotonicMs() + 1) throw new Error('The page has another clock.');
  return beganMs;
}

/** The same measured on a page that only shows what a web socket brings. */
async function bareOf(page: Page): Promise<Map<number, Figures>> {
  const server = createServer((_, response) => response.end('<!doctype html><p id="number">0</p>'));
  const sockets = new WebSocketServer({ server });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  await page.goto(`http://127.0.0.1:${port}/`);
  const clock = await clockOf(page);
  await page.evaluate((address) => {
    const shown = document.querySelector('#number')!;
    const all: { n: number; drawnMs: number }[] = [];
    Object.assign(window, { all });
    new WebSocket(address).onmessage = ({ data }) => {
      shown.textContent = String(data);
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => all.push({ n: Number(data), drawnMs: performance.now() });
        port2.postMessage(null);
      });
    };
  }, `ws://127.0.0.1:${port}/`);
  while (sockets.clients.size === 0) await pause(20);
  const came = new Map<number, Figures>();
  for (const { hz, values } of RATES) {
    const sentMs: number[] = [];
    await page.evaluate(() => (window as unknown as { all: unknown[] }).all.splice(0));
    for (let n = 0; n < Math.round((values * PART) / 4); n++) {
      sentMs.push(monotonicMs());
      for (const socket of sockets.clients) socket.send(String(n));
      await pause(1000 / hz);
    }
    await pause(200);
    const all = await page.evaluate(
      () => (window as unknown as { all: { n: number; drawnMs: number }[] }).all,
    );
    came.set(hz, figures(all.map(({ n, drawnMs }) => drawnMs + clock - sentMs[n]!)));
  }
  await page.close();
  for (const socket of sockets.clients) socket.terminate();
  server.close();
  return came;
}

/** Forecasts one board after the other, and compares the 1,000 boards of a round again and again. @returns stops it */
function keepBusy(window: SocketWindow): () => Promise<string> {
  let isOver = false;
  let forecasts = 0;
  let comparisons = 0;
  const forecasting = (async () => {
    while (!isOver) {
      await window.query('boards.forecast', { id: 1 + (forecasts % 900) });
      forecasts++;
    }
  })();
  const comparing = (async () => {
    const { readings } = await window.query('boards.get', { id: 1 });
    const { id: readingId, roundId } = readings.at(-1)!;
    let onCompared = (): void => undefined;
    window.on('changed', ({ topics }) => {
      // Of the act itself, too.
      if (topics.includes('acts')) return;
      if (topics.includes(`round:${roundId}`) || topics.includes('yard')) onCompared();
    });
    for (let isExcluded = true; !isOver; isExcluded = !isExcluded) {
      if (isExcluded) await window.command('readings.exclude', { readingId, why: { text: 'Bench' } });
      else await window.command('readings.include', { readingId });
      // The comparison says when it is done, or that there was nothing new.
      await Promise.race([new Promise<void>((done) => (onCompared = done)), pause(10_000)]);
      comparisons++;
    }
  })();
  const working = Promise.all([forecasting, comparing]);
  // Where the measuring fails, the host goes first.
  working.catch(() => undefined);
  return async () => {
    isOver = true;
    await working;
    return `meanwhile: ${forecasts} forecasts, ${comparisons} comparisons of 1,000 boards`;
  };
}

/** The time that a commit takes here that is on disk when it returns, as those of readings are: the middle one of 40. */
function commitMs(): number {
  const db = new Database(join(dataDir, 'commits.sqlite'));
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE one (n INTEGER)');
  const insert = db.prepare('INSERT INTO one VALUES (?)');
  const took = Array.from({ length: 40 }, (_, n) => {
    const began = performance.now();
    insert.run(n);
    return performance.now() - began;
  });
  db.close();
  return figures(took).p50;
}

/** Waits until no board is to be forecast. */
async function untilQuiet(): Promise<void> {
  const db = new Database(file, { readonly: true });
  const due = db.prepare<[], number>('SELECT count(*) FROM outlook_due').pluck();
  const endMs = performance.now() + QUIET_WITHIN_MS;
  while (due.get()! > 0 && performance.now() < endMs) await pause(500);
  const left = due.get()!;
  if (left > 0) console.log(`${left} boards are still being forecast`);
  db.close();
}

interface Figures {
  p50: number;
  p99: number;
  most: number;
}
function figures(all: readonly number[]): Figures {
  const sorted = all.toSorted((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { p50: at(0.5), p99: at(0.99), most: at(1) };
}
function ms(value: number): string {
  return value.toFixed(0).padStart(3);
}
