import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { describe, expect, test, vi } from 'vitest';
import { MERGED_WITHIN_MS } from '../../../electron/paced.ts';
import type { Live, RoundChange } from '../../../shared-core/contract/round.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';
import { openWindow, say } from './a-window.ts';
import { handHeld } from './hand-held-meter.ts';
import { aimAt, aimedSpot, aimOf, saveLive, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const begin = async (woodTempC: number | null = 20) =>
  (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC })).id;
/** Those of the board aimed at. */
const readingsOf = async (roundId: number) =>
  (await yard.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];

async function withMeter() {
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
}

test('a temperature of a board that is not in the stack, or not at all, is refused', async () => {
  const roundId = await begin();
  const other = await yard.command('stacks.add', {
    name: 'Elsewhere',
    placeId: yard.place.id,
    endUseId: 'furniture',
    topCover: 'covered',
    note: '',
  });
  const [stray] = await yard.command('boards.add', [{ ...yard.board('OAK-01'), stackId: other.id }]);
  const given = { roundId, woodTempC: 8 };
  expect(await yard.refusal('rounds.setTemperature', { ...given, boardId: stray!.id })).toMatch(/OAK-01/);
  expect(await yard.answer('rounds.setTemperature', { ...given, boardId: 999 })).toEqual({
    ok: false,
    problem: { code: 'refusal.not-found', facts: { what: 'board' } },
  });
});

