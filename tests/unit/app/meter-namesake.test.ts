import { expect, test, vi } from 'vitest';
import { handHeld, withYardOfTwo, yard } from './yard-of-two.ts';

// The address that a device may make up at each start: a static random address (Core Specification, Vol 6 Part B 1.3.2.1).

withYardOfTwo();

const otherId = 'c0ffee00beef';

async function connectTo(deviceId: string) {
  await yard.command('meter.scan', {});
  yard.meter.emit('found', { deviceId, name: 'Hand-held', rssiDbm: -60, serviceUuids: [] });
  const connect = vi.spyOn(yard.meter, 'connect');
  const { remarks } = await yard.command('meter.connect', { deviceId });
  return { remarks, asked: connect.mock.lastCall };
}

test('a meter of the same name under another address is read the same way, but is another meter, which is said', async () => {
  await connectTo('hand');
  await yard.command('meter.disconnect', {});
  const { remarks, asked } = await connectTo(otherId);
  expect(asked).toEqual([otherId, handHeld]);
  expect(remarks).toEqual([{ code: 'meter.self.other-address' }]);
  const names = (await yard.query('meters.list', {})).map(({ name }) => name);
  expect(names).toEqual(['Hand-held', 'Hand-held beef']);

  await yard.command('meter.disconnect', {});
  expect((await connectTo(otherId)).remarks).toEqual([]);
  expect((await yard.query('meters.list', {})).map(({ name }) => name)).toEqual(names);
});

test('a list says which meters were used before', async () => {
  await connectTo('hand');
  await yard.command('meter.disconnect', {});
  await yard.command('meter.scan', {});
  yard.meter.emit('found', { deviceId: otherId, name: 'Hand-held', rssiDbm: -60, serviceUuids: [] });
  const { devices } = await yard.query('meter.state', {});
  expect(devices.map(({ deviceId, isKnown }) => [deviceId, isKnown])).toEqual([
    ['hand', true],
    [otherId, false],
  ]);
});
