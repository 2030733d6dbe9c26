/**
 * `npm test`: lint, types and all but the long tests, of which it runs the core, in five minutes on two cores.
 * `npm run test:all` (`--all`) leaves nothing out; `npm run test:quick` (`--quick`) is what a contributor runs at each
 * save. `tiers.ts` says which tests each has. Closes with where time went, with what failed or passed only the second
 * time, and with `N passed, N failed`.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import {
  type Ended,
  filesEndedByV8,
  type Took,
  toldByPlaywright,
  toldByVitest,
  whatFailed,
  whatPassedAgain,
  whereTimeWent,
} from './runner-reports.ts';
import { coreBle, coreFaults, isQuickTest, longTests } from './tiers.ts';

interface Tally {
  passed: number;
  failed: number;
}

const UNITS = 'unit and reference';

const root = resolve(import.meta.dirname, '..');
const artifacts = join(root, 'artifacts');
mkdirSync(artifacts, { recursive: true });
// Every process and thread that the tests start would compile the same files again.
process.env.NODE_COMPILE_CACHE ??= join(artifacts, 'compile-cache');

const isQuick = process.argv.includes('--quick');
const isAll = process.argv.includes('--all');
const systemTools: SystemTool[] = [
  { command: 'chromium', debianPackage: 'chromium', why: 'the browser tests' },
  { command: 'btvirt', debianPackage: 'bluez-test-tools', why: 'the Bluetooth tests' },
  { command: 'dbus-daemon', debianPackage: 'dbus', why: 'the Bluetooth tests' },
  {
    file: '/usr/lib/python3/dist-packages/dbusmock/templates/bluez5.py',
    debianPackage: 'python3-dbusmock',
    why: 'the Bluetooth tests',
  },
];
if (!isQuick) installSystemTools(systemTools);

const took: Took[] = [];
const endedBadly: Ended[] = [];
/** Whether what runs prints as it goes on. */
let isAlone = true;
let cpuSecondsBefore = cpuSecondsOfEnded();
const reportOf = (name: string): string => join(artifacts, `${name}.json`);
const againOf = (reportName: string): string => `${reportName}-again`;
const vitestReports = ['unit-reference', 'core-of-long', 'ble'].flatMap((name) => [name, againOf(name)]);
for (const name of [...vitestReports, 'faults', 'e2e']) rmSync(reportOf(name), { force: true });

const lint = () => step('lint', 'npm', ['run', '--silent', 'lint']);
const types = () => step('types', 'npm', ['run', '--silent', 'typecheck']);
const build = () => step('build', 'npm', ['run', '--silent', 'build']);
const unitTests = ['tests/unit', 'tests/reference'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((file) => `${folder}/${file}`)
    .filter((file) => /\.test\.tsx?$/.test(file)),
);

const tallies = isQuick
  ? await together(lint, types, () => vitest(UNITS, 'unit-reference', '!ble', unitTests.filter(isQuickTest)))
  : isAll
    ? [
        // Each of these leaves a core idle for much of its time.
        ...(await together(lint, types)),
        await vitest(UNITS, 'unit-reference', '!ble'),
        await build(),
        // The radio's tests wait for the radio, the faults for their processes.
        ...(await together(
          () => vitest('Bluetooth', 'ble', 'ble'),
          () => faults(),
        )),
        await playwright(),
      ]
    : await together(
        () =>
          vitest(
            UNITS,
            'unit-reference',
            '!ble',
            unitTests.filter((file) => !longTests.includes(file)),
          ),
        inTurn(lint, types, () =>
          vitest('core of the long tests', 'core-of-long', '!ble', [
            ...longTests.filter(hasCore),
            '--tagsFilter=core',
          ]),
        ),
        inTurn(
          () => vitest('Bluetooth', 'ble', 'ble', coreBle),
          build,
          () => faults(coreFaults),
          () => playwright('--grep=@core'),
        ),
      );
const total = tallies.reduce(sum);
const reports = [
  ...vitestReports.map((name) => toldByVitest(reportOf(name), root)),
  toldByPlaywright(reportOf('e2e')),
];
console.log(`\n${whereTimeWent(took, reports)}`);
const passedAgain = whatPassedAgain(reports);
if (passedAgain !== '') console.log(`\n${passedAgain}`);
if (total.failed > 0) console.log(`\n${whatFailed(endedBadly, reports)}`);
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed === 0 ? 0 : 1);

/** Whether a test of the file is tagged so. Of others not even the modules need to be loaded. */
function hasCore(file: string): boolean {
  return readFileSync(join(root, file), 'utf8').includes("tags: 'core'");
}

function sum(a: Tally, b: Tally): Tally {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed };
}