describe('a round with typed values', () => {
  test('leads from spot to spot and, on request, to the next board, and ends with a call for each', {
    tags: 'core',
  }, async () => {
    const roundId = await begin();
    const { boards } = await yard.query('rounds.get', { roundId });
    const spots = planSpots(boards[0]!).plan.length;
    expect(spots).toBeGreaterThanOrEqual(4);
    for (let board = 0; board < 2; board++) {
      for (let spot = 0; spot < spots; spot++) {
        expect(await aimOf(roundId)).toEqual({ board, spotIndex: spot });
        const depth = planSpots(boards[board]!).plan[spot]!.spot.depth;
        yard.later(5000);
        await type(roundId, depth === 'shell' ? 7 : 7.4);
      }
      expect(await aimOf(roundId)).toEqual({ board, spotIndex: null });
      if (board === 0) await aimAt(roundId, 1);
    }
    const summary = await yard.command('rounds.finish', { roundId });
    expect(summary).toMatchObject({ boards: 2, probed: 2 });
    expect(Object.values(summary.calls).reduce((sum, n) => sum + n, 0)).toBe(2);
    const rows = (
      await yard.query('boards.list', { stackId: yard.stack.id, search: '', offset: 0, limit: 10 })
    ).rows;
    for (const row of rows) expect(row.latest?.averagePct).toBeGreaterThan(4);
  });

  test('shows a reading as kept only once it is on disk', { tags: 'core' }, async () => {
    const roundId = await begin();
    await type(roundId, 12.6);
    const saved = yard.heard('round.changed').find((change) => change.savedReadingId !== null)!;
    const disk = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
    expect(disk.prepare('SELECT raw, how FROM reading WHERE id = ?').get(saved.savedReadingId)).toEqual({
      raw: 12.6,
      how: 'typed',
    });
    disk.close();
  });

  test('shows a reading, as it is judged, before the disk has what it was judged as', async () => {
    const disk = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
    const onDisk = (table: string) =>
      (disk.prepare(`SELECT count(*) AS rows FROM ${table}`).get() as { rows: number }).rows;
    const shown: unknown[] = [];
    const window = openWindow(yard.app, 'window-2', (name, data) => {
      const { savedReadingId, board } = data as RoundChange;
      if (name !== 'round.changed' || savedReadingId === null) return;
      const isJudged = board.finding !== null && (board.assessment?.readings[0]?.counts ?? false);
      shown.push({ isJudged, readings: onDisk('reading'), findings: onDisk('finding') });
    });
    const roundId = await begin();
    await window.command('rounds.open', { roundId });
    await type(roundId, 12.6, window);
    expect(shown).toEqual([{ isJudged: true, readings: 1, findings: 0 }]);
    // Nor does whoever typed it wait for that.
    expect(onDisk('finding')).toBe(0);
    await new Promise(setImmediate);
    expect(onDisk('finding')).toBe(1);
    disk.close();
    window.close();
  });

  test('an absurd value (5000) is kept on record, refused, and its spot is asked for again', {
    tags: 'core',
  }, async () => {
    const roundId = await begin();
    await type(roundId, 5000);
    const [reading] = await readingsOf(roundId);
    expect(reading).toMatchObject({ raw: 5000, counts: false });
    expect(reading?.suspicions[0]?.why).toBeTruthy();
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 0 });
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, 1e308, 5e-324, '12', null])(
    '%s is no reading: a sentence, and nothing is kept',
    async (raw) => {
      const roundId = await begin();
      const spot = await aimedSpot(roundId);
      expect(await yard.refusal('rounds.saveTyped', { ...spot, raw })).toMatch(/Nothing was saved/);
      expect(await readingsOf(roundId)).toEqual([]);
    },
  );

  test.each([
    [1e308, 'No meter shows that number. Check it. Nothing was saved.'],
    [-5, 'A reading is above 0. Check the sign. Nothing was saved.'],
  ])('%d is what no meter shows: a sentence, and nothing is saved', async (raw, sentence) => {
    const roundId = await begin();
    const spot = await aimedSpot(roundId);
    expect(await yard.refusal('rounds.saveTyped', { ...spot, raw })).toBe(sentence);
    expect(await readingsOf(roundId)).toEqual([]);
  });

  test('0 is no reading: a sentence, and nothing is saved', async () => {
    const roundId = await begin();
    const spot = await aimedSpot(roundId);
    expect(await yard.refusal('rounds.saveTyped', { ...spot, raw: 0 })).toBe(
      '0 is not a reading. A meter shows a blank or a dash instead. Leave the spot open, or probe it again. Nothing was saved.',
    );
    expect(await readingsOf(roundId)).toEqual([]);
  });

  test.each([0.5, 4])('%d %, below the scale of a pin meter, is saved and questioned', async (raw) => {
    const roundId = await begin();
    await type(roundId, 12);
    await type(roundId, raw);
    const [, reading] = await readingsOf(roundId);
    expect(reading?.suspicions.map(({ severity }) => severity)).toContain('questionable');
  });

  test('the spot that an excluded reading leaves open is aimed at next; one that is still read is not', async () => {
    const roundId = await begin();
    await type(roundId, 12);
    await type(roundId, 13);
    const [first] = await readingsOf(roundId);
    await yard.command('readings.exclude', { readingId: first!.id, why: { code: 'wet-face' } });
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 0 });
    await type(roundId, 12.2);
    await aimAt(roundId, 0, 0);
    await type(roundId, 12.4);
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 2 });
    const again = (await readingsOf(roundId)).at(-1);
    await yard.command('readings.exclude', { readingId: again!.id, why: { code: 'wet-face' } });
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 2 });
  });

  test('the last reading can be set aside and its spot is aimed at again; it stays on record', async () => {
    const roundId = await begin();
    await type(roundId, 12);
    await type(roundId, 13);
    await yard.command('rounds.undo', { readingId: (await readingsOf(roundId))[1]!.id });
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 1 });
    const readings = await readingsOf(roundId);
    expect(readings.map(({ raw, counts }) => ({ raw, counts }))).toEqual([
      { raw: 12, counts: true },
      { raw: 13, counts: false },
    ]);
    await yard.command('readings.include', { readingId: readings[1]!.id });
    expect((await readingsOf(roundId))[1]).toMatchObject({ counts: true, excluded: null });
  });

  test('a value undone is a slip: the board counts as not probed, and the round before it stays its last', async () => {
    const first = await begin();
    await type(first, 24);
    await yard.command('rounds.finish', { roundId: first });
    yard.later(3_600_000);
    const second = await begin();
    await aimAt(second, 1);
    await type(second, 14);
    await yard.command('rounds.undo', { readingId: (await readingsOf(second))[0]!.id });
    const isRead = async () =>
      (await yard.query('rounds.get', { roundId: second })).boards.map((each) => each.isRead);
    expect(await isRead()).toEqual([false, false]);
    expect(await yard.query('stacks.get', { id: yard.stack.id })).toMatchObject({
      probed: 1,
      lastProbedAt: '2026-06-01T08:00:00.000Z',
    });
    const { board, readings } = await yard.query('boards.get', { id: yard.boards[1]!.id });
    expect(board.latest).toBeNull();
    expect(board.judgement).toMatchObject({ call: null, reasons: [] });
    // It stays on record.
    expect(readings).toMatchObject([{ raw: 14, excluded: { code: 'undone-in-round' } }]);
    await aimAt(second, 0);
    await type(second, 11);
    await yard.command('rounds.undo', { readingId: (await readingsOf(second))[0]!.id });
    expect((await yard.query('boards.get', { id: yard.boards[0]!.id })).board.latest?.roundId).toBe(first);
    await yard.command('rounds.finish', { roundId: second });
    const third = await begin();
    const { probed } = await yard.query('rounds.get', { roundId: third });
    expect(probed?.lastRound).toMatchObject({ at: '2026-06-01T08:00:00.000Z' });
  });

  test('a temperature given later corrects every reading of the round, a board keeps its own', async () => {
    const roundId = await begin(null);
    await type(roundId, 12);
    const unknown = (await readingsOf(roundId))[0]!;
    // The shop is known to be at 20 °C.
    expect(unknown.corrected.warnings).toContain('temperature-of-air');
    await yard.command('rounds.setTemperature', { roundId, boardId: null, woodTempC: 2 });
    const cold = (await readingsOf(roundId))[0]!;
    // Wood Handbook (FPL-GTR-190), ch. 13: added in colder wood.
    expect(cold.corrected.mcPct!).toBeGreaterThan(unknown.corrected.mcPct!);
    await yard.command('rounds.setTemperature', { roundId, boardId: yard.boards[0]!.id, woodTempC: 25 });
    await yard.command('rounds.setTemperature', { roundId, boardId: null, woodTempC: 10 });
    expect((await readingsOf(roundId))[0]!.woodTempC).toBe(25);
    expect(cold.raw).toBe(12);
  });

  test('shows every board of the stack in order, each with its own temperature or the one of the round', async () => {
    const roundId = await begin(12);
    const shown = async () =>
      (await yard.query('rounds.get', { roundId })).boards.map(({ code, woodTempC, ownTemp }) => [
        code,
        woodTempC,
        ownTemp,
      ]);
    expect(await shown()).toEqual([
      ['WAL-01', 12, false],
      ['WAL-02', 12, false],
    ]);
    await yard.command('rounds.setTemperature', { roundId, boardId: yard.boards[1]!.id, woodTempC: 3 });
    await yard.command('rounds.setTemperature', { roundId, boardId: yard.boards[1]!.id, woodTempC: null });
    await yard.command('rounds.setTemperature', { roundId, boardId: yard.boards[0]!.id, woodTempC: 5 });
    expect(await shown()).toEqual([
      ['WAL-01', 5, true],
      ['WAL-02', null, true],
    ]);
  });

  test('is taken up where it was left after the app was closed', async () => {
    const roundId = await begin();
    await type(roundId, 12);
    const again = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    expect(again.id).toBe(roundId);
    expect(again.aim).toEqual({ boardId: yard.boards[0]!.id, spotIndex: 1 });
  });

  test('takes no reading once it is finished, and takes them again once it is reopened', async () => {
    const roundId = await begin();
    const spot = await aimedSpot(roundId);
    await yard.command('rounds.finish', { roundId });
    expect(await yard.refusal('rounds.saveTyped', { ...spot, raw: 12 })).toMatch(
      /finished.*Reopen it, or start a new round/,
    );
    await yard.command('rounds.reopen', { roundId });
    expect(await yard.query('rounds.get', { roundId })).toMatchObject({
      finishedAt: null,
      aim: { boardId: spot.boardId, spotIndex: 0 },
    });
    await type(roundId, 12);
    expect((await readingsOf(roundId)).map(({ raw }) => raw)).toEqual([12]);
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 1 });
  });

  test('lists no board that was added to the stack after it was finished', async () => {
    const roundId = await begin();
    await yard.command('rounds.finish', { roundId });
    yard.later(60_000);
    await yard.command('boards.add', [yard.board('WAL-99')]);
    const codes = (await yard.query('rounds.get', { roundId })).boards.map(({ code }) => code);
    expect(codes).toHaveLength(2);
    expect(codes).not.toContain('WAL-99');
  });

  test('stays finished while another round of its stack is running', async () => {
    const roundId = await begin();
    await yard.command('rounds.finish', { roundId });
    await begin();
    expect(await yard.refusal('rounds.reopen', { roundId })).toBe(
      'Another round of Walnut is running. Nothing was changed. Finish that round first.',
    );
    expect((await yard.query('rounds.get', { roundId })).finishedAt).not.toBeNull();
  });

  test('shows what the round before found at each spot, and when', async () => {
    const first = await begin();
    await type(first, 12);
    await type(first, 13);
    const { probed } = await yard.query('rounds.get', { roundId: first });
    expect(probed?.lastRound).toBeNull();
    const found = probed?.assessment?.readings.map(({ corrected }) => corrected.mcPct);
    await yard.command('rounds.finish', { roundId: first });
    yard.later(86_400_000);
    const { lastRound } = (await yard.query('rounds.get', { roundId: await begin() })).probed!;
    expect(lastRound).toEqual({
      at: '2026-06-01T08:00:00.000Z',
      spotPcts: [found?.[0], found?.[1], null, null],
    });
  });

  test('walks past a board that is somewhere else than its stack, and says which is next', async () => {
    const roundId = await begin();
    const elsewhere = await yard.command('places.add', {
      name: 'Attic',
      kind: 'shop',
      air: Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.4 })),
    });
    await type(roundId, 12);
    await yard.command('boards.move', {
      boardIds: [yard.boards[0]!.id],
      placeId: elsewhere.id,
      since: '2026-06-01T08:00:00.000Z',
    });
    const { boards } = await yard.query('rounds.get', { roundId });
    expect(boards.map(({ code }) => code)).toEqual(['WAL-02']);
    expect(yard.heard('round.outdated').at(-1)?.why).toEqual(
      message('round.board-left', { boardCode: 'WAL-01', nextCode: 'WAL-02' }),
    );
    // What it read of that board is still found in it.
    await yard.command('rounds.finish', { roundId });
    expect((await yard.query('rounds.get', { roundId })).boards.map(({ code }) => code)).toEqual([
      'WAL-02',
      'WAL-01',
    ]);
  });
});

