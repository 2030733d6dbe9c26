/** A reading that was saved for the wrong board is moved to the right one, through the whole app. */
import { describe, expect, test } from 'vitest';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { spotWords } from '../../../shared-core/record-words/spot-words.ts';
import { say, words } from './a-window.ts';
import { aimAt, type } from './in-round.ts';
import { pastPage } from './past-page.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// Boards of 27 mm, and pins that reach their middle: each has a shell and a core at two places.
withYardOfTwo({ thicknessMm: 27 });

const idOf = (index: number): number => yard.boards[index]!.id;
const on = async (index: number) => (await yard.query('boards.get', { id: idOf(index) })).readings;
/** What counts on a board: spot and value. */
const used = async (index: number) =>
  (await on(index)).filter(({ excluded }) => excluded === null).map(({ spotIndex, raw }) => [spotIndex, raw]);
const callOf = async (index: number) =>
  (await yard.query('boards.get', { id: idOf(index) })).board.latest?.averagePct ?? null;
/** Whether a finding says that a round read a board. */
const isRead = async (index: number) =>
  (await yard.query('boards.get', { id: idOf(index) })).board.latest !== null;
const newest = async (boardId: number | null = null) => {
  const { acts } = await yard.query('acts.list', { before: null, limit: 1, boardId });
  return { id: acts[0]!.id, line: say(acts[0]!.line) };
};

/** A finished round with these values at the first spots of each board. */
async function probed(...boards: number[][]): Promise<number> {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  for (const [index, raws] of boards.entries()) {
    for (const [spotIndex, raw] of raws.entries()) {
      await aimAt(roundId, index, spotIndex);
      await type(roundId, raw);
    }
  }
  await yard.command('rounds.finish', { roundId });
  return roundId;
}
type Move = RequestInput<'readings.moveToBoard'>;
const move = async (index: number, more: Partial<Move> = {}) =>
  yard.command('readings.moveToBoard', {
    readingId: (await on(index))[0]!.id,
    boardId: idOf(1 - index),
    spotIndex: null,
    scope: 'reading',
    ...more,
  });

/** A page of a day on which the other board was not there yet: one reading, of which nobody knows the depth. */
const typedPage = () =>
  yard.command(
    'pastRounds.save',
    pastPage({
      startedAt: '2026-05-20T17:00:00.000Z',
      depths: ['unknown'],
      lines: [{ boardId: idOf(0), raws: [14] }],
      thereSince: '2026-05-01',
    }),
  );

