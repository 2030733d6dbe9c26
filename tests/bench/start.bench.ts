/**
 * How long a cold start takes: from starting the built host's process until the first screen in Chromium can be used,
 * with a browser that has nothing of it yet. Of a yard that is there, and of an empty data folder. Needs Debian's
 * chromium. Run:
 *
 *     npx node tests/bench/start.bench.ts [runs, 7]
 *
 * `bare` is the same with a server of one file and a page of one button, in turn with it: where that is slow, the
 * machine is busy. The processor's time of the host, and of the page's main thread, hardly depends on that.
 */
import { execSync, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from '@playwright/test';
import { addressOf } from '../address-of.ts';
import { figure } from './figure.ts';
import { fillYard } from './filled-yard.ts';

const GOAL_MS = 600;
const RUNS = Number(process.argv[2] ?? 7);
const BOARDS = 2000;

const root = resolve(import.meta.dirname, '../..');
execSync('npm run --silent build', { cwd: root, stdio: 'inherit' });
const folder = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
const bareHost = join(folder, 'bare.mjs');
const marks = join(folder, 'marks.mjs');
const filled = join(folder, 'filled');
writeHelpers();
execSync(`mkdir ${filled}`);
fillYard(join(filled, 'yard.sqlite'), BOARDS);

/** All since the process was started, ms, but for the last ones. */
interface Start {
  /** Node runs. */
  node: number;
  /** The start link is printed. */
  link: number;
  html: number;
  scripts: number;
  /** The host's app is loaded, and the yard begins to be opened: the browser loads the window meanwhile. */
  app: number;
  /** The first answer of the host is there. */
  answer: number;
  paint: number;
  usable: number;
  /** Processor's time of the host until then, and of the page's main thread. */
  hostCpu: number;
  pageCpu: number;
  /** Bytes that the page loaded until then. */
  bytes: number;
}

const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
const kinds = {
  bare: () => startOnce(browser, bareHost, folder),
  'a yard that is there': () => {
    const dataDir = mkdtempSync(join(folder, 'data-'));
    cpSync(filled, dataDir, { recursive: true });
    return startOnce(browser, join(root, 'out/main/loopback.js'), dataDir);
  },
  'an empty folder': () =>
    startOnce(browser, join(root, 'out/main/loopback.js'), mkdtempSync(join(folder, 'data-'))),
};
const taken = Object.fromEntries(Object.keys(kinds).map((kind) => [kind, [] as Start[]]));
// The first of each warms what the system reads from its disk.
for (let run = 0; run <= RUNS; run++) {
  for (const [kind, start] of Object.entries(kinds)) {
    const one = await start();
    if (run > 0) taken[kind]!.push(one);
  }
}
await browser.close();
rmSync(folder, { recursive: true, force: true });

const bare = median(taken.bare!, 'usable');
for (const [kind, starts] of Object.entries(taken)) {
  const at = (name: keyof Start) => median(starts, name);
  const best = Math.min(...starts.map(({ usable }) => usable));
  const since = (name: keyof Start, before: keyof Start) => (at(name) - at(before)).toFixed(0);
  if (kind !== 'bare')
    figure({
      what: `cold start to a usable screen, ${kind}, p50`,
      value: at('usable'),
      unit: 'ms',
      goal: { most: GOAL_MS },
      bare,
      missesBecause:
        'two cores share 0.4 s of the host, 0.2 s of the page, and as much of Chromium’s own processes',
    });
  console.log(
    `${kind}: best ${best.toFixed(0)} ms of ${RUNS}; load ${loadavg()[0]!.toFixed(1)}
  node ${at('node').toFixed(0)}, link +${since('link', 'node')}, HTML +${since('html', 'link')}, scripts +${since('scripts', 'html')}, first answer +${since('answer', 'scripts')}, usable +${since('usable', 'answer')} (app at ${at('app').toFixed(0)}, first paint at ${at('paint').toFixed(0)})
  processor: host ${at('hostCpu').toFixed(0)} ms, page ${at('pageCpu').toFixed(0)} ms; ${(at('bytes') / 1000).toFixed(0)} kB loaded\n`,
  );
}

async function startOnce(browser: Browser, script: string, dataDir: string): Promise<Start> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 860 }, locale: 'en-US' });
  const page = await context.newPage();
  const begunMs = Date.now();
  const host = spawn(process.execPath, ['--import', pathToFileURL(marks).href, script], {
    env: { ...process.env, PINTALLY_DATA: dataDir, MARKS: join(dataDir, 'marks'), BARE: bareHost },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    await watchPage(page);
    const session = await context.newCDPSession(page);
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    const address = await addressOf(host);
    const linkMs = Date.now();
    await page.goto(address, { waitUntil: 'commit' });
    const seen = await page.evaluate(() => window.whenUsable);
    const hostCpu = cpuMsOf(host.pid!);
    const { metrics } = await session.send('Performance.getMetrics');
    const marked = JSON.parse(readFileSync(join(dataDir, 'marks'), 'utf8')) as Record<string, number>;
    await page.getByRole('button').first().click();
    const onPage = (ms: number) => seen.originMs + ms - begunMs;
    return {
      node: marked.node! - begunMs,
      link: linkMs - begunMs,
      html: onPage(seen.htmlMs),
      scripts: onPage(seen.scriptsMs),
      app: marked.app! - begunMs,
      answer: onPage(seen.answerMs ?? seen.scriptsMs),
      paint: onPage(seen.paintMs),
      usable: onPage(seen.usableMs),
      hostCpu,
      pageCpu: 1000 * metrics.find(({ name }) => name === 'TaskDuration')!.value,
      bytes: seen.bytes,
    };
  } finally {
    await context.close();
    host.kill('SIGTERM');
    await new Promise((resolve) => host.once('exit', resolve));
  }
}

