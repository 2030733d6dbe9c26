/**
 * A yard of 20,000 boards in which 100,000 acts were done, then one act on all of its boards: how long its history takes
 * to ask for, and to undo and redo that act. Run: `npx node tests/bench/history.bench.ts`.
 */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import type { RequestName } from '../../shared-core/contract/requests.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { workedAtOnce } from './at-once.ts';
import { figure } from './figure.ts';
import { fillYard } from './filled-yard.ts';

const ACTS = 100_000;
const BOARDS = 20_000;

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
const file = join(dataDir, 'yard.sqlite');
fillYard(file, BOARDS);
const db = new Database(file);
db.transaction(() => {
  const add = db.prepare(
    "INSERT INTO act (uuid, request, input_hash, at, who, outcome) VALUES (?, 'boards.edit', '', '2026-03-01T09:00:00.000Z', 'w', '{}')",
  );
  const now = db.prepare('UPDATE act_now SET act_id = ?');
  const edit = db.prepare('UPDATE board SET note = ?, version = version + 1 WHERE id = ?');
  for (let act = 0; act < ACTS; act++) {
    now.run(add.run(randomUUID()).lastInsertRowid);
    edit.run(`Note ${act}`, 1 + (act % BOARDS));
  }
  now.run(null);
})();
db.close();

const app = createApp({ dataDir, links: noMeter, threads: threadSources, forecastAfterMs: 3_600_000 });
const window = openWindow(app);
await window.command('settings.edit', { sound: true });
await measure('acts.list, first page', 'acts.list', { boardId: null, before: null, limit: 50 });
await measure('acts.list, in the middle', 'acts.list', { boardId: null, before: ACTS / 2, limit: 50 });
await measure('acts.list, of a board', 'acts.list', { boardId: 77, before: null, limit: 50 });

const { rows } = await window.query('boards.list', { stackId: null, search: '', offset: 0, limit: 500 });
const versions = new Map(rows.map(({ id, version }) => [id, version]));
const boards = Array.from({ length: BOARDS }, (_, index) => ({
  id: index + 1,
  basedOn: versions.get(index + 1) ?? 1 + ACTS / BOARDS,
}));
const act = randomUUID();
await timed(`species of ${BOARDS} boards edited`, () =>
  window.command('boards.editTogether', { boards, changed: { speciesId: 'oak-white' } }, act),
);
await measure('acts.list with that act', 'acts.list', { boardId: null, before: null, limit: 50 });
await timed('that act undone', () => window.command('acts.undo', { act }));
await timed('and redone', () => window.command('acts.redo', { act }));
await app.close();
rmSync(dataDir, { recursive: true });

async function measure(what: string, name: RequestName, input: object): Promise<void> {
  const took: number[] = [];
  for (let run = 0; run < 15; run++) {
    const began = performance.now();
    const given = await window.answer(name, input);
    if (!given.ok) throw new Error(given.problem.code);
    took.push(performance.now() - began);
  }
  took.sort((a, b) => a - b);
  figure({ what: `${ACTS / 1000},000 acts: ${what}, p50`, value: took[7]!, unit: 'ms', goal: { most: 50 } });
}

async function timed(what: string, work: () => Promise<unknown>): Promise<void> {
  const { atOnceMs, tookMs } = await workedAtOnce(work);
  console.log(`${what}: ${(tookMs / 1000).toFixed(1)} s`);
  figure({ what: `host at once: ${what}`, value: atOnceMs, unit: 'ms', goal: { most: 50 } });
}
