import { expect, test } from 'vitest';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { aimedSpot, saveLive, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const reading = async (roundId: number) =>
  (await yard.query('rounds.get', { roundId })).probed?.assessment?.readings ?? [];

/** In a round with the meter, which then comes back counting in tenths. */
async function changedInRound() {
  await yard.command('settings.edit', { saveWhenSettled: true });
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  const before = yard.meter.described!.description!;
  const now: MeterDescription = { ...before, value: { ...before.value, exponent: -1 } };
  yard.meter.described = { ...yard.meter.described!, description: now, toConfirm: { before } };
  yard.meter.emit('described', yard.meter.described);
  yard.meter.lift();
  return { roundId, before, now };
}

test('a meter that is not as it was saves nothing by itself, and nothing by a press, and its value is shown', async () => {
  const { roundId, before, now } = await changedInRound();
  yard.meter.show(5, 4);
  expect(await reading(roundId)).toEqual([]);
  await expect(saveLive(roundId)).rejects.toThrow('Answer what is asked about it');
  expect(await reading(roundId)).toEqual([]);
  expect(await yard.query('meter.state', {})).toMatchObject({
    description: now,
    toConfirm: { what: 'value', before },
  });
  await expect.poll(() => yard.heard('meter.live').at(-1)).toMatchObject({ raw: 50, phase: 'settled' });
});

test('readings can be typed meanwhile', async () => {
  const { roundId } = await changedInRound();
  yard.meter.show(5, 4);
  await type(roundId, 12.1);
  expect(await reading(roundId)).toMatchObject([{ raw: 12.1, how: 'typed' }]);
});

test.each([
  ['as it counts now', 50],
  ['as it counted before', 5],
] as const)('once a person says that it is read %s, that number is saved', async (_, shown) => {
  const { roundId, before, now } = await changedInRound();
  yard.meter.show(5, 2);
  const { toConfirm } = await yard.command('meter.describe', shown === 50 ? now : before);
  expect(toConfirm).toBeNull();
  yard.meter.lift();
  yard.meter.show(5, 4);
  expect(await reading(roundId)).toMatchObject([{ raw: shown, how: 'settled' }]);
});

test('what the yard knows of the meter stays as it was until it is confirmed', async () => {
  const { now } = await changedInRound();
  const connect = async () => {
    await yard.command('meter.disconnect', {});
    await yard.command('meter.scan', {});
    let known: MeterDescription | null = null;
    yard.meter.connect = (_: string, description: MeterDescription | null = null) => {
      known = description;
    };
    await yard.command('meter.connect', { deviceId: 'hand' });
    return known as MeterDescription | null;
  };
  expect((await connect())?.value.exponent).toBe(-2);
  expect(now.value.exponent).toBe(-1);
});

test('a spot keeps waiting for the value of a meter that is to be confirmed', async () => {
  const { roundId } = await changedInRound();
  const before = await aimedSpot(roundId);
  yard.meter.show(5, 4);
  expect(await aimedSpot(roundId)).toEqual(before);
});
