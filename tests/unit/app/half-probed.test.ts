/** A board of which only some spots were read, through the whole app. The rules are the core's (`tests/unit/probing/call.test.ts`). */
import { beforeEach, describe, expect, test } from 'vitest';
import { message } from '../../../shared-core/words/message.ts';
import { aimAt, type } from './in-round.ts';
import { pastPage } from './past-page.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const DAY_MS = 86_400_000;

/** A finished round in which spots of the first board were read, in their order. */
async function walk(...raws: number[]): Promise<number> {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  for (const [spotIndex, raw] of raws.entries()) {
    await aimAt(roundId, 0, spotIndex);
    await type(roundId, raw);
  }
  await yard.command('rounds.finish', { roundId });
  return roundId;
}
const first = () => yard.query('boards.get', { id: yard.boards[0]!.id });
const stack = () => yard.query('stacks.get', { id: yard.stack.id });
const codes = async (filter: 'not-probed' | 'probe-again') =>
  (await yard.query('boards.list', { stackId: null, search: '', filter, offset: 0, limit: 10 })).rows.map(
    ({ code }) => code,
  );

describe('a board with 1 of 4 spots read', () => {
  test('has no call anywhere, and counts as partly probed', async () => {
    const roundId = await walk(8);
    const spotsRead = { read: 1, planned: 4 };
    const { board } = await first();
    expect(board.latest).toMatchObject({ roundId, call: null, spotsRead, averagePct: expect.any(Number) });
    expect(board.judgement).toMatchObject({
      call: null,
      reasons: [message('call.half-read', spotsRead)],
      next: { step: 'probe', due: 'first-round', why: message('next-step.half-probed', { spots: 3 }) },
    });
    expect(await codes('not-probed')).toEqual(['WAL-01', 'WAL-02']);
    expect(await codes('probe-again')).toEqual([]);
    expect(await stack()).toMatchObject({
      boards: 2,
      probed: 0,
      halfProbed: 1,
      averagePct: null,
      call: {
        call: null,
        reasons: [
          message('stack-call.half-probed', { boards: 1 }),
          message('stack-call.not-probed', { boards: 1 }),
        ],
      },
    });
    const plan = await yard.query('stacks.plan', { id: yard.stack.id, certainty: 0.9 });
    expect(plan!.next[0]).toMatchObject({ code: 'WAL-01', call: null });
    const { summary } = await yard.query('rounds.get', { roundId });
    expect(summary.message).toMatchObject({
      facts: { counts: expect.arrayContaining([message('round-summary.half-probed', { boards: 1 })]) },
    });
    const [content] = await yard.query('labels.contents', { boardIds: [board.id] });
    expect(content!.latest).toMatchObject({ call: null, spotsRead });
  });
});

describe('a board read twice in one hole', () => {
  // 8 mm pins read the average of 27 mm, at three spots.
  test('has 1 of 3 spots read, and so no call', async () => {
    const [board] = await yard.command('boards.add', [{ ...yard.board('ONE-HOLE'), thicknessMm: 27 }]);
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    const assessment = async () => (await yard.query('rounds.get', { roundId })).probed?.assessment;
    await aimAt(roundId, 2, 0);
    await type(roundId, 7.4);
    await aimAt(roundId, 2, 0);
    await type(roundId, 7.5);
    expect(await assessment()).toMatchObject({ call: null, spotsRead: { read: 1, planned: 3 } });
    expect((await yard.query('boards.get', { id: board!.id })).board.judgement.call).toBeNull();
    for (const [spotIndex, spotsRead] of [
      [1, { read: 2, planned: 3 }],
      [2, null],
    ] as const) {
      await aimAt(roundId, 2, spotIndex);
      await type(roundId, 7.4);
      expect(await assessment()).toMatchObject({ call: spotsRead ? null : 'ready', spotsRead });
    }
  });
});

