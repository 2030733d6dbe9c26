/**
 * How soon a reading that is typed is answered, which is once it is on disk, beside a bare commit of one row that is on
 * disk when it returns. Run it with
 *
 *     npx node tests/bench/typed.bench.ts [readings, 600] [boards of the yard, 20000]
 *
 * Ten readings a second are typed, more than a hand can; a bare commit is made after each, to another file of the same folder, so that
 * both have the same disk and the same busy machine.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { unknownProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { figure } from './figure.ts';
import { fillYard } from './filled-yard.ts';

const [READINGS = 600, BOARDS = 20_000] = process.argv.slice(2).map(Number);
const TYPED_EVERY_MS = 100;
/** Until code is compiled. */
const WARM = 100;
const GOAL_MS = { p50: 3, p99: 8 };
const SPOTS = 3;

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
fillYard(join(dataDir, 'yard.sqlite'), BOARDS, 4, { name: 'Meter', profile: unknownProfile });
const bare = bareCommits(join(dataDir, 'bare.sqlite'));
const app = createApp({ dataDir, links: noMeter, threads: threadSources, forecastAfterMs: 3_600_000 });
const { command } = openWindow(app);
await command('settings.edit', { sound: true });
const { id: roundId, boards } = await command('rounds.start', { stackId: 2, woodTempC: 15 });

const answered: number[] = [];
const committed: number[] = [];
const worked: number[] = [];
for (let n = 0; n < WARM + READINGS; n++) {
  const { boardId } = boards[Math.floor(n / SPOTS) % boards.length]!;
  const reading = { roundId, boardId, spotIndex: n % SPOTS, newestReadingId: null, raw: 12 + (n % 30) / 10 };
  const [beganMs, began] = [performance.now(), process.threadCpuUsage()];
  await command('rounds.saveTyped', reading);
  const tookMs = performance.now() - beganMs;
  const { user, system } = process.threadCpuUsage(began);
  const bareMs = bare.commit(n);
  if (n >= WARM) {
    answered.push(tookMs);
    worked.push((user + system) / 1000);
    committed.push(bareMs);
  }
  await pause(TYPED_EVERY_MS);
}
await app.close();
bare.close();
rmSync(dataDir, { recursive: true });

console.log(
  `of the answer, the host's own work: p50 ${at(worked, 0.5).toFixed(2)}, p99 ${at(worked, 0.99).toFixed(2)} ms`,
);
for (const [part, share] of [
  ['p50', 0.5],
  ['p99', 0.99],
] as const)
  figure({
    what: `typed reading answered, ${part}`,
    value: at(answered, share),
    unit: 'ms',
    goal: { most: GOAL_MS[part] },
    missesBecause:
      'the answer has the call of the board: a quarter is the commit, a fifth other SQL, the rest judging the board and telling it',
    bare: at(committed, share),
  });

function at(times: readonly number[], share: number): number {
  return times.toSorted((a, b) => a - b)[Math.floor(share * times.length)]!;
}

function bareCommits(file: string) {
  const db = new Database(file);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE one (n INTEGER)');
  const insert = db.prepare('INSERT INTO one VALUES (?)');
  return {
    /** How long one took, ms. */
    commit: (n: number): number => {
      const beganMs = performance.now();
      insert.run(n);
      return performance.now() - beganMs;
    },
    close: () => db.close(),
  };
}
