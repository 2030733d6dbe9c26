import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, test } from 'vitest';
import { message } from '../../../shared-core/words/message.ts';
import { say } from './a-window.ts';
import { failWrites, letWrite } from './failing-disk.ts';
import { aimAt, aimedSpot } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();
afterEach(letWrite);

/** What a fresh opening of the file holds. */
function onDisk<T>(sql: string): T {
  const db = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  const found = db.prepare(sql).pluck().all() as T;
  db.close();
  return found;
}
const rawOnDisk = () => onDisk<number[]>('SELECT raw FROM reading ORDER BY id');
const excludedOnDisk = () => onDisk<number[]>("SELECT count(*) FROM amendment WHERE field = 'excluded'")[0];
const undone = () =>
  onDisk<number[]>('SELECT (SELECT count(*) FROM finding_due) + (SELECT count(*) FROM outlook_due)');

async function begin(): Promise<number> {
  const round = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  return round.id;
}
const upToDate = () => expect.poll(undone, { timeout: 20_000, interval: 20 }).toEqual([0]);
const delays = () => yard.heard('updates.delayed').map(({ problem }) => problem && say(problem));

/** Tries it with the disk full after 0, 1, 2 … writes, until all its writes find room. */
async function atEveryWrite(attempt: (writes: number) => Promise<void>): Promise<number> {
  for (let writes = 0; writes < 200; writes++) {
    failWrites({ code: 'SQLITE_FULL' }, { after: writes });
    await attempt(writes);
    if (!letWrite()) return writes;
  }
  throw new Error('It never ended.');
}

describe('on a disk that is full after so many writes', () => {
  test('a typed reading that is answered as saved is in the file, and one that is refused is not', async () => {
    const roundId = await begin();
    await upToDate();
    const answers: string[] = [];
    const writes = await atEveryWrite(async (n) => {
      await aimAt(roundId, 0, 0);
      const before = rawOnDisk();
      const raw = 10 + n / 100;
      const answer = await yard.answer('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw });
      const said = answer.ok ? 'saved' : say(answer.problem);
      answers.push(said);
      expect(rawOnDisk(), `full after ${n} writes: ${said}`).toEqual(answer.ok ? [...before, raw] : before);
      if (!answer.ok) {
        expect(said).toBe(
          'The disk is full or failing. Nothing was saved. Earlier readings are safe. Make room. Then try again.',
        );
      }
    });
    expect(answers).toContain('saved');
    expect(writes).toBeGreaterThan(5);
    // What follows from a saved reading is made once there is room, and said once.
    await upToDate();
    const { rows } = await yard.query('boards.list', {
      stackId: yard.stack.id,
      search: '',
      offset: 0,
      limit: 9,
    });
    expect(rows[0]?.latest?.averagePct).toBeCloseTo(
      (await yard.query('boards.get', { id: rows[0]!.id })).findings.at(-1)!.averagePct as number,
      9,
    );
  });

  test('a reading that finds no room in the WAL is saved once that is brought into the file', async () => {
    const roundId = await begin();
    await upToDate();
    for (const [n, raw] of [10, 11, 12].entries()) {
      failWrites({ code: 'SQLITE_FULL' }, { after: n, untilWalIsBroughtIn: true });
      expect(await yard.answer('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw })).toMatchObject({
        ok: true,
      });
    }
    expect(rawOnDisk()).toEqual([10, 11, 12]);
  });

  test('excluding a reading is answered as it is in the file', async () => {
    const roundId = await begin();
    for (const raw of [10, 11])
      await yard.command('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw });
    const { readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
    await atEveryWrite(async (n) => {
      const before = excludedOnDisk() ?? 0;
      const answer = await yard.answer('readings.exclude', {
        readingId: readings[0]!.id,
        why: { text: `try ${n}` },
      });
      expect(excludedOnDisk(), `full after ${n} writes`).toBe(answer.ok ? before + 1 : before);
    });
    await upToDate();
  });

  test('a value that settles is told as not saved where it is not in the file, and only there', async () => {
    const roundId = await begin();
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    await upToDate();
    await atEveryWrite(async (n) => {
      await aimAt(roundId, 0, 0);
      const before = { saved: rawOnDisk().length, told: yard.heard('round.notSaved').length };
      yard.meter.lift();
      yard.meter.show(11 + n / 10, 4);
      const told = yard.heard('round.notSaved').length - before.told;
      expect({ n, saved: rawOnDisk().length - before.saved + told, told }).toEqual({ n, saved: 1, told });
    });
    expect(await yard.query('rounds.get', { roundId })).toBeDefined();
    await upToDate();
  });

  test('work in the background waits, says so once, and goes on when there is room', async () => {
    const roundId = await begin();
    await yard.command('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw: 12 });
    await upToDate();
    await yard.command('settings.edit', { units: 'metric' });
    failWrites({ code: 'SQLITE_FULL' }, { after: 12 });
    for (let day = 0; day < 3; day++) {
      await yard.answer('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw: 13 });
    }
    await expect
      .poll(delays)
      .toEqual([
        'The disk is full or failing. What was saved is safe, but calls are not up to date. Make room. Pintally then continues on its own.',
      ]);
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(delays()).toHaveLength(1);
    letWrite();
    await upToDate();
    await expect.poll(delays).toHaveLength(2);
    expect(delays().at(-1)).toBeNull();
  });
});

test('a yard file that Pintally may not write to is named as that, and nothing is lost', async () => {
  const roundId = await begin();
  await upToDate();
  const raw = 12;
  failWrites({ code: 'SQLITE_READONLY' });
  const answer = await yard.answer('rounds.saveTyped', { ...(await aimedSpot(roundId)), raw });
  letWrite();
  expect(!answer.ok && say(answer.problem)).toBe(
    'Pintally may not write to the yard file or its folder. Nothing was saved. Earlier readings are safe. Allow writing there, and restart Pintally. Then try again.',
  );
  expect(rawOnDisk()).toEqual([]);
});

describe('a disk that fails while a reading is committed', () => {
  const spot = async (roundId: number) => ({ ...(await aimedSpot(roundId)), raw: 12.5 });

  test('and has written it: the reading is told as saved', async () => {
    const input = await spot(await begin());
    failWrites({ code: 'SQLITE_IOERR_FSYNC', isDone: true }, { onlyCommits: true });
    const answer = await yard.answer('rounds.saveTyped', input);
    letWrite();
    expect(answer.ok).toBe(true);
    expect(rawOnDisk()).toEqual([12.5]);
    await upToDate();
  });

  test('and fails again when asked: it may have been saved, and the same act is not saved twice', async () => {
    const input = await spot(await begin());
    const act = randomUUID();
    failWrites({ code: 'SQLITE_IOERR_FSYNC' }, { onlyCommits: true });
    const answer = await yard.answer('rounds.saveTyped', input, act);
    letWrite();
    expect(answer).toEqual({
      ok: false,
      problem: message('refusal.disk-failed', {
        undone: message('refusal.saved-or-not'),
        again: message('refusal.not-twice'),
      }),
      mayBeDone: true,
    });
    expect((await yard.answer('rounds.saveTyped', input, act)).ok).toBe(true);
    expect((await yard.answer('rounds.saveTyped', input, act)).ok).toBe(true);
    expect(rawOnDisk()).toEqual([12.5]);
    await upToDate();
  });
});