describe('a round of an earlier day', () => {
  const start = async (startedOn: string) =>
    (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20, startedOn })).id;

  test('has readings of that day, at noon there', async () => {
    const roundId = await start('2026-05-04');
    await type(roundId, 12);
    const { isDated } = await yard.query('rounds.get', { roundId });
    expect(isDated).toBe(true);
    const noon = new Date('2026-05-04T12:00').toISOString();
    expect((await readingsOf(roundId))[0]?.takenAt).toBe(noon);
    const { rows } = await yard.query('boards.list', {
      stackId: yard.stack.id,
      search: '',
      offset: 0,
      limit: 10,
    });
    expect(rows[0]?.latest?.at).toBe(noon);
  });

  test('is the round before one of a later day, though it was typed after it', async () => {
    const later = await begin();
    await type(later, 9);
    await yard.command('rounds.finish', { roundId: later });
    const earlier = await start('2026-05-04');
    await type(earlier, 14);
    expect((await yard.query('rounds.get', { roundId: earlier })).probed?.lastRound).toBeNull();
    await yard.command('rounds.finish', { roundId: earlier });
    await yard.command('rounds.reopen', { roundId: later });
    await aimAt(later, 0);
    expect((await yard.query('rounds.get', { roundId: later })).probed?.lastRound?.spotPcts).toEqual([
      expect.any(Number),
      null,
      null,
      null,
    ]);
    const { rows } = await yard.query('boards.list', {
      stackId: yard.stack.id,
      search: '',
      offset: 0,
      limit: 10,
    });
    expect(rows[0]?.latest?.roundId).toBe(later);
  });

  test('takes no live value: a meter shows what is so now', async () => {
    const roundId = await start('2026-05-04');
    await withMeter();
    yard.meter.lift();
    yard.meter.show(11.8, 4);
    expect(await readingsOf(roundId)).toEqual([]);
    expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toBe(
      'This round has an earlier date, so the meter’s value was not saved. Type its readings.',
    );
  });

  test('of today is a round of now; of a day that is still to come it is refused', async () => {
    const input = { stackId: yard.stack.id, woodTempC: 20, startedOn: '2026-06-02' };
    expect(await yard.refusal('rounds.start', input)).toMatch(/That day is in the future/);
    expect(await yard.query('rounds.get', { roundId: await start('2026-06-01') })).toMatchObject({
      isDated: false,
      startedAt: '2026-06-01T08:00:00.000Z',
    });
  });
});

