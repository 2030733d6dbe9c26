import { expect, test } from 'vitest';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { inEnglish } from '../words/in-english.ts';
import { aimAt, type } from './in-round.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const theStack = () => yard.query('stacks.get', { id: yard.stack.id });
const dueWords = async () => {
  const { due } = await theStack();
  return due && inEnglish(due.why);
};
const start = (placeId?: number) =>
  yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20, ...(placeId && { placeId }) });
type Round = Awaited<ReturnType<typeof start>>;

/** Reads every spot of every board of the round, and finishes it. */
async function read({ id: roundId, boards }: Round, raw = 14): Promise<void> {
  for (const [boardIndex, board] of boards.entries())
    for (const spotIndex of planSpots(board).plan.keys()) {
      await aimAt(roundId, boardIndex, spotIndex);
      await type(roundId, raw);
    }
  await yard.command('rounds.finish', { roundId });
}

/** The first board of two is moved to another place by itself, and a year goes by. */
async function oneMovedAYearAgo(): Promise<number> {
  const air = Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.4 }));
  const shed = await yard.command('places.add', { name: 'Pole shed', kind: 'open-shed', air });
  await read(await start());
  yard.later(DAY_MS);
  await yard.command('boards.move', {
    boardIds: [yard.boards[0]!.id],
    placeId: shed.id,
    since: yard.now(),
  });
  yard.later(400 * DAY_MS);
  await outlooksMade();
  return shed.id;
}

test('a board that stands elsewhere is due with its stack, and a round there reads it alone', async () => {
  const shedId = await oneMovedAYearAgo();
  const shed = { placeId: shedId, placeName: 'Pole shed', boards: 1 };
  expect((await theStack()).elsewhere.places).toEqual([{ ...shed, toProbe: 1 }]);
  expect(await dueWords()).toContain('1 board to probe in Pole shed.');
  const { due } = await yard.query('dates.list', {});
  expect(due.map(({ due: { why } }) => inEnglish(why))).toEqual([await dueWords()]);

  const round = await start(shedId);
  expect(round.boards.map(({ code }) => code)).toEqual(['WAL-01']);
  expect(round.placeName).toBe('Pole shed');
  await read(round);
  await outlooksMade();
  expect((await theStack()).elsewhere.places).toEqual([{ ...shed, toProbe: 0 }]);
  expect(await dueWords()).not.toContain('Pole shed');
  // Finished, it has no board of the stack's own place.
  const finished = await yard.query('rounds.get', { roundId: round.id });
  expect(finished.boards.map(({ code }) => code)).toEqual(['WAL-01']);
});

test('where nothing else of the stack is due, its place is that of those boards', async () => {
  const shedId = await oneMovedAYearAgo();
  const round = await start();
  expect(round.boards.map(({ code }) => code)).toEqual(['WAL-02']);
  await read(round, 7.5);
  await outlooksMade();
  expect((await theStack()).due).toMatchObject({ kind: 'probe-again', placeId: shedId });
  expect(await dueWords()).toBe('1 board to probe in Pole shed.');
});

test('a round of the stack that runs is not gone on with at another place', async () => {
  const shedId = await oneMovedAYearAgo();
  const { id } = await start();
  await expect(start(shedId)).rejects.toThrow(/refusal.round-running|is running/);
  expect((await start()).id).toBe(id);
});
