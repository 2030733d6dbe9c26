import { describe, expect, test } from 'vitest';
import { aimAt } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

test('meters heard are listed the strongest first, those whose strength the adapter does not tell last', async () => {
  await yard.command('meter.scan', {});
  for (const [deviceId, rssiDbm] of [
    ['untold', null],
    ['far', -90],
    ['near', -40],
  ] as const) {
    yard.meter.emit('found', { deviceId, name: deviceId, rssiDbm, serviceUuids: [] });
  }
  const { devices } = await yard.query('meter.state', {});
  expect(devices.map(({ deviceId, rssiDbm }) => [deviceId, rssiDbm])).toEqual([
    ['near', -40],
    ['hand', -50],
    ['far', -90],
    ['untold', null],
  ]);
});

test('a sensor of the yard is not among the meters heard', async () => {
  await yard.command('sensors.add', { name: 'Probe', deviceId: 'wall', kind: 'probe', placeId: null });
  await yard.command('meter.scan', {});
  yard.meter.emit('found', { deviceId: 'wall', name: 'Wall', rssiDbm: -40, serviceUuids: [] });
  const { devices } = await yard.query('meter.state', {});
  expect(devices.map(({ deviceId }) => deviceId)).toEqual(['hand']);
});

describe('a meter that is described otherwise', () => {
  async function described() {
    const { description } = await yard.query('meter.state', {});
    return description!;
  }
  const judged = async (boardId: number) => (await yard.query('boards.get', { id: boardId })).readings;

  test('reads by it from now on: readings taken before keep the profile they were taken with', async () => {
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    await yard.command('meter.scan', {});
    await yard.command('meter.connect', { deviceId: 'hand' });
    yard.meter.lift();
    yard.meter.show(11.8, 4);
    await yard.command('meter.describe', { ...(await described()), range: { min: 11.8, max: 60 } });
    await aimAt(roundId, 1);
    yard.meter.lift();
    yard.meter.show(11.8, 4);

    const [before, after] = [(await judged(yard.boards[0]!.id))[0]!, (await judged(yard.boards[1]!.id))[0]!];
    expect(after.meterId).toBe(before.meterId);
    expect(after.meterProfileId).not.toBe(before.meterProfileId);
    const rules = ({ suspicions }: typeof before) => suspicions.map(({ rule }) => rule);
    expect(rules(before)).not.toContain('outside-meter-range');
    expect(rules(after)).toContain('outside-meter-range');
  });
});