describe('a round with a live meter', () => {
  test('keeps one reading an insertion, when it has settled, and aims at the next spot', async () => {
    const roundId = await begin();
    await withMeter();
    yard.meter.lift();
    yard.meter.show(11.8, 4);
    expect((await readingsOf(roundId)).map(({ raw, how, settled }) => ({ raw, how, settled }))).toEqual([
      { raw: 11.8, how: 'settled', settled: true },
    ]);
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 1 });
    yard.meter.lift();
    yard.meter.show(12.4, 4);
    expect((await readingsOf(roundId)).map(({ raw }) => raw)).toEqual([11.8, 12.4]);
  });

  test('Space takes the value at once, marks it as not settled, and the same insertion gives no second reading', async () => {
    const roundId = await begin();
    await withMeter();
    yard.meter.lift();
    yard.meter.show(11.8, 0.3);
    await saveLive(roundId);
    yard.meter.show(11.8, 5);
    const readings = await readingsOf(roundId);
    expect(readings.map(({ raw, how, settled }) => ({ raw, how, settled }))).toEqual([
      { raw: 11.8, how: 'at-once', settled: false },
    ]);
    expect(readings[0]!.suspicions.map(({ rule }) => rule)).toContain('not-settled');
  });

  test.each([1e308, -1e308, 5e-324, 0])(
    'a meter that sends %d shows no reading: a sentence, nothing is saved, and the next value is',
    async (sent) => {
      await withMeter();
      yard.meter.describe({
        ...handHeld,
        value: { kind: 'number', format: 21, byteOffset: 0, exponent: 0, scale: 1, offset: 0 },
      });
      const roundId = await begin();
      const send = (pct: number) => yard.meter.sendRubbish(new Uint8Array(new Float64Array([pct]).buffer));
      send(sent);
      const refused = await yard.refusal('rounds.saveLive', await aimedSpot(roundId));
      expect(refused).toBe(say(message('refusal.no-value')));
      expect(await readingsOf(roundId)).toEqual([]);
      send(12);
      await saveLive(roundId);
      expect(await readingsOf(roundId)).toMatchObject([{ raw: 12, counts: true }]);
    },
  );

  test('takes live values again once it is reopened', async () => {
    const roundId = await begin();
    await withMeter();
    await yard.command('rounds.finish', { roundId });
    await yard.command('rounds.reopen', { roundId });
    yard.meter.lift();
    yard.meter.show(11.8, 4);
    expect((await readingsOf(roundId)).map(({ raw }) => raw)).toEqual([11.8]);
  });

  test('keeps nothing by itself when it was told not to', async () => {
    await yard.command('settings.edit', { saveWhenSettled: false });
    const roundId = await begin();
    await withMeter();
    yard.meter.show(11.8, 5);
    expect(await readingsOf(roundId)).toEqual([]);
  });

  test('a value that settles while another program holds the file is said not to be kept, and can be taken afterwards', async () => {
    const roundId = await begin();
    await withMeter();
    const other = new Database(join(yard.dataDir, 'yard.sqlite'));
    other.exec('BEGIN IMMEDIATE');
    yard.meter.show(11.8, 4);
    other.exec('COMMIT');
    other.close();
    expect(yard.heard('round.notSaved')).toEqual([
      {
        roundId,
        problem: message('refusal.file-in-use', {
          undone: message('refusal.value-not-saved'),
          again: message('refusal.press-space'),
        }),
      },
    ]);
    expect(await readingsOf(roundId)).toEqual([]);
    await saveLive(roundId);
    expect((await readingsOf(roundId)).map(({ raw }) => raw)).toEqual([11.8]);
  });

  test('a value that settles and is kept, but cannot be judged, is not called lost', async () => {
    const roundId = await begin();
    await withMeter();
    const other = new Database(join(yard.dataDir, 'yard.sqlite'));
    other.exec('ALTER TABLE finding RENAME TO finding_away');
    yard.meter.show(11.8, 4);
    other.exec('ALTER TABLE finding_away RENAME TO finding');
    other.close();
    expect(yard.faults.splice(0).map(String)).toEqual([expect.stringMatching(/no such table: .*finding/)]);
    expect(yard.heard('round.notSaved')).toEqual([]);
    expect(yard.heard('updates.delayed').map(({ problem }) => problem && say(problem))).toEqual([
      expect.stringMatching(/What was saved is safe.*open this page again/),
    ]);
    expect((await readingsOf(roundId)).map(({ raw }) => raw)).toEqual([11.8]);
  });

  test('with the pins out there is nothing to take, and it says so', async () => {
    const roundId = await begin();
    await withMeter();
    yard.meter.lift();
    expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(
      /no value.*Nothing was saved.*type/s,
    );
  });

  test('rubbish from the meter is counted and said, and the next good value is read', async () => {
    const roundId = await begin();
    await withMeter();
    yard.meter.sendRubbish(new Uint8Array([1]));
    yard.meter.sendRubbish(new Uint8Array(0));
    const { counts } = await yard.query('meter.state', {});
    expect(counts).toMatchObject({ received: 2, decoded: 0, refused: 2 });
    expect(counts.lastRefusal).toBeTruthy();
    yard.meter.show(11.8, 4);
    expect(await readingsOf(roundId)).toHaveLength(1);
  });

  test('the window hears of the first live value at once, and of a backlog as the newest with the trace of all', async () => {
    await begin();
    await withMeter();
    yard.meter.show(11.8, 0.1);
    expect(yard.heard('meter.live').at(-1)).toMatchObject({ raw: 11.8, phase: 'drifting' });
    await pause(2 * MERGED_WITHIN_MS);
    const before = yard.heard('meter.live').length;
    for (const value of [11.9, 12, 12.1, 12.2]) yard.meter.show(value, 0.1);
    await vi.waitFor(() => expect(yard.heard('meter.live').at(-1)?.raw).toBe(12.2));
    const backlog = yard.heard('meter.live').slice(before);
    expect(backlog.length).toBeLessThan(4);
    expect(backlog.flatMap(({ trace }) => trace)).toEqual([11.9, 12, 12.1, 12.2]);
    expect(backlog.at(-1)?.corrected?.mcPct).toBeGreaterThan(5);
  });

  test('a value that settles is shown before it is saved, and saved whatever comes after it', async () => {
    await begin();
    await withMeter();
    yard.meter.show(11.8, 4);
    yard.meter.lift();
    const shown = yard
      .told()
      .findIndex(({ name, data }) => name === 'meter.live' && (data as Live).phase === 'settled');
    const saved = yard
      .told()
      .findIndex(
        ({ name, data }) => name === 'round.changed' && (data as RoundChange).savedReadingId !== null,
      );
    expect(shown).toBeGreaterThan(-1);
    expect(saved).toBeGreaterThan(shown);
  });
});

