/** The round, the lists and the board's page have the same call at any moment. */
import { describe, expect, test } from 'vitest';
import { pastPage } from './past-page.ts';
import { dampen, outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

const ids = () => yard.boards.map(({ id }) => id);

/** A page of a notebook with both spots of these boards. */
async function page(day: string, raw: number, boardIds = ids()): Promise<number> {
  const { roundId } = await yard.command(
    'pastRounds.save',
    pastPage({
      startedAt: `${day}T12:00:00.000Z`,
      depths: ['unknown', 'unknown'],
      lines: boardIds.map((boardId) => ({ boardId, raws: [raw, raw] })),
    }),
  );
  return roundId;
}

const inRound = async (roundId: number) => {
  const { boards, summary, updating } = await yard.query('rounds.get', { roundId });
  return { updating, summary, calls: boards.map(({ finding }) => finding?.call ?? null), boards };
};
const inList = async () =>
  (await yard.query('boards.list', { stackId: yard.stack.id, search: '', offset: 0, limit: 10 })).rows.map(
    ({ judgement }) => judgement.call,
  );
const onPage = () =>
  Promise.all(ids().map(async (id) => (await yard.query('boards.forecast', { id })).judgement.call));

describe('while no forecast is made', () => {
  withYardOfTwo({ forecastAfterMs: 3_600_000 });

  test('a round says how many of its calls wait for one', async () => {
    const roundId = await page('2026-05-30', 15);
    expect((await inRound(roundId)).updating).toBe(ids().length);
    await expect.poll(inList).not.toContain(null);
    const { updating, calls } = await inRound(roundId);
    expect(updating).toBe(ids().length);
    expect(calls).toEqual(await inList());
  });
});

describe('once forecasts are made', () => {
  withYardOfTwo();

  test('after a page of a notebook the round has the calls of list and page', async () => {
    await dampen();
    const roundId = await page('2026-05-30', 15);
    await outlooksMade();
    const after = await inRound(roundId);
    expect(after.updating).toBe(0);
    expect(after.calls).toEqual(['bring-in', 'bring-in']);
    expect(await inList()).toEqual(after.calls);
    expect(await onPage()).toEqual(after.calls);
    expect(after.summary.calls).toMatchObject({ 'bring-in': 2, 'keep-drying': 0 });
  });

  test('a round reopened has the same call where the window aims as in its list', async () => {
    await dampen();
    const roundId = await page('2026-05-30', 15);
    await outlooksMade();
    await yard.command('rounds.reopen', { roundId });
    const { probed, boards } = await yard.command('rounds.open', { roundId });
    expect(probed?.finding?.call).toBe('bring-in');
    expect(boards.map(({ finding }) => finding?.call)).toEqual(['bring-in', 'bring-in']);
  });

  test('a board that was read again has the call of that day in the earlier round, which says so', async () => {
    await dampen();
    const earlier = await page('2026-05-10', 30);
    await page('2026-05-30', 15, ids().slice(0, 1));
    await outlooksMade();
    const { boards } = await inRound(earlier);
    expect(boards.map(({ isReadSince }) => isReadSince)).toEqual([true, false]);
  });
});
