/**
 * `npm test`: everything, in the order in which a fault is cheapest to find. Closes with `N passed, N failed`.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';

interface Tally {
  passed: number;
  failed: number;
}

const root = resolve(import.meta.dirname, '..');
const artifacts = join(root, 'artifacts');
mkdirSync(artifacts, { recursive: true });
// Every process and thread that the tests start would compile the same files again.
process.env.NODE_COMPILE_CACHE ??= join(artifacts, 'compile-cache');

installSystemTools([
  { command: 'chromium', debianPackage: 'chromium', why: 'the browser tests' },
  { command: 'btvirt', debianPackage: 'bluez-test-tools', why: 'the Bluetooth tests' },
  // Without them those tests are skipped: a computer that prints by other means needs neither.
  { command: 'cupsd', debianPackage: 'cups-daemon', why: 'the print queue tests', mayBeMissing: true },
  {
    command: 'pdftopdf',
    debianPackage: 'cups-filters-core-drivers',
    why: 'the print queue tests',
    mayBeMissing: true,
  },
]);

const tallies = [
  step('lint', 'npm', ['run', '--silent', 'lint']),
  step('types', 'npm', ['run', '--silent', 'typecheck']),
  vitest('unit and reference', 'unit', 'reference'),
  vitest('Bluetooth', 'ble'),
  step('build', 'npm', ['run', '--silent', 'build']),
  playwright(),
  faults(),
];
const total = tallies.reduce((sum, each) => ({
  passed: sum.passed + each.passed,
  failed: sum.failed + each.failed,
}));
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed === 0 ? 0 : 1);

/** A step that either holds or does not counts as one test. */
function step(name: string, command: string, args: string[]): Tally {
  return run(name, command, args) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

function vitest(name: string, ...projects: string[]): Tally {
  const report = join(artifacts, `${projects.join('-')}.json`);
  rmSync(report, { force: true });
  const ended = run(name, 'vitest', [
    'run',
    '--config=tests/vitest.config.ts',
    ...projects.map((project) => `--project=${project}`),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  return tallyFrom(report, ended, (read) => ({ passed: read.numPassedTests, failed: read.numFailedTests }));
}

function playwright(): Tally {
  const report = join(artifacts, 'e2e.json');
  rmSync(report, { force: true });
  const ended = run(
    'browser',
    'playwright',
    ['test', '--config=tests/e2e/playwright.config.ts', '--reporter=list,json'],
    { PLAYWRIGHT_JSON_OUTPUT_NAME: report },
  );
  return tallyFrom(report, ended, (read) => ({
    passed: read.stats.expected + read.stats.flaky,
    failed: read.stats.unexpected,
  }));
}

/** Their short form, which needs the built host. */
function faults(): Tally {
  const report = join(artifacts, 'faults.json');
  rmSync(report, { force: true });
  const ended = run('faults', 'node', ['tests/faults/run.ts', '--short']);
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

function run(name: string, command: string, args: string[], env: Record<string, string> = {}): boolean {
  console.log(`\n— ${name}`);
  const ended = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    env: {
      ...process.env,
      PATH: `${join(root, 'node_modules', '.bin')}${delimiter}${process.env.PATH}`,
      ...env,
    },
  });
  if (ended.status !== 0) console.log(`— ${name}: failed`);
  return ended.status === 0;
}

/** Installs what is missing when root on Debian; otherwise says what is missing and how to get it. */
function installSystemTools(
  tools: { command: string; debianPackage: string; why: string; mayBeMissing?: boolean }[],
): void {
  const missing = tools.filter(({ command }) => !isOnPath(command));
  if (missing.length === 0) return;
  const packages = missing.map(({ debianPackage }) => debianPackage);
  const canInstall = process.getuid?.() === 0 && existsSync('/etc/debian_version');
  if (canInstall) {
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get update', 'apt-get', ['update', '-qq'], env);
    run('apt-get install', 'apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], env);
  }
  const still = missing.filter(({ command }) => !isOnPath(command));
  if (still.length === 0) return;
  for (const { command, debianPackage, why } of still) {
    console.error(
      `Missing: ${command}, for ${why}. On Debian or Ubuntu: sudo apt-get install ${debianPackage}`,
    );
  }
  if (still.some(({ mayBeMissing }) => !mayBeMissing)) process.exit(1);
}

function isOnPath(command: string): boolean {
  // A service, and what only it runs, are where a person's shell does not look.
  return ['/usr/sbin', '/usr/lib/cups/filter', ...(process.env.PATH ?? '').split(delimiter)].some((folder) =>
    existsSync(join(folder, command)),
  );
}