describe('one reading', () => {
  test('counts on the other board at the same spot, and stays on record on its own', async () => {
    const roundId = await probed([18.5], []);
    await move(0);
    expect(await used(0)).toEqual([]);
    expect(await used(1)).toEqual([[0, 18.5]]);
    expect((await on(0))[0]).toMatchObject({
      excluded: { code: 'moved' },
      movedTo: { boardId: idOf(1), code: 'WAL-02' },
    });
    expect((await on(1))[0]).toMatchObject({
      roundId,
      counts: true,
      movedFrom: { boardId: idOf(0), code: 'WAL-01' },
    });
    await expect.poll(() => isRead(0)).toBe(false);
    await expect.poll(() => isRead(1)).toBe(true);
    expect((await newest()).line).toBe('Reading 18.5% moved from board WAL-01 to WAL-02.');
    expect((await newest(idOf(0))).line).toBe((await newest(idOf(1))).line);
  });

  test('is as it was corrected, excluded by nobody there, with its note and depth', async () => {
    await probed([185], []);
    const [reading] = await on(0);
    const readingId = reading!.id;
    const shown = { raw: 185, unit: 'pct' as const, woodTempC: 20 };
    await yard.command('readings.correct', { readingId, corrected: { raw: 18.5, woodTempC: 15 }, shown });
    await yard.command('notes.set', {
      subject: { kind: 'reading', id: readingId },
      note: 'By the knot',
      shown: '',
    });
    await yard.command('readings.exclude', { readingId, why: { code: 'wrong-spot' } });
    await move(0);
    const [there] = await on(1);
    expect(there).toMatchObject({
      raw: 18.5,
      savedRaw: 185,
      woodTempC: 15,
      excluded: null,
      note: 'By the knot',
    });
    expect((await newest()).line).toBe('Reading 18.5% moved from board WAL-01 to WAL-02.');
  });

  test('is back where it was once that is undone, and there again once it is redone', async () => {
    await probed([18.5], []);
    await move(0);
    const { id: act } = await newest();
    await yard.command('acts.undo', { act });
    expect(await used(0)).toEqual([[0, 18.5]]);
    expect(await on(1)).toEqual([]);
    await expect.poll(() => isRead(0)).toBe(true);
    await expect.poll(() => isRead(1)).toBe(false);
    await yard.command('acts.redo', { act });
    expect(await used(0)).toEqual([]);
    expect(await used(1)).toEqual([[0, 18.5]]);
  });

  test('a correction that is undone after the move counts on the other board', async () => {
    await probed([185], []);
    const shown = { raw: 185, unit: 'pct' as const, woodTempC: 20 };
    const readingId = (await on(0))[0]!.id;
    const { act } = await yard.command('readings.correct', { readingId, corrected: { raw: 18.5 }, shown });
    await move(0);
    await yard.command('acts.undo', { act });
    expect((await on(1))[0]).toMatchObject({ raw: 185, counts: false });
  });

  test('was taken when its round was, however often the date of that is corrected', async () => {
    const roundId = await probed([18.5], [12]);
    async function redate(startedAt: string): Promise<string> {
      const { version } = await yard.query('rounds.get', { roundId });
      await yard.command('rounds.edit', { id: roundId, basedOn: version, changed: { startedAt } });
      return (await newest()).id;
    }
    const days = async () => [...(await on(0)), ...(await on(1))].map(({ takenAt }) => takenAt.slice(0, 10));
    const all = (day: string) => [day, day, day];
    const act = await redate('2026-05-10T10:00:00.000Z');
    await move(0);
    expect(await days()).toEqual(all('2026-05-10'));
    await yard.command('acts.undo', { act });
    expect(await days()).toEqual(all('2026-06-01'));
    const later = await redate('2026-05-20T10:00:00.000Z');
    expect(await days()).toEqual(all('2026-05-20'));
    await yard.command('acts.undo', { act: later });
    expect(await days()).toEqual(all('2026-06-01'));
  });

  test('is changed only where it went', async () => {
    await probed([18.5], []);
    await move(0);
    const readingId = (await on(0))[0]!.id;
    expect(await yard.refusal('readings.include', { readingId })).toBe(
      'This reading is on WAL-02 now. Nothing was changed. Edit it there.',
    );
    const shown = { raw: 18.5, unit: 'pct', woodTempC: 20 };
    expect(await yard.refusal('readings.correct', { readingId, corrected: { raw: 19 }, shown })).toMatch(
      /^This reading is on WAL-02 now\./,
    );
    const why = { code: 'defect' } as const;
    const depth = { depthMm: 5, shown: { depthMm: null, depthFrom: 'plan' as const }, wholeRound: false };
    const elsewhere = { boardId: idOf(1), spotIndex: null, scope: 'reading' as const };
    for (const refused of [
      yard.refusal('readings.exclude', { readingId, why }),
      yard.refusal('readings.setDepth', { readingId, ...depth }),
      yard.refusal('readings.moveToBoard', { readingId, ...elsewhere }),
    ])
      expect(await refused).toMatch(/^This reading is on WAL-02 now\./);
    expect(await used(1)).toEqual([[0, 18.5]]);
  });

  test('is said to be on the board where it is after several moves', async () => {
    await probed([18.5], []);
    const [third] = await yard.command('boards.add', [yard.board('WAL-03')]);
    await move(0);
    const [first] = await on(0);
    const [second] = await on(1);
    const toThird = await move(1, { boardId: third!.id });
    const edit = async (readingId: number) => yard.refusal('readings.include', { readingId });
    expect(await edit(first!.id)).toMatch(/ is on WAL-03 now\./);
    expect(await edit(second!.id)).toMatch(/ is on WAL-03 now\./);
    await yard.command('acts.undo', { act: toThird.act });
    expect(await edit(first!.id)).toMatch(/ is on WAL-02 now\./);
  });

  test('goes to a board that came later only where a person says that it was there by then', async () => {
    await typedPage();
    const asked = { readingId: (await on(0))[0]!.id, boardId: idOf(1), spotIndex: null };
    expect(await yard.refusal('readings.moveToBoard', { ...asked, scope: 'reading' })).toMatch(
      /^WAL-02 has been in .* since Jun 1.*, after this reading\. Nothing was moved\. Was it in .* before that day\?$/,
    );
    const movesOf = async () => (await yard.query('boards.get', { id: idOf(1) })).moves;
    const [before] = await movesOf();
    const { act } = await move(0, { isThereThen: true });
    expect(await used(1)).toHaveLength(1);
    expect((await movesOf()).map(({ since }) => since)).toEqual(['2026-05-20T17:00:00.000Z']);
    // What the person did comes first, then what follows from it.
    expect((await newest()).line).toMatch(
      /^Reading 14% moved from board WAL-01 to WAL-02\. .*WAL-02.* since /,
    );
    await yard.command('acts.undo', { act });
    expect((await movesOf()).map(({ since }) => since)).toEqual([before!.since]);
  });

  test('goes to no piece that was cut later', async () => {
    await probed([18.5], []);
    yard.later(86_400_000);
    const { pieceIds } = await yard.command('boards.cut', {
      boardId: idOf(1),
      how: 'ripped',
      at: yard.now(),
      pieces: [1, 2].map((number) => ({ code: `WAL-02-${number}`, widthMm: 90, lengthMm: 2400 })),
    });
    expect(
      await yard.refusal('readings.moveToBoard', {
        readingId: (await on(0))[0]!.id,
        boardId: pieceIds[0]!,
        spotIndex: null,
        scope: 'reading',
      }),
    ).toMatch(/^WAL-02-1 was cut from WAL-02 on Jun 2, 2026, after this reading\. Nothing was moved\./);
  });

  test('goes on to a third board, and back to its own', async () => {
    await probed([18.5], []);
    await move(0);
    const { id: readingId } = (await on(1))[0]!;
    await move(1, { readingId });
    expect(await used(1)).toEqual([]);
    expect(await used(0)).toEqual([[0, 18.5]]);
    expect((await on(0)).map(({ excluded }) => excluded && 'code' in excluded && excluded.code)).toEqual([
      'moved',
      null,
    ]);
  });

  test('counts once, whatever order its moves are undone and redone in', async () => {
    await probed([18.5], []);
    const more = await yard.command('boards.add', [yard.board('WAL-03'), yard.board('WAL-04')]);
    const [third, fourth] = more.map(({ id }) => id) as [number, number];
    const readingId = (await on(0))[0]!.id;
    const toSecond = await move(0, { readingId });
    await yard.command('acts.undo', { act: toSecond.act });
    const toThird = await move(0, { readingId, boardId: third });
    await yard.command('acts.undo', { act: toThird.act });
    await yard.command('acts.redo', { act: toSecond.act });
    const [there] = (await on(1)).filter(({ excluded }) => excluded === null);
    await move(1, { readingId: there!.id, boardId: fourth });
    await yard.command('acts.redo', { act: toThird.act });
    const counted = async (boardId: number) =>
      (await yard.query('boards.get', { id: boardId })).readings.filter(({ excluded }) => excluded === null);
    const all = await Promise.all([idOf(0), idOf(1), third, fourth].map(counted));
    expect(all.map(({ length }) => length)).toEqual([0, 0, 1, 0]);
  });

  test('is not moved by a redo while its page, or the move before, is undone', async () => {
    const page = await yard.command(
      'pastRounds.save',
      pastPage({
        startedAt: '2026-05-20T17:00:00.000Z',
        depths: ['pins'],
        lines: [{ boardId: idOf(0), raws: [14] }],
        thereSince: '2026-05-01',
      }),
    );
    const [third] = await yard.command('boards.add', [yard.board('WAL-03')]);
    const first = await move(0, { isThereThen: true });
    const next = await move(1, { boardId: third!.id, isThereThen: true });
    const all = [page, first, next].map(({ act }) => act);
    for (const act of all.toReversed()) await yard.command('acts.undo', { act });
    const refused = async (act: string) => (await yard.refusal('acts.redo', { act })).replace(/\(.*?\)/, '…');
    const sentence = ' was changed later, so nothing was redone. Redo this first …: ';
    expect(await refused(first.act)).toContain(`${sentence}Round of May 20, 2026 entered for stack Walnut.`);
    expect(await refused(next.act)).toContain(`${sentence}Reading 14% moved from board WAL-01 to WAL-02.`);
    for (const act of all) await yard.command('acts.redo', { act });
    expect((await yard.query('boards.get', { id: third!.id })).readings).toMatchObject([{ counts: true }]);
  });

  test('of which nobody knows the depth is as deep there: nobody knows', async () => {
    await typedPage();
    // Another thickness has other spots; where it was is asked of nobody all the same.
    await yard.command('boards.edit', {
      id: idOf(1),
      basedOn: 1,
      changed: { thicknessMm: 80, lengthMm: 3600 },
    });
    const asked = { readingId: (await on(0))[0]!.id, boardId: idOf(1) };
    expect((await yard.query('readings.onBoard', asked)).keptSpot).not.toBeNull();
    await move(0, { isThereThen: true });
    const { board, readings, readBefore } = await yard.query('boards.get', { id: idOf(1) });
    expect(readings[0]).toMatchObject({ raw: 14, spot: { depthMm: null, isAlongUnknown: true } });
    expect(spotWords(readings[0]!, board, readings, readBefore, words)).toBe('Spot and depth unknown');
  });

  test('goes to the spot that a person names where the board has no such one', async () => {
    await yard.command('boards.edit', { id: idOf(1), basedOn: 1, changed: { thicknessMm: 80 } });
    await probed([18.5, 22], []);
    const core = (await on(0)).find(({ spot }) => spot.depth === 'core')!;
    const asked = { readingId: core.id, boardId: idOf(1) };
    const { keptSpot, spots, own, others } = await yard.query('readings.onBoard', asked);
    expect({ keptSpot, own, others }).toEqual({ keptSpot: null, own: 2, others: 0 });
    const spotIndex = spots.at(-1)!.spotIndex;
    await move(0, { readingId: core.id, spotIndex });
    expect(await used(1)).toEqual([[spotIndex, 22]]);
  });
});

