import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { type ReadingAsTaken, readingChecksum } from '../../../electron/store/reading-checksum.ts';
import { openYard } from '../../../electron/store/yard.ts';
import { DAY_MS, HOUR_MS } from '../../../shared-core/time.ts';
import { openWindow } from './a-window.ts';
import { type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// The clock of the yard begins at 08:00 UTC on June 1, 2026.
withYardOfTwo();

const boardId = () => yard.boards[0]!.id;

/** A finished round of so many readings of the first board, an hour apart. */
async function probed(pcts: readonly number[]): Promise<number> {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  for (const pct of pcts) {
    yard.later(HOUR_MS);
    await type(roundId, pct);
  }
  await yard.command('rounds.finish', { roundId });
  return roundId;
}

async function redate(id: number, startedAt: string) {
  const { version } = await yard.query('rounds.get', { roundId: id });
  return yard.command('rounds.edit', { id, basedOn: version, changed: { startedAt } });
}
const refusal = async (id: number, startedAt: string) =>
  yard.refusal('rounds.edit', { id, basedOn: 2, changed: { startedAt } });

const taken = async () =>
  (await yard.query('boards.get', { id: boardId() })).readings.map(({ raw, takenAt }) => [raw, takenAt]);

function rowsAsTaken() {
  const db = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  const rows = db
    .prepare(
      `SELECT uuid, round_id AS roundId, board_id AS boardId, spot_index AS spotIndex, spot, raw, unit, how, settled,
         wood_temp_c AS woodTempC, meter_profile_id AS meterProfileId, taken_at AS takenAt, checksum FROM reading`,
    )
    .all() as (ReadingAsTaken & { checksum: number })[];
  db.close();
  return rows;
}

describe('the date of a round is corrected', () => {
  test('all of its readings move by the same time, its end too, and what was taken stays in the file', async () => {
    const id = await probed([14, 15]);
    const before = rowsAsTaken();
    expect(await redate(id, '2026-05-20T10:00:00.000Z')).toEqual({
      id,
      version: 3,
      startedAt: '2026-05-20T10:00:00.000Z',
      isDated: false,
      finishedAt: '2026-05-20T12:00:00.000Z',
    });
    expect(await taken()).toEqual([
      [14, '2026-05-20T11:00:00.000Z'],
      [15, '2026-05-20T12:00:00.000Z'],
    ]);
    expect(rowsAsTaken()).toEqual(before);
    for (const { checksum, ...reading } of rowsAsTaken()) expect(readingChecksum(reading)).toBe(checksum);
  });

  test('it is changed back the same way, and nothing is left of it', async () => {
    const id = await probed([14, 15]);
    const before = await taken();
    await redate(id, '2026-05-20T10:00:00.000Z');
    await redate(id, '2026-06-01T08:00:00.000Z');
    expect(await taken()).toEqual(before);
  });

  test('a forecast that could not be made is made', async () => {
    // The clock is a year ahead, and then set right.
    yard.later(365 * DAY_MS);
    const id = await probed([14, 15, 14, 15]);
    yard.later(-365 * DAY_MS + HOUR_MS);
    const forecast = () => yard.query('boards.forecast', { id: boardId() });
    expect((await forecast()).details).toBeNull();
    await redate(id, '2026-06-01T08:00:00.000Z');
    expect((await forecast()).details).not.toBeNull();
  });

  test('the rounds of a board are in their new order, and the newest of them has its call', async () => {
    const first = await probed([30]);
    yard.later(10 * DAY_MS);
    const second = await probed([14]);
    expect((await yard.query('boards.get', { id: boardId() })).board.latest?.roundId).toBe(second);
    await redate(second, '2026-05-20T08:00:00.000Z');
    const rounds = await yard.query('rounds.ofBoard', { boardId: boardId() });
    expect(rounds.map(({ id }) => id)).toEqual([first, second]);
    await expect
      .poll(async () => (await yard.query('boards.get', { id: boardId() })).board.latest?.roundId)
      .toBe(first);
  });

  test('a round of which only the day was given keeps when it was typed', async () => {
    const asked = { stackId: yard.stack.id, woodTempC: 20, startedOn: '2026-05-20' };
    const { id: roundId } = await yard.command('rounds.start', asked);
    await type(roundId, 14);
    await yard.command('rounds.finish', { roundId });
    expect(await redate(roundId, '2026-05-12T12:00:00.000Z')).toMatchObject({
      isDated: true,
      finishedAt: yard.now(),
    });
    expect(await taken()).toEqual([[14, '2026-05-12T12:00:00.000Z']]);
  });
});

describe('a date long before the stack was added, as of a flat clock battery', () => {
  test('is asked about, and changes nothing until the year is said to be right', async () => {
    const id = await probed([14]);
    const before = await taken();
    const startedAt = '1970-01-01T00:10:00.000Z';
    expect(await refusal(id, startedAt)).toBe(
      'That is 56 years before this stack was added. Nothing was changed. Is the year right?',
    );
    expect(await taken()).toEqual(before);
    const changed = { startedAt, isYearRight: true as const };
    expect(await yard.command('rounds.edit', { id, basedOn: 2, changed })).toMatchObject({ startedAt });
  });

  test('is not asked about where lumber may have been probed on paper before', async () => {
    const id = await probed([14]);
    expect(await redate(id, '2024-06-01T08:00:00.000Z')).toMatchObject({ version: 3 });
  });
});

test('a round keeps the boards that it had, wherever its date goes', async () => {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await yard.command('rounds.finish', { roundId });
  yard.later(HOUR_MS);
  await yard.command('boards.add', [yard.board('WAL-99')]);
  yard.later(HOUR_MS);
  const codes = async () => (await yard.query('rounds.get', { roundId })).boards.map(({ code }) => code);
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
  // The boards were added on June 1, at 08:00.
  await redate(roundId, '2026-05-20T08:00:00.000Z');
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
  await redate(roundId, yard.now());
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
});

describe('another date is refused', () => {
  test('in the future, of the round or of its last reading', async () => {
    const id = await probed([14, 15]);
    expect(await refusal(id, '2026-06-01T10:00:01.000Z')).toMatch(/That time is in the future/);
    expect(await refusal(id, '2026-06-01T08:30:00.000Z')).toMatch(/last reading .* in the future/);
    expect(await taken()).toHaveLength(2);
  });

  test('before a board of it was sawn, by its name', async () => {
    const { id, version } = yard.boards[0]!;
    await yard.command('boards.edit', { id, basedOn: version, changed: { sawnOn: '2026-05-25' } });
    const roundId = await probed([14]);
    const before = await taken();
    expect(await refusal(roundId, '2026-05-20T08:00:00.000Z')).toMatch(/WAL-01 was sawn on May 25.*Nothing/);
    expect(await taken()).toEqual(before);
  });

  test('after a board of it was sold, by its name, unless it was read after that before', async () => {
    const roundId = await probed([14]);
    yard.later(10 * DAY_MS);
    const sold = { boardIds: [boardId()], why: 'sold' as const };
    await yard.command('boards.archive', { ...sold, at: '2026-06-05T17:00:00.000Z' });
    const before = await taken();
    expect(await refusal(roundId, '2026-06-06T08:00:00.000Z')).toMatch(
      /WAL-01 left the yard on Jun 5, 2026, before that day\. Nothing was changed/,
    );
    expect(await taken()).toEqual(before);
    await redate(roundId, '2026-06-05T08:00:00.000Z');
    await yard.command('boards.bringBack', { boards: [{ id: boardId() }] });
    await yard.command('boards.archive', { ...sold, at: '2026-05-30T17:00:00.000Z', isBeforeReading: true });
    expect(await redate(roundId, '2026-06-04T08:00:00.000Z')).toMatchObject({
      startedAt: '2026-06-04T08:00:00.000Z',
    });
  });

  test('while it is running', async () => {
    const { id } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    expect(await yard.refusal('rounds.edit', { id, basedOn: 1, changed: { startedAt: yard.now() } })).toMatch(
      /still running/,
    );
  });

  test('where another window changed it meanwhile', async () => {
    const id = await probed([14]);
    const other = openWindow(yard.app, 'window-2');
    const edit = { id, basedOn: 2, changed: { startedAt: '2026-05-20T08:00:00.000Z' } };
    await other.command('rounds.edit', edit);
    const refused = await yard.answer('rounds.edit', {
      ...edit,
      changed: { startedAt: '2026-05-21T08:00:00.000Z' },
    });
    expect(refused).toMatchObject({
      ok: false,
      current: { version: 3, startedAt: '2026-05-20T08:00:00.000Z' },
    });
    other.close();
  });
});

describe('a round never ends before it begins', () => {
  test('where the clock is set back during it', async () => {
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    yard.later(-DAY_MS);
    await type(roundId, 14);
    await yard.command('rounds.finish', { roundId });
    const [round] = await yard.query('rounds.ofBoard', { boardId: boardId() });
    const passedMs = Date.parse(round!.finishedAt!) - Date.parse(round!.startedAt);
    expect(passedMs).toBeGreaterThanOrEqual(0);
    expect(passedMs).toBeLessThan(60_000);
    const [[, takenAt]] = (await taken()) as [[number, string]];
    expect(Date.parse(takenAt)).toBeGreaterThanOrEqual(Date.parse(round!.startedAt));
  });

  test('in the file, whoever asks', async () => {
    const id = await probed([14]);
    await yard.command('rounds.reopen', { roundId: id });
    const file = join(yard.dataDir, 'yard.sqlite');
    await yard.app.close();
    const opened = openYard(file);
    opened.rounds.finish(id, '2020-01-01T00:00:00.000Z');
    expect(opened.rounds.get(id)).toMatchObject({ finishedAt: '2026-06-01T08:00:00.000Z' });
    opened.close();
  });
});
