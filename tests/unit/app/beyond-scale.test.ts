/** Where a meter is past its scale, a person writes ">28" or "30+": the same on a page, in a round and in a table. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { nothingChosen } from '../../../shared-core/contract/import.ts';
import { readCell, readTyped } from '../../../shared-core/labels/typed-value.ts';
import { say } from './a-window.ts';
import { aimAt } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// The clock of the yard begins at 08:00 UTC on June 1, 2026. The values are invented.
withYardOfTwo();

const boardId = () => yard.boards[0]!.id;
const ABOVE = 'The meter showed only that it is above 28%. The true value is higher.';

/** The value of the board's last reading, and what a person reads about its scale. */
async function lastReading() {
  const { readings } = await yard.query('boards.get', { id: boardId() });
  const { raw, isAbove, counts, suspicions } = readings.at(-1)!;
  const ofScale = suspicions.filter(({ rule }) => rule === 'outside-meter-range');
  return { raw, isAbove, counts, told: ofScale.map(({ why }) => say(why)) };
}
const asAbove = { raw: 28, isAbove: true, counts: true, told: [ABOVE] };

test.each(['>28', '> 28 %', '28+', '28%+', '≥28', 'over 28', 'more than 28'])(
  '%s is above 28%% in a cell and in the field of a round',
  (text) => {
    expect(readCell(text, 'pct')).toEqual({ raw: 28, isAbove: true });
    if (!text.includes('%')) expect(readTyped(text, [], 'pct')).toEqual({ raw: 28, isAbove: true });
  },
);
test.each(['wet', 'OL', 'Hi'])('%s has no number, which is said with what to type', (text) => {
  const told = (typed: object) => ('problem' in typed ? say(typed.problem as never) : null);
  const ends = 'type its end, like >30.';
  expect(told(readCell(text, 'pct'))).toContain(ends);
  expect(told(readTyped(text, [], 'pct'))).toContain(ends);
});
test.each(['28 + 2', '+', '>', '>wet'])('%s is no reading', (text) => {
  expect(readCell(text, 'pct')).toHaveProperty('problem');
});
test('an ID that ends with a plus is no reading of its number', () => {
  expect(readTyped('A28+', [], 'pct')).toHaveProperty('problem');
});

test('a round saves it with what the meter could not show, and a corrected value is one that it showed', async () => {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await aimAt(roundId, 0, 0);
  const at = { roundId, boardId: boardId(), spotIndex: 0, newestReadingId: null };
  await yard.command('rounds.saveTyped', { ...at, raw: 28, isAbove: true });
  expect(await lastReading()).toEqual(asAbove);
  const { readings } = await yard.query('boards.get', { id: boardId() });
  const { id: readingId, raw, unit, woodTempC } = readings[0]!;
  const shown = { raw, unit, woodTempC, isAbove: true };
  const { act } = await yard.command('readings.correct', { readingId, corrected: { raw: 27 }, shown });
  expect(await lastReading()).toMatchObject({ raw: 27, isAbove: undefined, told: [] });
  await yard.command('acts.undo', { act });
  expect(await lastReading()).toEqual(asAbove);
  const other = yard.boards[1]!.id;
  await yard.command('readings.moveToBoard', {
    readingId,
    boardId: other,
    spotIndex: null,
    scope: 'reading',
  });
  expect((await yard.query('boards.get', { id: other })).readings).toMatchObject([
    { raw: 28, isAbove: true },
  ]);
});

test('a correction gives the mark, and takes it away', async () => {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await aimAt(roundId, 0, 0);
  const at = { roundId, boardId: boardId(), spotIndex: 0, newestReadingId: null };
  await yard.command('rounds.saveTyped', { ...at, raw: 28, isAbove: true });
  const { id: readingId } = (await yard.query('boards.get', { id: boardId() })).readings[0]!;
  const shown = { raw: 28, isAbove: true, unit: 'pct' as const, woodTempC: 20 };
  const correct = (from: { raw: number; isAbove: boolean }, corrected: { raw?: number; isAbove?: boolean }) =>
    yard.command('readings.correct', { readingId, shown: { ...shown, ...from }, corrected });
  const told = async () =>
    say((await yard.query('acts.list', { before: null, limit: 1, boardId: null })).acts[0]!.line);
  const value = async () => {
    const { raw, isAbove = false } = await lastReading();
    return { raw, isAbove };
  };

  const other = await yard.answer('readings.correct', {
    readingId,
    shown: { ...shown, isAbove: false },
    corrected: { raw: 27 },
  });
  expect(other).toMatchObject({ ok: false, current: { raw: 28, isAbove: true } });

  const steps = [
    [{ raw: 30, isAbove: true }, 'Reading of board WAL-01 changed from >28% to >30%.'],
    [{ raw: 30, isAbove: false }, 'Reading of board WAL-01 changed from >30% to 30%.'],
    [{ raw: 28, isAbove: false }, 'Reading of board WAL-01 changed from 30% to 28%.'],
    [{ raw: 27, isAbove: true }, 'Reading of board WAL-01 changed from 28% to >27%.'],
    [{ raw: 28, isAbove: true }, 'Reading of board WAL-01 changed from >27% to >28%.'],
  ] as const;
  const acts: string[] = [];
  let now = { raw: 28, isAbove: true };
  for (const [to, line] of steps) {
    acts.push((await correct(now, to)).act);
    expect(await value()).toEqual(to);
    expect(await told()).toBe(line);
    now = to;
  }
  for (const [index, act] of acts.toReversed().entries()) {
    await yard.command('acts.undo', { act });
    expect(await value()).toEqual(steps[steps.length - 2 - index]?.[0] ?? { raw: 28, isAbove: true });
  }
});

test('a page of a notebook checks and saves it so', async () => {
  const page = {
    stackId: yard.stack.id,
    startedAt: '2026-05-20T17:00:00.000Z',
    meterId: null,
    unit: 'pct' as const,
    woodTempC: 20,
    airTempC: null,
    depths: ['unknown' as const, 'unknown' as const],
  };
  const line = { boardId: boardId(), raws: [27, 28], above: [1] };
  const { cells } = await yard.query('pastRounds.check', { ...page, line });
  expect(
    cells.map(({ suspicions }) =>
      suspicions.flatMap(({ rule, why }) => (rule === 'outside-meter-range' ? say(why) : [])),
    ),
  ).toEqual([[], [ABOVE]]);
  await yard.command('pastRounds.save', { ...page, isDayOnly: true, lines: [line] });
  expect(await lastReading()).toEqual(asAbove);
});

test('a table brings it in so, and once', async () => {
  const file = join(mkdtempSync(join(tmpdir(), 'pintally-table-')), 'table.csv');
  writeFileSync(file, 'Board,Date,MC\nWAL-01,5/20/2026,28+\n');
  const checked = async () => {
    const { guessed, table } = await yard.command('imports.read', { file, units: 'imperial', order: 'mdy' });
    const place = { placeId: yard.place.id };
    const choices = { ...guessed, ...nothingChosen, stackName: 'Imported', place };
    return yard.command('imports.check', { table, choices });
  };
  await yard.command('imports.save', { plan: (await checked()).plan });
  expect(await lastReading()).toEqual(asAbove);
  expect((await checked()).knownReadings).toBe(1);
});