describe('the simulated meter', () => {
  test('fills a board of the demo yard by itself', async () => {
    await yard.command('yard.openDemo', {});
    await yard.command('meter.simulate', {});
    const [stack] = await yard.query('stacks.list', {});
    const { id } = await yard.command('rounds.start', { stackId: stack!.id, woodTempC: 20 });
    await expect.poll(() => readingsOf(id), { interval: 200 }).toHaveLength(2);
  });

  test('makes nothing up in the own yard', async () => {
    expect(await yard.query('meter.state', {})).toMatchObject({ canSimulate: false });
    expect(await yard.refusal('meter.simulate', {})).toBe(
      'The simulated meter makes its values up. It works only in the demo yard. Nothing was changed.',
    );
  });

  test.each(['yard.openOwn', 'yard.removeDemo'] as const)(
    'is disconnected by %s, and its values go nowhere',
    async (leaving) => {
      const roundId = await begin();
      await yard.command('yard.openDemo', {});
      expect(await yard.command('meter.simulate', {})).toMatchObject({ canSimulate: true, phase: 'live' });
      await yard.command(leaving, {});
      const gone = { canSimulate: false, kind: 'none', phase: 'idle', deviceId: null, meterId: null };
      expect(yard.heard('meter.state').at(-1)).toMatchObject(gone);
      expect(await yard.query('meter.state', {})).toMatchObject(gone);
      await yard.command('rounds.open', { roundId });
      expect(await yard.refusal('rounds.saveLive', await aimedSpot(roundId))).toMatch(/Nothing was saved/);
      expect(await readingsOf(roundId)).toEqual([]);
    },
  );

  test('a real meter stays connected from yard to yard', async () => {
    await yard.command('yard.openDemo', {});
    await withMeter();
    await yard.command('yard.openOwn', {});
    expect(await yard.query('meter.state', {})).toMatchObject({ kind: 'bluetooth', phase: 'live' });
  });
});

