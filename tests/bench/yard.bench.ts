/**
 * A yard of 100,000 boards: how long the requests take that a person waits for. Run it with
 *
 *     npx node tests/bench/yard.bench.ts [boards, 100000] [rounds of four readings, 2]
 *
 * With five rounds it has 2,000,000 readings. Every figure is the median and the worst of so many
 * runs, in ms. Bare is what SQLite takes over a connection of its own: for the list, its newest hundred rows with all that
 * they show, and their number; for a search, the number of those whose ID has the text. Labels count all of the
 * processor's time, which other work on the machine makes hardly longer.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { figure } from './figure.ts';
import { BOARDS_A_STACK, fillYard, BOARDS as USUAL } from './filled-yard.ts';

const [BOARDS = USUAL, ROUNDS = 2] = process.argv.slice(2).map(Number);
const RUNS = 15;
const TYPED = 'B07-0042';
const LABELS = 2000;
const GOAL = { listTimesBare: 3, searchMs: 50, labelsMs: 1000 };

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
const file = join(dataDir, 'yard.sqlite');
fillYard(file, BOARDS, 1, null, ROUNDS);

const opening = performance.now();
const app = createApp({
  dataDir,
  links: noMeter,
  threads: threadSources,
  // Not in the way of what is measured: labels count all of the process.
  forecastAfterMs: 3_600_000,
  backUpAfterMs: 3_600_000,
  verifyAfterMs: 3_600_000,
});
const { answer, query } = openWindow(app);
console.log(`open the yard: ${(performance.now() - opening).toFixed(1)} ms`);
const settings = await answer('settings.get', {});
if (!settings.ok) throw new Error(settings.problem.code);
await answer('settings.edit', { sound: true });
console.log(`write to it: after ${(performance.now() - opening).toFixed(1)} ms`);

const page = (stackId: number | null, search: string, offset: number) => ({
  stackId,
  search,
  offset,
  limit: 100,
});
await measure('stacks.list', 'stacks.list', {});
const disk = new Database(file, { readonly: true });
const rowsOfPage = disk.prepare(
  `SELECT b.*, s.name, w.name, f.record, o.record FROM board b JOIN stack s ON s.id = b.stack_id
   JOIN species w ON w.id = b.species_id LEFT JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id
   LEFT JOIN outlook o ON o.board_id = b.id WHERE b.archived_at IS NULL ORDER BY b.id LIMIT 100`,
);
const counted = disk.prepare('SELECT count(*) FROM board WHERE archived_at IS NULL');
await measure('boards.list, first page', 'boards.list', page(null, '', 0));
// After a write its boards are counted again, as when it is first shown.
const first: number[] = [];
for (let run = 0; run < RUNS; run++) {
  await answer('settings.edit', { sound: run % 2 === 0 });
  const started = performance.now();
  await query('boards.list', page(null, '', 0));
  first.push(performance.now() - started);
}
figure({
  what: `first list of ${BOARDS} boards, p50`,
  value: middleOf(first),
  unit: 'ms',
  goal: { timesBare: GOAL.listTimesBare },
  bare: median(() => {
    rowsOfPage.all();
    counted.get();
  }),
});
const found = disk.prepare('SELECT count(*) FROM board WHERE archived_at IS NULL AND code LIKE ?');
const typedSoFar = Array.from(TYPED, (_, last) => TYPED.slice(0, last + 1));
const searches: number[] = [];
for (const search of [...typedSoFar, 'wal', 'walnut', 'no such board'])
  searches.push(await measure(`boards.list, search ${search}`, 'boards.list', page(null, search, 0), 5));
figure({
  what: 'search as you type, slowest of the texts, p50',
  value: Math.max(...searches),
  unit: 'ms',
  goal: { most: GOAL.searchMs },
  bare: Math.max(...typedSoFar.map((text) => median(() => found.get(`%${text}%`)))),
});
disk.close();
const region = { locale: 'en-US', timeZone: 'America/Chicago' };
const labelsOf = (boards: number) =>
  query('labels.pdf', {
    boardIds: Array.from({ length: boards }, (_, index) => index + 1),
    paperId: 'sheet',
    used: 0,
    region,
  });
// So that the thread is there, with its fonts.
await labelsOf(20);
const usage = process.cpuUsage();
await labelsOf(LABELS);
const { user, system } = process.cpuUsage(usage);
figure({
  what: `labels of ${LABELS} boards, of one core`,
  value: (user + system) / 1000,
  unit: 'ms',
  goal: { most: GOAL.labelsMs },
  missesBecause:
    'half is QR codes, for each of which the library scores eight masks; a fifth is V8, which compiles what a fresh thread runs and collects garbage beside it; words and drawing an eighth, the PDF an eighth, reading the boards a twentieth',
});
await measure('boards.list, last page', 'boards.list', page(null, '', BOARDS - 100));
await measure('boards.list, one stack, last page', 'boards.list', page(50, '', BOARDS_A_STACK - 100));
for (const sort of ['code', 'average', 'call', 'ready', 'read', 'species']) {
  for (const descending of [false, true]) {
    const order = `boards.list by ${sort}${descending ? ', descending' : ''}`;
    await measure(`${order}, first page`, 'boards.list', { ...page(null, '', 0), sort, descending });
    await measure(`${order}, last page`, 'boards.list', {
      ...page(null, '', BOARDS - 100),
      sort,
      descending,
    });
  }
}
const toDry = { filter: 'keep-drying', sort: 'average' };
await measure('boards.list to keep drying, by average', 'boards.list', { ...page(null, '', 0), ...toDry });
await measure('the same of one stack', 'boards.list', { ...page(50, '', 0), ...toDry });
await measure('boards.list elsewhere', 'boards.list', { ...page(null, '', 0), filter: 'elsewhere' });
await measure('stacks.get', 'stacks.get', { id: 50 });
await measure('boards.get', 'boards.get', { id: 5000 });
const round = await answer('rounds.start', { stackId: 7, woodTempC: 15 });
if (!round.ok) throw new Error(round.problem.code);
const { id: roundId, boards } = round.output as { id: number; boards: { boardId: number }[] };
await measure('rounds.get, 1,000 boards, just begun', 'rounds.get', { roundId }, 5);
await measure('rounds.get, 1,000 boards, all read', 'rounds.get', { roundId: 14 }, 3);
await measure('rounds.saveTyped, in that round', 'rounds.saveTyped', (run) => ({
  roundId,
  boardId: boards[run]?.boardId,
  spotIndex: 0,
  newestReadingId: null,
  raw: 12.4,
}));

await app.close();
rmSync(dataDir, { recursive: true });

/**
 * @param input  of every run, or made for each
 * @returns the median
 */
async function measure(
  what: string,
  name: string,
  input: object | ((run: number) => object),
  runs = RUNS,
): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    const given = await answer(name, typeof input === 'function' ? input(run) : input);
    times.push(performance.now() - start);
    if (!given.ok) throw new Error(`${name}: ${given.problem.code}`);
  }
  const middle = middleOf(times);
  console.log(
    `${what.padEnd(48)} ${middle.toFixed(1).padStart(8)} ${Math.max(...times)
      .toFixed(1)
      .padStart(8)}`,
  );
  return middle;
}

/** How long it takes at the median, ms. */
function median(work: () => void): number {
  return middleOf(
    Array.from({ length: RUNS }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    }),
  );
}

function middleOf(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)]!;
}