declare global {
  interface Window {
    whenUsable: Promise<{
      /** Wall clock at the page's time 0, ms; all others are of the page's time. */
      originMs: number;
      htmlMs: number;
      scriptsMs: number;
      answerMs: number | null;
      paintMs: number;
      usableMs: number;
      bytes: number;
    }>;
  }
}

/** A screen can be used once something in its main part can be pressed, is painted, and the page has time for a press. */
async function watchPage(page: Page): Promise<void> {
  await page.addInitScript(() => {
    let answerMs: number | null = null;
    const Socket = window.WebSocket;
    window.WebSocket = class extends Socket {
      constructor(address: string | URL) {
        super(address);
        // The first message only lets the window in.
        let heard = 0;
        this.addEventListener('message', () => {
          if (++heard === 2) answerMs = performance.now();
        });
      }
    };
    window.whenUsable = new Promise((resolve) => {
      const look = (): void => {
        const main = document.querySelector('main');
        if (!main?.querySelector('button:not(:disabled), input:not(:disabled)')) {
          requestAnimationFrame(look);
          return;
        }
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          const usableMs = performance.now();
          const [loaded] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
          const resources = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
          const scripts = resources.filter(({ name }) => name.endsWith('.js'));
          const htmlMs = loaded!.responseEnd;
          resolve({
            originMs: performance.timeOrigin,
            htmlMs,
            scriptsMs: Math.max(htmlMs, ...scripts.map(({ responseEnd }) => responseEnd)),
            answerMs,
            paintMs: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? usableMs,
            usableMs,
            bytes: loaded!.encodedBodySize + resources.reduce((sum, each) => sum + each.encodedBodySize, 0),
          });
        };
        port2.postMessage(null);
      };
      requestAnimationFrame(look);
    });
  });
}

/** What a bare server takes, and what tells of a host's process from within it when it did what. */
function writeHelpers(): void {
  writeFileSync(
    bareHost,
    `import { createServer } from 'node:http';
     const server = createServer((request, response) => response.writeHead(200, { 'Content-Type': request.url.endsWith('.js') ? 'text/javascript' : 'text/html' }).end(
       request.url.endsWith('.js')
         ? "document.querySelector('main').innerHTML = '<button>Press</button>'"
         : '<!doctype html><main></main><script type="module" src="/page.js"></script>'));
     server.listen(0, '127.0.0.1', () => console.log('http://127.0.0.1:' + server.address().port + '/'));
     process.on('SIGTERM', () => process.exit(0));`,
  );
  writeFileSync(
    marks,
    `import { writeFileSync } from 'node:fs';
     const marks = { node: Date.now() };
     const mark = () => {
       if (marks.app !== undefined) return;
       marks.app = Date.now();
       writeFileSync(process.env.MARKS, JSON.stringify(marks));
     };
     const { dlopen } = process;
     process.dlopen = (...given) => { mark(); return dlopen.apply(process, given); };
     if (process.argv[1] === process.env.BARE) mark();`,
  );
}

/** Linux counts it in hundredths of a second. */
function cpuMsOf(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').replace(/.*\) /, '').split(' ');
  return 10 * (Number(fields[11]) + Number(fields[12]));
}

function median(starts: readonly Start[], name: keyof Start): number {
  const sorted = starts.map((each) => each[name]).toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] as number;
}
