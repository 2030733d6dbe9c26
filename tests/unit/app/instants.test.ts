import { expect, test } from 'vitest';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// The clock of the yard begins at 08:00 UTC on June 1, 2026.
withYardOfTwo();

test('the newest move says where a board is, however its instant was written', async () => {
  const [board] = yard.boards;
  const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 }));
  const shed = await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air });
  const move = (placeId: number, since: string) =>
    yard.command('boards.move', { boardIds: [board!.id], placeId, since, isInserted: true });
  yard.later(3_600_000);
  await move(shed.id, '2026-06-01T08:30:00.500Z');
  await move(yard.place.id, '2026-06-01T08:30:00Z');
  expect((await yard.query('boards.get', { id: board!.id })).board.placeName).toBe('Shed');
  await move(yard.place.id, '2026-06-01T10:31:00+02:00');
  const { board: now } = await yard.query('boards.get', { id: board!.id });
  expect(now).toMatchObject({ placeName: 'Shop', placeSince: '2026-06-01T08:31:00.000Z' });
});

test('what is still to come is refused, however its instant was written', async () => {
  const boardIds = [yard.boards[0]!.id];
  const since = '2026-06-01T05:00:00-04:00';
  expect(await yard.refusal('boards.move', { boardIds, placeId: yard.place.id, since })).toMatch(/future/);
});
