import { expect, test } from 'vitest';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const readings = async (roundId: number) =>
  (await yard.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];

test('out of reach for a minute in the middle of a push, nothing of the half is saved; once steady again, it is', async () => {
  await yard.command('settings.edit', { saveWhenSettled: true });
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  yard.meter.lift();
  yard.meter.show(14, 0.5);
  yard.meter.leaveReach(60);
  expect(await readings(roundId)).toEqual([]);
  // Half a second more would have been steady with the half second of before.
  yard.meter.show(14, 0.5);
  expect(await readings(roundId)).toEqual([]);
  yard.meter.show(14, 4);
  expect(await readings(roundId)).toMatchObject([{ raw: 14, how: 'settled' }]);
});
