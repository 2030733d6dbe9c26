import { afterEach, beforeEach, expect, test } from 'vitest';
import { type YardOfTwo, yardOfTwo } from './yard-of-two.ts';

let yard: YardOfTwo;
beforeEach(async () => {
  yard = await yardOfTwo();
});
afterEach(async () => {
  await yard.app.close();
  expect(yard.faults).toEqual([]);
});

test('meters heard are listed the strongest first, those whose strength the adapter does not tell last', async () => {
  await yard.call('meter.scan', {});
  for (const [deviceId, rssiDbm] of [
    ['untold', null],
    ['far', -90],
    ['near', -40],
  ] as const) {
    yard.meter.emit('found', { deviceId, name: deviceId, rssiDbm, serviceUuids: [] });
  }
  const { devices } = await yard.call('meter.state', {});
  expect(devices.map(({ deviceId, rssiDbm }) => [deviceId, rssiDbm])).toEqual([
    ['near', -40],
    ['hand', -50],
    ['far', -90],
    ['untold', null],
  ]);
});