describe('a later round with only some spots read', () => {
  test('leaves the call and the average to the full one, and both are shown', async () => {
    const full = await walk(7.4, 7.6, 7.5, 7.7);
    const before = (await first()).board;
    yard.later(5 * DAY_MS);
    const part = await walk(7.6);
    const { board, findings } = await first();
    expect(board.latest).toMatchObject({ roundId: full, averagePct: before.latest!.averagePct });
    expect(board.judgement.call).toBe(before.judgement.call);
    expect(findings.map(({ roundId, call }) => [roundId, call])).toEqual([
      [full, before.latest!.call],
      [part, null],
    ]);
    expect((await stack()).probed).toBe(1);
  });

  test('that contradicts it has the board probed again, for that reason', async () => {
    await walk(7.4, 7.6, 7.5, 7.7);
    yard.later(DAY_MS);
    const part = await walk(15);
    const { board } = await first();
    expect(board.latest).toMatchObject({
      roundId: part,
      call: 'probe-again',
      reason: { code: 'call.contradicts-full' },
    });
    expect(await codes('probe-again')).toEqual(['WAL-01']);
    // Two parts do not make a whole: the full round is still the one to go by.
    yard.later(DAY_MS);
    await walk(14.8);
    expect((await first()).board.latest).toMatchObject({ call: 'probe-again' });
    yard.later(DAY_MS);
    const full = await walk(7.4, 7.6, 7.5, 7.7);
    expect((await first()).board.latest!.roundId).toBe(full);
  });
});

describe('a finished round that read every spot', () => {
  const readings = async () => (await first()).readings;
  const second = async () => (await yard.query('boards.get', { id: yard.boards[1]!.id })).board.latest;
  const latest = async () => {
    const { averagePct, lowPct, highPct, spotsRead, roundId } = (await first()).board.latest!;
    return { averagePct: averagePct!, widthPct: highPct! - lowPct!, spotsRead, roundId };
  };
  const moveAway = async (raw: number, scope: 'reading' | 'swap' = 'reading') => {
    const readingId = (await readings()).findLast((each) => each.raw === raw)!.id;
    const boardId = yard.boards[1]!.id;
    return yard.command('readings.moveToBoard', { readingId, boardId, spotIndex: null, scope });
  };

  test('stays whole, and less certain, where a reading of it is moved away or excluded later', async () => {
    await walk(15, 15.4, 15.2, 15.6);
    yard.later(2 * DAY_MS);
    const roundId = await walk(14.6, 15, 14.8, 19);
    await moveAway(19);
    await expect.poll(async () => (await latest()).averagePct).toBeLessThan(15.1);
    const moved = await latest();
    expect(moved).toMatchObject({ roundId, spotsRead: null });
    expect((await first()).board.judgement.reasons.map(({ code }) => code)).not.toContain(
      'call.half-read-since',
    );
    const readingId = (await readings()).findLast(({ raw }) => raw === 14.6)!.id;
    await yard.command('readings.exclude', { readingId, why: { code: 'defect' } });
    await expect.poll(async () => (await latest()).widthPct).toBeGreaterThan(moved.widthPct);
    expect(await latest()).toMatchObject({ roundId, spotsRead: null });
  });

  test('gives way to the round before where nothing of it is left', async () => {
    const full = await walk(15, 15.4, 15.2, 15.6);
    yard.later(2 * DAY_MS);
    const roundId = await walk(14.6, 15, 14.8, 15.2);
    for (const { id: readingId } of (await readings()).filter((each) => each.roundId === roundId))
      await yard.command('readings.exclude', { readingId, why: { code: 'wrong-spot' } });
    await expect.poll(async () => (await latest()).roundId).toBe(full);
  });

  test('was of the other board where all of it is swapped with one reading of that', async () => {
    const full = await walk(15, 15.4, 15.2, 15.6);
    yard.later(2 * DAY_MS);
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    for (const [index, spotIndex, raw] of [
      [0, 0, 14.6],
      [0, 1, 15],
      [0, 2, 14.8],
      [0, 3, 15.2],
      [1, 0, 14.9],
    ] as const) {
      await aimAt(roundId, index, spotIndex);
      await type(roundId, raw);
    }
    await yard.command('rounds.finish', { roundId });
    await moveAway(14.6, 'swap');
    await expect.poll(async () => (await latest()).roundId).toBe(full);
    await expect.poll(second).toMatchObject({ roundId, spotsRead: null });
  });
});

