import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../shared-core/time.ts';
import { type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const start = (startedOn: string | null = null) => ({ stackId: yard.stack.id, woodTempC: 20, startedOn });
const sawn = (sawnOn: string) => ({ id: yard.boards[0]!.id, basedOn: 1, changed: { sawnOn } });

// The clock of the yard begins on June 1, 2026.
test('a board cannot be sawn, or lose its bark, on a day still to come', async () => {
  expect(await yard.refusal('boards.edit', sawn('2026-06-03'))).toMatch(/in the future\. Nothing was saved/);
  expect(
    await yard.refusal('boards.editTogether', {
      boards: [{ id: yard.boards[0]!.id, basedOn: 1 }],
      changed: { barkSide: 'up', barkOffOn: '2026-06-03' },
    }),
  ).toMatch(/in the future/);
});

test('a board that was probed was sawn by then, unless that reading is excluded', async () => {
  const { id: roundId } = await yard.command('rounds.start', start());
  await type(roundId, 14);
  await yard.command('rounds.finish', { roundId });
  yard.later(20 * DAY_MS);
  expect(await yard.refusal('boards.edit', sawn('2026-06-10'))).toMatch(
    /WAL-01 was probed on Jun 1, 2026, before that day\. Nothing was saved/,
  );
  const { readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
  await yard.command('readings.exclude', { readingId: readings[0]!.id, why: { code: 'pins-shallow' } });
  const { changed, ...of } = sawn('2026-06-10');
  expect(
    await yard.command('boards.edit', { ...of, changed: { ...changed, isBeforeSawing: true } }),
  ).toMatchObject({ sawnOn: '2026-06-10' });
});

test('a board that was moved before it was sawn asks whether its log was there, and nothing is saved unasked', async () => {
  yard.later(20 * DAY_MS);
  const { changed, ...of } = sawn('2026-06-10');
  expect(await yard.refusal('boards.edit', { ...of, changed })).toBe(
    'WAL-01 has been in Shop since Jun 1, 2026, before that day. Was its log there then?',
  );
  const together = { boards: yard.boards.map(({ id }) => ({ id, basedOn: 1 })), changed };
  expect(await yard.refusal('boards.editTogether', together)).toMatch(/^WAL-01 has been in Shop since/);
  const { board } = await yard.query('boards.get', { id: of.id });
  expect(board).toMatchObject({ sawnOn: null, version: 1 });
  await yard.command('boards.editTogether', { ...together, isBeforeSawing: true });
  // What is as it was needs no answer.
  const again = { id: of.id, basedOn: 2, changed: { ...changed, note: 'From the lane' } };
  expect(await yard.command('boards.edit', again)).toMatchObject({ sawnOn: '2026-06-10', version: 3 });
});

test('a round cannot be of a day on which no board of the stack was sawn yet', async () => {
  const boards = yard.boards.map(({ id }) => ({ id, basedOn: 1 }));
  await yard.command('boards.editTogether', { boards, changed: { sawnOn: '2026-05-01' } });
  expect(await yard.refusal('rounds.start', start('1990-01-01'))).toMatch(/No board of .* was sawn yet/);
  expect(await yard.command('rounds.start', start('2026-05-04'))).toMatchObject({ isDated: true });
});

test('a board that left the yard was sawn by then', async () => {
  const { id } = yard.boards[0]!;
  const at = '2026-05-20T17:00:00.000Z';
  await yard.command('boards.archive', { boardIds: [id], why: 'sold', at });
  expect(await yard.refusal('boards.edit', { ...sawn('2026-05-21'), basedOn: 2 })).toMatch(
    /WAL-01 left the yard on May 20, 2026, before that day\. Nothing was saved/,
  );
  expect(await yard.command('boards.edit', { ...sawn('2026-05-20'), basedOn: 2 })).toMatchObject({
    sawnOn: '2026-05-20',
  });
});

describe('a round of a day on which boards were moved', () => {
  /** They have been in the yard since May 1, and went to a shed on a later day. */
  async function movedOn(day: string, isDayOnly = true): Promise<void> {
    const { version: _, id: __, ...place } = yard.place;
    const shed = await yard.command('places.add', { ...place, name: 'Shed' });
    const { moves } = await yard.query('boards.get', { id: yard.boards[0]!.id });
    const first = {
      id: moves[0]!.id,
      basedOn: 1,
      changed: { when: { since: '2026-05-01T12:00:00.000Z', isDayOnly: true } },
    };
    await yard.command('moves.edit', { ...first, together: true });
    const since = `${day}T17:00:00.000Z`;
    await yard.command('boards.move', {
      boardIds: yard.boards.map(({ id }) => id),
      placeId: shed.id,
      since,
      isDayOnly,
    });
  }
  const instants = async () => {
    const { moves, readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
    return [Date.parse(moves.at(-1)!.since), Date.parse(readings.at(-1)!.takenAt)] as const;
  };

  test.each(['moved-first', 'probed-first'] as const)('asks which came first: %s', async (order) => {
    await movedOn('2026-05-20', false);
    expect(await yard.refusal('rounds.start', start('2026-05-20'))).toMatch(
      /^WAL-01 was moved on May 20, 2026 too\. Nothing was saved\. Choose which came first\.$/,
    );
    const { id: roundId } = await yard.command('rounds.start', { ...start('2026-05-20'), order });
    await type(roundId, 14);
    const [movedMs, readMs] = await instants();
    expect(order === 'moved-first' ? movedMs <= readMs : readMs < movedMs).toBe(true);
  });

  test.each(['moved-first', 'probed-first'] as const)('asks when it gets that date: %s', async (order) => {
    const { id: roundId } = await yard.command('rounds.start', start('2026-05-19'));
    await type(roundId, 14);
    await yard.command('rounds.finish', { roundId });
    await movedOn('2026-05-20');
    const edit = { id: roundId, basedOn: 2, changed: { startedAt: '2026-05-20T17:00:00.000Z' } };
    expect(await yard.refusal('rounds.edit', edit)).toMatch(/WAL-01 was moved on May 20.*which came first/);
    await yard.command('rounds.edit', { ...edit, changed: { ...edit.changed, order } });
    const [movedMs, readMs] = await instants();
    expect(order === 'moved-first' ? movedMs <= readMs : readMs < movedMs).toBe(true);
  });

  test('asks when one with its times gets that date, and orders the move of which only the day is known', async () => {
    const { id: roundId } = await yard.command('rounds.start', start());
    await type(roundId, 14);
    await yard.command('rounds.finish', { roundId });
    await movedOn('2026-05-20');
    const edit = { id: roundId, basedOn: 2, changed: { startedAt: '2026-05-20T18:00:00.000Z' } };
    expect(await yard.refusal('rounds.edit', edit)).toMatch(/which came first/);
    await yard.command('rounds.edit', { ...edit, changed: { ...edit.changed, order: 'probed-first' } });
    const [movedMs, readMs] = await instants();
    expect(readMs).toBeLessThan(movedMs);
  });
});