describe('what cannot be', () => {
  test('a wood or a meter on a resistance curve that nobody has', async () => {
    const [species] = await yard.query('species.list', {});
    expect(await yard.refusal('species.add', { ...species, id: 'x', curveId: 'nowhere' })).toMatch(
      /nowhere.*not saved/,
    );
    const profile = {
      scale: { kind: 'species', speciesId: null, curveId: 'nowhere', tempC: 20 },
      compensatesTemp: null,
      pins: null,
      sdPct: null,
    } as const;
    expect(await yard.refusal('meters.add', { name: 'Old meter', profile })).toMatch(/nowhere.*as before/);
  });

  test('a second board of the same ID', async () => {
    expect(await yard.refusal('boards.add', [yard.board('wal-01')])).toMatch(
      /already a board WAL-01.*Nothing was saved/s,
    );
  });

  test('several boards of which one clashes: none is added', async () => {
    await yard.refusal('boards.add', [yard.board('NEW-01'), yard.board('WAL-02')]);
    const { total } = await yard.query('boards.list', {
      stackId: null,
      search: 'NEW',
      offset: 0,
      limit: 10,
    });
    expect(total).toBe(0);
  });

  test('a board of a species that nobody knows', async () => {
    const sentence = await yard.refusal('boards.add', [{ ...yard.board('X-01'), speciesId: 'unobtainium' }]);
    expect(sentence).toMatch(/unobtainium is not in this yard.*X-01 was not saved/s);
  });

  test.each([0, -3, Number.NaN, 1e6])('a board %d mm thick', async (thicknessMm) => {
    expect(await yard.refusal('boards.add', [{ ...yard.board('X-01'), thicknessMm }])).toMatch(
      /Nothing was saved/,
    );
  });

  test('a move into the future, or to no place', async () => {
    const boardIds = [yard.boards[0]!.id];
    const move = { boardIds, placeId: yard.place.id, since: '2031-01-01T00:00:00.000Z' };
    expect(await yard.refusal('boards.move', move)).toMatch(/in the future/);
    expect(
      await yard.refusal('boards.move', { ...move, placeId: 99, since: '2026-01-01T00:00:00.000Z' }),
    ).toMatch(/place is not in this yard/);
  });

  test('a call that is not in the contract', async () => {
    expect(await yard.answer('constructor', {})).toMatchObject({ ok: false });
    expect(await yard.answer('store.exec', { sql: 'DROP TABLE reading' })).toMatchObject({ ok: false });
  });

  test('a round on a stack without boards', async () => {
    const empty = await yard.command('stacks.add', {
      name: 'Empty',
      placeId: yard.place.id,
      endUseId: 'furniture',
      topCover: 'covered',
      note: '',
    });
    expect(await yard.refusal('rounds.start', { stackId: empty.id, woodTempC: 20 })).toMatch(/has no boards/);
  });

  test('keeping a reading while another program holds the file: nothing is lost, and it says so', async () => {
    const roundId = await begin();
    await type(roundId, 12);
    const spot = await aimedSpot(roundId);
    const other = new Database(join(yard.dataDir, 'yard.sqlite'));
    other.exec('BEGIN IMMEDIATE');
    expect(await yard.refusal('rounds.saveTyped', { ...spot, raw: 13 })).toMatch(
      /Another program is using the yard file.*safe/s,
    );
    other.exec('COMMIT');
    other.close();
    await type(roundId, 13);
    expect((await readingsOf(roundId)).map(({ raw }) => raw)).toEqual([12, 13]);
  });
});