describe('a thick board that is Ready by a fresh cut', () => {
  // 8 mm pins reach no core of 54 mm: it was read in a cut, and nobody cuts again each week.
  test('stays so when only its shell is read later, unless that contradicts it', async () => {
    const [board] = await yard.command('boards.add', [{ ...yard.board('THICK'), thicknessMm: 54 }]);
    const { id: boardId } = board!;
    const round = async (core: 'fresh-cut' | null, ...raws: number[]) => {
      const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
      if (core !== null) await yard.command('rounds.planCore', { roundId, boardId, core, forRound: false });
      for (const [spotIndex, raw] of raws.entries()) {
        await aimAt(roundId, 2, spotIndex);
        await type(roundId, raw);
      }
      await yard.command('rounds.finish', { roundId });
      yard.later(5 * DAY_MS);
      const { latest } = (await yard.query('boards.get', { id: boardId })).board;
      return { isOfThis: latest!.roundId === roundId, call: latest!.call };
    };
    expect(await round('fresh-cut', 6.7, 6.8, 6.8, 6.9)).toEqual({ isOfThis: true, call: 'ready' });
    expect(await round(null, 6.8, 6.7)).toEqual({ isOfThis: false, call: 'ready' });
    expect(await round('fresh-cut', 6.7, 6.8, 6.8, 6.9)).toEqual({ isOfThis: true, call: 'ready' });
    expect(await round(null, 14, 14.2)).toEqual({ isOfThis: true, call: expect.not.stringMatching('ready') });
  });
});

describe('a page of an earlier day', () => {
  // 8 mm pins read the average of 27 mm.
  let boardId: number;
  beforeEach(async () => {
    const [board] = await yard.command('boards.add', [{ ...yard.board('THIN'), thicknessMm: 27 }]);
    boardId = board!.id;
  });
  const page = (day: string, ...raws: number[]) =>
    yard.command(
      'pastRounds.save',
      pastPage({
        startedAt: `${day}T17:00:00.000Z`,
        depths: ['pins', 'pins'],
        lines: [{ boardId, raws }],
        thereSince: '2026-05-01',
      }),
    );
  const latest = async () => {
    const { board } = await yard.query('boards.get', { id: boardId });
    const { averagePct = null, spotsRead, call } = board.latest ?? {};
    return { averagePct: averagePct ?? 99, spotsRead, call, reasons: board.judgement.reasons };
  };

  test('is as whole as it was typed: one value later tells more than two before', async () => {
    await page('2026-05-04', 24, 25);
    await expect.poll(latest).toMatchObject({ spotsRead: null, call: 'keep-drying' });
    await page('2026-05-28', 17);
    await expect.poll(async () => (await latest()).averagePct).toBeLessThan(20);
    expect(await latest()).toMatchObject({ spotsRead: null, call: expect.any(String) });
    expect(await stack()).toMatchObject({ probed: 1, halfProbed: 0 });
  });

  test('of one value leaves the call to a later round of two, though that left a spot open', async () => {
    await page('2026-05-04', 26);
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    for (const [spotIndex, raw] of [18, 18.4].entries()) {
      await aimAt(roundId, 2, spotIndex);
      await type(roundId, raw);
    }
    await yard.command('rounds.finish', { roundId });
    const { board } = await yard.query('boards.get', { id: boardId });
    expect(board.latest).toMatchObject({ roundId, call: 'keep-drying' });
  });

  test('calls no board ready by one value', async () => {
    await page('2026-05-30', 7.4);
    await expect.poll(latest).toMatchObject({ spotsRead: null, call: 'probe-again' });
    expect((await latest()).reasons).toContainEqual(message('call.one-reading'));
  });
});
