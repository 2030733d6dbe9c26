import { describe, expect, test } from 'vitest';
import { watchedOf, watchedOfUnknown } from '../../../electron/meter/watched.ts';
import type { DiscoveredCharacteristic } from '../../../shared-core/gatt/describe-meter.ts';

const characteristic = (
  serviceUuid: string,
  characteristicUuid: string,
  can: 'notify' | 'read' | 'write',
): DiscoveredCharacteristic => ({
  serviceUuid,
  characteristicUuid,
  canNotify: can === 'notify',
  canRead: can === 'read',
  canWrite: can === 'write',
  presentationFormat: null,
  userDescription: null,
  validRange: null,
});

describe('of a meter that nobody described', () => {
  test('what it sends and what it lets be read is watched; names, battery, and what it only takes are not', () => {
    // Generic Access, Device Information, Battery Service: Bluetooth SIG, Assigned Numbers 3.4.
    const watched = watchedOfUnknown([
      characteristic('1800', '2a00', 'read'),
      characteristic('180a', '2a24', 'read'),
      characteristic('180f', '2a19', 'notify'),
      characteristic('aa00', 'aa01', 'notify'),
      characteristic('aa00', 'aa02', 'read'),
      characteristic('aa00', 'aa03', 'write'),
    ]);
    expect(watched.sent).toEqual([{ serviceUuid: 'aa00', characteristicUuid: 'aa01' }]);
    expect(watched.read).toEqual([{ serviceUuid: 'aa00', characteristicUuid: 'aa02', everyMs: 500 }]);
  });

  test('however much it offers, it is asked at most five times a second', () => {
    const many = Array.from({ length: 40 }, (_, i) => characteristic('aa00', `ab${10 + i}`, 'read'));
    const { read } = watchedOfUnknown(many);
    const perSecond = read.reduce((sum, { everyMs }) => sum + 1000 / everyMs, 0);
    expect(perSecond).toBeLessThanOrEqual(5 + 1e-9);
    expect(read).toHaveLength(16);
  });
});

test('of a meter that is known only its source is watched', () => {
  const of = { serviceUuid: 'aa00', characteristicUuid: 'aa01' };
  expect(watchedOf({ kind: 'sent', ...of })).toEqual({ sent: [of], read: [] });
  expect(watchedOf({ kind: 'read', ...of, everyMs: 300 })).toEqual({
    sent: [],
    read: [{ ...of, everyMs: 300 }],
  });
  expect(watchedOf({ kind: 'service-data', serviceUuid: 'aa00' })).toEqual({ sent: [], read: [] });
});
