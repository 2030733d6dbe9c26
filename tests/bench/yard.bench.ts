/**
 * A yard of 100,000 boards, each probed in two rounds of four readings: how long the requests take that a person waits
 * for. Run: `npx node tests/bench/yard.bench.ts`. Every figure is the median and the worst of so many runs, in ms.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { BOARDS, BOARDS_A_STACK, fillYard } from './filled-yard.ts';

const RUNS = 15;

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
fillYard(join(dataDir, 'yard.sqlite'));

const opening = performance.now();
const app = createApp({
  dataDir,
  links: noMeter,
  threads: threadSources,
});
const { answer } = openWindow(app);
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
await measure('boards.list, first page', 'boards.list', page(null, '', 0));
await measure('boards.list, last page', 'boards.list', page(null, '', BOARDS - 100));
await measure('boards.list, one stack, last page', 'boards.list', page(50, '', BOARDS_A_STACK - 100));
await measure('boards.list, search', 'boards.list', page(null, '7777', 0));
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

/** @param input of every run, or made for each */
async function measure(
  what: string,
  name: string,
  input: object | ((run: number) => object),
  runs = RUNS,
): Promise<void> {
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    const given = await answer(name, typeof input === 'function' ? input(run) : input);
    times.push(performance.now() - start);
    if (!given.ok) throw new Error(`${name}: ${given.problem.code}`);
  }
  times.sort((a, b) => a - b);
  const median = times[Math.floor(times.length / 2)] as number;
  console.log(
    `${what.padEnd(48)} ${median.toFixed(1).padStart(8)} ${(times.at(-1) as number).toFixed(1).padStart(8)}`,
  );
}
