/**
 * Runs the benches that have goals, and prints one table: each figure, its goal, and its ratio to the same measured bare
 * in that run. Then which figures miss their goal or are not as the methods page says, and how long it all took. Run it with
 *
 *     npm run bench [-- NAME NAME …]
 *
 * The names are those of files, or parts of them. What else a bench prints, it prints when it is run by hand. On a busy
 * machine the ratio says more than the value.
 */
import { spawnSync } from 'node:child_process';
import { globSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { trials } from '../../shared-core/methods/trials.ts';
import { FIGURES_FILE, type Figure, headOfTable, meetsGoal, rowOf } from './figure.ts';

const HERE = import.meta.dirname;
/** About how long each takes on a quiet machine: quick ones come first, those that are not named here last. */
const SECONDS: Readonly<Record<string, number>> = {
  'air-drying': 2,
  'years-behind': 2,
  'heated-room': 3,
  records: 5,
  history: 10,
  coverage: 12,
  'board-shown': 30,
  'second-shed': 20,
  start: 30,
  settling: 35,
  notifications: 40,
  describing: 40,
  'calls-by-harm': 40,
  yard: 60,
  stalls: 70,
  typed: 80,
  'eight-hours': 100,
  'many-due': 110,
  forecast: 110,
  large: 130,
  suspicion: 180,
  latency: 770,
};

/** How the names of the figures begin that the methods page tells of, and which of them is of the hardest case. */
const FIGURES_OF: Readonly<
  Record<(typeof trials)[number]['id'], { name: string; hardest: 'least' | 'most' }>
> = {
  'wrong-ready': { name: 'wrong Ready', hardest: 'most' },
  'fine-ready': { name: 'fine boards Ready: known depths', hardest: 'least' },
  'fine-ready-unknown': { name: 'fine boards Ready: depths only planned', hardest: 'least' },
  interval: { name: '90 % interval holds the average', hardest: 'least' },
  records: { name: 'dated records within', hardest: 'most' },
  faults: { name: 'gross faults found', hardest: 'least' },
  alarms: { name: 'false alarms per 100', hardest: 'most' },
  settled: { name: 'settled values saved wrong', hardest: 'most' },
};

const asked = process.argv.slice(2);
const secondsOf = (bench: string): number => SECONDS[bench] ?? Number.POSITIVE_INFINITY;
const benches = globSync('*.bench.ts', { cwd: HERE })
  .filter((file) => readFileSync(resolve(HERE, file), 'utf8').includes("from './figure.ts'"))
  .map((file) => file.replace('.bench.ts', ''))
  .filter((bench) => asked.length === 0 || asked.some((name) => bench.includes(name)))
  .toSorted((a, b) => secondsOf(a) - secondsOf(b) || a.localeCompare(b));
const unknown = asked.filter((name) => !benches.some((bench) => bench.includes(name)));
if (unknown.length > 0) {
  console.error(`No bench with a goal is called ${unknown.join(' or ')}.`);
  process.exit(1);
}
const expected = benches.reduce((sum, bench) => sum + (SECONDS[bench] ?? 0), 0);

const folder = mkdtempSync(join(tmpdir(), 'pintally-figures-'));
process.once('exit', () => rmSync(folder, { recursive: true }));
const began = performance.now();
const missed: Figure[] = [];
const found: Figure[] = [];
const unfinished: string[] = [];
let figures = 0;

console.log(
  `${benches.length} benches, about ${minutes(expected)} on a quiet machine; quick ones first\n\n${headOfTable}`,
);
for (const bench of benches) {
  const benchBegan = performance.now();
  const { rows, status } = run(bench);
  console.log(`— ${bench}, ${seconds(benchBegan)} s, load ${loadavg()[0]!.toFixed(1)}`);
  for (const row of rows) console.log(rowOf(row));
  figures += rows.length;
  found.push(...rows);
  missed.push(...rows.filter((row) => !meetsGoal(row)));
  if (status !== 0) unfinished.push(`${bench} ended with ${status}`);
}

console.log(
  `\n${figures} figures in ${minutes((performance.now() - began) / 1000)}, ${missed.length} miss their goal`,
);
for (const { what, missesBecause } of missed)
  console.log(missesBecause === undefined ? `  ${what}` : `  ${what}: ${missesBecause}`);
const otherwise = trials.flatMap(({ id, found: onPage }) => {
  const { name, hardest } = FIGURES_OF[id];
  const values = found.filter(({ what }) => what.startsWith(name)).map(({ value }) => value);
  const now = Number((hardest === 'least' ? Math.min(...values) : Math.max(...values)).toFixed(1));
  return values.length === 0 || now === onPage ? [] : [`${name}: ${now}, and ${onPage} on the methods page`];
});
for (const each of otherwise) console.log(`  ${each}`);
for (const each of unfinished) console.log(`  ${each}`);
if (missed.length + otherwise.length + unfinished.length > 0) process.exitCode = 1;

function run(bench: string): { rows: Figure[]; status: number | string | null } {
  const file = join(folder, bench);
  const { status, signal } = spawnSync(process.execPath, [resolve(HERE, `${bench}.bench.ts`)], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, [FIGURES_FILE]: file },
  });
  const lines = globSync(file).flatMap((each) => readFileSync(each, 'utf8').trim().split('\n'));
  return { rows: lines.map((line) => JSON.parse(line)), status: status ?? signal };
}

function seconds(sinceMs: number): string {
  return ((performance.now() - sinceMs) / 1000).toFixed(0);
}

function minutes(ofSeconds: number): string {
  return ofSeconds < 90 ? `${ofSeconds.toFixed(0)} s` : `${(ofSeconds / 60).toFixed(0)} min`;
}
