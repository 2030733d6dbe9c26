/** A board that was moved lately, through the whole app. The rules are the core's (`tests/unit/probing/new-here.test.ts`). */
import { expect, test } from 'vitest';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const DAY_MS = 86_400_000;
/** The clock of the yard begins at 08:00 UTC on June 1, 2026. */
const BEGIN_MS = Date.parse('2026-06-01T08:00:00Z');

test('the shell of a board that came from damper air is taken to be ahead of the rest', async () => {
  const [moved] = yard.boards;
  const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.85 }));
  const shed = await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air });
  const move = (placeId: number, day: number) =>
    yard.command('boards.move', {
      boardIds: [moved!.id],
      placeId,
      since: new Date(BEGIN_MS + day * DAY_MS).toISOString(),
    });
  yard.later(90 * DAY_MS);
  await move(shed.id, 1);
  await move(yard.place.id, 90);
  yard.later(10 * DAY_MS);
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  for (const board of [0, 1]) {
    await aimAt(roundId, board, 0);
    await type(roundId, 9);
  }
  const [ofMoved, ofSettled] = await Promise.all(
    yard.boards.map(async ({ id }) => (await yard.query('boards.get', { id })).board.latest!.averagePct!),
  );
  expect(ofMoved!).toBeGreaterThan(ofSettled! + 0.1);
});