describe('the yard', () => {
  test('a demo yard is a separate file: leaving it changes nothing in the other', async () => {
    const before = await yard.query('yard.info', {});
    const demo = await yard.command('yard.openDemo', {});
    expect(demo).toMatchObject({ kind: 'demo', problem: null });
    expect(demo.boards).toBeGreaterThan(10);
    await vi.waitFor(async () => {
      const stacks = await yard.query('stacks.list', {});
      for (const stack of stacks) expect(stack.probed).toBe(stack.boards);
    });
    expect(await yard.command('yard.removeDemo', {})).toEqual({ ...before, notRemoved: null });
    expect((await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 10 })).total).toBe(
      2,
    );
  });

  test('a new ID continues the numbering of the stack', async () => {
    expect(await yard.query('boards.nextCode', { stackId: yard.stack.id })).toEqual({ code: 'WAL-03' });
  });
});

describe('a damaged yard file', () => {
  test('is reported, the demo still opens, and it is renamed on request', async () => {
    await yard.app.close();
    writeFileSync(join(yard.dataDir, 'yard.sqlite'), 'rubbish '.repeat(1000));
    const { createApp } = await import('../../../electron/app/app.ts');
    const { HandHeldMeter } = await import('./hand-held-meter.ts');
    const { threadSources } = await import('../../../electron/app/thread-files.ts');
    const { NoLink } = await import('../../../electron/meter/no-link.ts');
    const { SimulatedLink } = await import('../../../electron/meter/simulated-link.ts');
    const app = createApp({
      dataDir: yard.dataDir,
      links: {
        none: () => new NoLink(),
        bluetooth: () => new HandHeldMeter(),
        simulated: () => new SimulatedLink({ seed: 1 }),
      },
      threads: threadSources,
    });
    const { answer } = openWindow(app);
    expect(await answer('stacks.list', {})).toMatchObject({
      ok: false,
      problem: { code: 'refusal.yard-damaged' },
    });
    expect(await answer('yard.info', {})).toMatchObject({ output: { canStartAfresh: true } });
    expect(await answer('yard.openDemo', {})).toMatchObject({ output: { problem: null } });
    await answer('yard.openOwn', {});
    expect(await answer('yard.startAfresh', {})).toMatchObject({ output: { problem: null, boards: 0 } });
    await app.close();
  });
});
