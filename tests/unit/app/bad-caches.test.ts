import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { yardOfTwo } from './yard-of-two.ts';

// Forecasts are made by a thread, and the machine may be busy.

type Yard = Awaited<ReturnType<typeof yardOfTwo>>;

/** Changes the file as a disk would that returns other bytes: no rule of the file holds it up. */
function damage(yard: Yard, sql: string): void {
  const db = new Database(join(yard.dataDir, 'yard.sqlite'));
  db.pragma('ignore_check_constraints = ON');
  db.pragma('foreign_keys = OFF');
  db.exec(sql);
  db.close();
}

async function probedYard(): Promise<Yard> {
  const yard = await yardOfTwo();
  const { id: stackId } = yard.stack;
  await yard.command('boards.edit', {
    id: yard.boards[0]!.id,
    basedOn: 1,
    changed: { sawnOn: '2025-06-01' },
  });
  const { id: roundId, boards } = await yard.command('rounds.start', { stackId, woodTempC: 20 });
  for (const [spotIndex, raw] of [14, 15, 14.2, 15.1].entries()) {
    const at = { roundId, boardId: boards[0]!.boardId, spotIndex, newestReadingId: null };
    await yard.command('rounds.saveTyped', { ...at, raw });
  }
  await yard.command('rounds.finish', { roundId });
  await settled(yard);
  return yard;
}
async function settled(yard: Yard): Promise<void> {
  const db = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  const due = db
    .prepare('SELECT (SELECT count(*) FROM finding_due) + (SELECT count(*) FROM outlook_due)')
    .pluck();
  await expect.poll(() => due.get(), { timeout: 20_000, interval: 20 }).toBe(0);
  db.close();
}
const listOf = async (yard: Yard) =>
  (await yard.query('boards.list', { stackId: yard.stack.id, search: '', offset: 0, limit: 9 })).rows;
const everyView = async (yard: Yard) => {
  const { id } = yard.boards[0]!;
  const rows = await listOf(yard);
  const stacks = await yard.query('stacks.list', {});
  await yard.query('stacks.plan', { id: yard.stack.id, certainty: 0.9 });
  await yard.query('stacks.volume', { id: yard.stack.id });
  await yard.query('rounds.get', { roundId: stacks[0]!.lastRoundId ?? 1 });
  await yard.query('boards.get', { id });
  await yard.query('labels.boards', { stackId: null, search: '' });
  await yard.query('labels.contents', { boardIds: [id] });
  await yard.query('places.list', {});
  return { latest: rows[0]?.latest, outlook: rows[0]?.outlook, stacks };
};

describe.each([
  ['no JSON', '{"roundId":'],
  ['another form', '{}'],
])('a cache that holds %s', (_, bad) => {
  test.each([
    ['finding', `UPDATE finding SET record = '${bad}'`],
    ['outlook', `UPDATE outlook SET record = '${bad}'`],
    ['comparison', `INSERT OR REPLACE INTO round_suspicion SELECT id, 1, '${bad}' FROM round`],
  ])('breaks no view, and the %s is made again', async (what, sql) => {
    const yard = await probedYard();
    const before = await everyView(yard);
    expect(before.latest).not.toBeNull();
    expect(before.outlook).not.toBeNull();
    damage(yard, `DROP TRIGGER finding_made_again; DROP TRIGGER outlook_due_after_new_finding; ${sql}`);
    const table = what === 'comparison' ? 'round_suspicion' : what;
    const field = what === 'comparison' ? 'suspicions' : 'record';
    await everyView(yard);
    await expect
      .poll(
        async () => {
          await everyView(yard);
          const db = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
          const left = db.prepare(`SELECT count(*) FROM ${table} WHERE ${field} = ?`).pluck().get(bad);
          db.close();
          return left;
        },
        { timeout: 20_000, interval: 50 },
      )
      .toBe(0);
    await expect.poll(() => everyView(yard), { timeout: 20_000, interval: 100 }).toEqual(before);
    await yard.app.close();
    expect(yard.faults).toEqual([]);
  });
});

test('a yard whose cache holds no JSON is opened', async () => {
  const yard = await probedYard();
  damage(yard, `UPDATE finding SET record = 'x'`);
  await yard.command('yard.openOwn', {});
  expect(await yard.query('yard.info', {})).toMatchObject({ problem: null });
  await everyView(yard);
  await expect.poll(async () => (await listOf(yard))[0]?.latest?.call, { timeout: 20_000 }).toBeDefined();
  await yard.app.close();
  expect(yard.faults).toEqual([]);
});
