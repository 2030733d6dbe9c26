import { expect, test } from 'vitest';
import { DAY_MS, HOUR_MS } from '../../../shared-core/time.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const first = () => yard.boards[0]!.id;
const placeNames = async () =>
  (await yard.query('boards.get', { id: first() })).moves.map(({ placeName }) => placeName);
async function shed(): Promise<number> {
  const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 }));
  return (await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air })).id;
}
/** Some hours before the yard's clock. */
const before = (hours: number) => new Date(Date.parse(yard.now()) - hours * HOUR_MS).toISOString();

test('a move of the day on which the board was entered comes after that, though only the day is known', async () => {
  const placeId = await shed();
  yard.later(DAY_MS);
  await yard.command('boards.move', { boardIds: [first()], placeId, since: before(25), isDayOnly: true });
  expect(await placeNames()).toEqual(['Shop', 'Shed']);
  expect((await yard.query('boards.get', { id: first() })).board.placeName).toBe('Shed');
});

test('a move before one of a later day asks, and is inserted where the person says so', async () => {
  const placeId = await shed();
  yard.later(DAY_MS);
  const move = { boardIds: [first()], placeId, since: before(25 + 5 * 24) };
  expect(await yard.refusal('boards.move', move)).toMatch(
    /^That is before the move of WAL-01 to Shop on .+\. Insert it there\?$/,
  );
  expect(await placeNames()).toEqual(['Shop']);
  await yard.command('boards.move', { ...move, isInserted: true });
  expect(await placeNames()).toEqual(['Shed', 'Shop']);
  expect((await yard.query('boards.get', { id: first() })).board.placeName).toBe('Shop');
});
