import { expect, test } from 'vitest';
import { aimOf, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** A round on one board in a shed whose air has that temperature all year. */
async function begin(woodTempC: number, airTempC: number) {
  const air = Array.from({ length: 12 }, () => ({ tempC: airTempC, rh: 0.75 }));
  const { id: placeId } = await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air });
  const { id: stackId } = await yard.command('stacks.add', {
    name: 'Oak',
    placeId,
    endUseId: 'air-dried-stock',
    topCover: 'covered',
    note: '',
  });
  await yard.command('boards.add', [{ ...yard.board('OAK-1'), stackId, speciesId: 'oak-white' }]);
  return (await yard.command('rounds.start', { stackId, woodTempC })).id;
}
const readings = async (roundId: number) =>
  (await yard.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];
const rules = async (roundId: number) =>
  (await readings(roundId)).flatMap(({ suspicions }) => suspicions).map(({ rule }) => rule);

test('a temperature that is given again is right: what is read at it is no longer questioned', async () => {
  const roundId = await begin(-5, 15);
  await type(roundId, 13);
  expect(await rules(roundId)).toContain('temperature-unlikely');
  const again = { roundId, boardId: null, woodTempC: -5 };
  await yard.command('rounds.setTemperature', again);
  expect(await rules(roundId)).not.toContain('temperature-unlikely');
  expect(await readings(roundId)).toMatchObject([{ isTempRight: true, counts: true }]);
  // Undone as the window does it.
  await yard.command('rounds.setTemperature', { ...again, woodTempC: null });
  await yard.command('rounds.setTemperature', again);
  expect(await rules(roundId)).toContain('temperature-unlikely');
});

test('on a frozen board the aim goes on, spot by spot, and rests once each was tried', async () => {
  const roundId = await begin(-8, -5);
  const aims: (number | null)[] = [];
  for (let { spotIndex } = await aimOf(roundId); spotIndex !== null && aims.length < 10; ) {
    aims.push(spotIndex);
    await type(roundId, 26);
    ({ spotIndex } = await aimOf(roundId));
  }
  expect(new Set(aims).size).toBe(aims.length);
  expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: null });
  const frozen = await readings(roundId);
  expect(frozen).toHaveLength(aims.length);
  expect(frozen.every(({ counts }) => !counts)).toBe(true);
  await yard.command('rounds.finish', { roundId });
  const stack = (await yard.query('stacks.list', {})).find(({ name }) => name === 'Oak');
  expect(stack?.due?.why.facts).toMatchObject({ boardCode: 'OAK-1', why: { code: 'stack-call.frozen' } });
});