test('all readings of two boards are swapped, and swapped back by undoing that', async () => {
  await probed([18, 22, 18.4], [9, 10]);
  const averages = async () => [await callOf(0), await callOf(1)];
  await expect.poll(averages).not.toContain(null);
  const before = await averages();
  const { readings } = await move(0, { scope: 'swap' });
  expect(readings).toBe(5);
  expect(await used(0)).toEqual([
    [0, 9],
    [1, 10],
  ]);
  expect(await used(1)).toEqual([
    [0, 18],
    [1, 22],
    [2, 18.4],
  ]);
  await expect.poll(() => callOf(0)).toBeLessThan(before[0]!);
  await expect.poll(() => callOf(1)).toBeGreaterThan(before[1]!);
  const { id: act, line } = await newest();
  expect(line).toBe('Readings of boards WAL-01 and WAL-02 swapped.');
  await yard.command('acts.undo', { act });
  await expect.poll(averages).toEqual(before);
});

test('all readings of a board in a round are moved', async () => {
  await probed([18, 22], []);
  await move(0, { scope: 'board' });
  expect(await used(0)).toEqual([]);
  expect(await used(1)).toEqual([
    [0, 18],
    [1, 22],
  ]);
  expect((await newest()).line).toBe('2 readings moved from board WAL-01 to WAL-02.');
});

test('no reading goes to its own board, or to one that was not sawn yet', async () => {
  await probed([18], []);
  const readingId = (await on(0))[0]!.id;
  const asked = { readingId, spotIndex: null, scope: 'reading' as const };
  expect(await yard.refusal('readings.moveToBoard', { ...asked, boardId: idOf(0) })).toBe(
    'This reading is already on WAL-01. Nothing was moved. Choose another board.',
  );
  yard.later(3 * 86_400_000);
  await yard.command('boards.edit', {
    id: idOf(1),
    basedOn: 1,
    changed: { sawnOn: '2026-06-03', isBeforeSawing: true },
  });
  expect(await yard.refusal('readings.moveToBoard', { ...asked, boardId: idOf(1) })).toMatch(
    /^WAL-02 was sawn on Jun 3, 2026, after this reading\. Nothing was moved\./,
  );
  expect(await used(0)).toEqual([[0, 18]]);
});