/** A step that either holds or does not counts as one test. */
async function step(name: string, command: string, args: string[]): Promise<Tally> {
  return (await run(name, command, args)) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

async function vitest(
  name: string,
  reportName: string,
  projects: string,
  which: readonly string[] = [],
): Promise<Tally> {
  const first = await vitestOnce(name, reportName, projects, which);
  const end = endedBadly.findIndex((each) => each.name === name);
  const files = end < 0 ? [] : filesEndedByV8(endedBadly[end]!.output);
  if (files.length === 0) return first;
  endedBadly.splice(end, 1);
  console.log(`— ${name}: V8 ended ${files.length} of its files by a fault of its own. They run once more.`);
  const again = await vitestOnce(`${name}, again`, againOf(reportName), projects, files);
  return { passed: first.passed + again.passed, failed: again.failed };
}

async function vitestOnce(
  name: string,
  reportName: string,
  projects: string,
  which: readonly string[],
): Promise<Tally> {
  const report = reportOf(reportName);
  const ended = await run(name, 'vitest', [
    'run',
    ...which,
    '--config=tests/vitest.config.ts',
    `--project=${projects}`,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  return tallyFrom(report, ended, (read) => ({ passed: read.numPassedTests, failed: read.numFailedTests }));
}

async function playwright(...which: string[]): Promise<Tally> {
  const report = reportOf('e2e');
  const ended = await run(
    'browser',
    'playwright',
    ['test', '--config=tests/e2e/playwright.config.ts', '--reporter=list,json', ...which],
    { PLAYWRIGHT_JSON_OUTPUT_NAME: report },
  );
  return tallyFrom(report, ended, (read) => ({
    passed: read.stats.expected + read.stats.flaky,
    failed: read.stats.unexpected,
  }));
}

/** Their short form, which needs the built host. Without names, all of them. */
async function faults(names: readonly string[] = []): Promise<Tally> {
  const report = reportOf('faults');
  const ended = await run('faults', 'node', ['tests/faults/run.ts', '--short', ...names]);
  return tallyFrom(report, ended, (read) => read);
}

/** A runner that ended badly without a failed test to show for it (it crashed, or found no tests) counts as one. */
// biome-ignore lint/suspicious/noExplicitAny: the reports of two runners, read for two numbers each
function tallyFrom(report: string, endedWell: boolean, count: (read: any) => Tally): Tally {
  const tally = existsSync(report)
    ? count(JSON.parse(readFileSync(report, 'utf8')))
    : { passed: 0, failed: 0 };
  return endedWell || tally.failed > 0 ? tally : { ...tally, failed: 1 };
}

/** All at once. What each prints comes as a whole when it has ended, but for the units, which show that something goes on. */
async function together(...steps: (() => Promise<Tally>)[]): Promise<Tally[]> {
  isAlone = false;
  const done = await Promise.all(steps.map((each) => each()));
  isAlone = true;
  return done;
}

/** One after the other. */
function inTurn(...steps: (() => Promise<Tally>)[]): () => Promise<Tally> {
  return async () => {
    let tally: Tally = { passed: 0, failed: 0 };
    for (const each of steps) tally = sum(tally, await each());
    return tally;
  };
}

async function run(
  name: string,
  command: string,
  args: string[],
  env: Record<string, string> = {},
): Promise<boolean> {
  const printsAsItGoes = isAlone || name === UNITS;
  if (printsAsItGoes) console.log(`\n— ${name}`);
  const begun = performance.now();
  const printed: Buffer[] = [];
  const child = spawn(command, args, {
    cwd: root,
    stdio: ['inherit', 'pipe', 'pipe'],
    shell: process.platform === 'win32',
    env: {
      ...process.env,
      // What is piped is colored only when asked.
      ...(process.stdout.isTTY && { FORCE_COLOR: '1' }),
      PATH: `${join(root, 'node_modules', '.bin')}${delimiter}${process.env.PATH}`,
      ...env,
    },
  });
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (data: Buffer) => {
      printed.push(data);
      if (printsAsItGoes) process.stdout.write(data);
    });
  }
  let cpuSeconds: number | null = null;
  child.once('exit', () => {
    const now = cpuSecondsOfEnded();
    if (now !== null && cpuSecondsBefore !== null) cpuSeconds = now - cpuSecondsBefore;
    cpuSecondsBefore = now;
  });
  const endedWell = await new Promise<boolean>((resolve) => {
    child.once('error', () => resolve(false));
    child.once('close', (code) => resolve(code === 0));
  });
  took.push({ name, seconds: (performance.now() - begun) / 1000, cpuSeconds });
  const output = Buffer.concat(printed).toString();
  if (!printsAsItGoes) process.stdout.write(`\n— ${name}\n${output}`);
  if (!endedWell) {
    console.log(`— ${name}: failed`);
    endedBadly.push({ name, output });
  }
  return endedWell;
}

/**
 * What ended processes of this one took of the processor, with all that they waited for, in seconds; null where the system
 * does not say (only Linux does). It grows when one has ended, so its growth then is what that one took.
 */
function cpuSecondsOfEnded(): number | null {
  if (process.platform !== 'linux') return null;
  // proc(5): after the name in parentheses, `cutime` and `cstime` are the 14th and 15th, in hundredths.
  const fields = readFileSync('/proc/self/stat', 'utf8').split(') ').at(-1)!.split(' ');
  return (Number(fields[13]) + Number(fields[14])) / 100;
}

type SystemTool = ({ command: string } | { file: string }) & { debianPackage: string; why: string };

/** Installs what is missing when root on Debian; otherwise says what is missing and how to get it. */
function installSystemTools(tools: SystemTool[]): void {
  const isThere = (tool: SystemTool) => ('command' in tool ? isOnPath(tool.command) : existsSync(tool.file));
  const missing = tools.filter((tool) => !isThere(tool));
  if (missing.length === 0) return;
  const packages = missing.map(({ debianPackage }) => debianPackage);
  const canInstall = process.getuid?.() === 0 && existsSync('/etc/debian_version');
  if (canInstall) {
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    const aptGet = (...args: string[]) =>
      spawnSync('apt-get', args, { stdio: 'inherit', env: { ...process.env, ...env } });
    aptGet('update', '-qq');
    aptGet('install', '-y', '-qq', '--no-install-recommends', ...packages);
  }
  const still = missing.filter((tool) => !isThere(tool));
  if (still.length === 0) return;
  for (const tool of still) {
    const { debianPackage, why } = tool;
    console.error(
      `Missing: ${'command' in tool ? tool.command : debianPackage}, for ${why}. On Debian or Ubuntu: sudo apt-get install ${debianPackage}`,
    );
  }
  process.exit(1);
}

function isOnPath(command: string): boolean {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => existsSync(join(folder, command)));
}
