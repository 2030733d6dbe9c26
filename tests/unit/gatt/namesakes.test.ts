/** Which of the meters that the yard remembers a device may be. */
import { describe, expect, test } from 'vitest';
import { type MeterDescription, plainDescription } from '../../../shared-core/gatt/meter-description.ts';
import { isReadAlike, isRenamed, namesakes } from '../../../shared-core/gatt/namesakes.ts';

const meter = (deviceId: string, name: string, isDescribed = true) => ({
  deviceId,
  name,
  description: isDescribed ? ({} as MeterDescription) : null,
});
const [A, B, C] = ['a4:c1:38:00:00:01', 'a4:c1:38:00:00:02', 'a4:c1:38:00:00:03'] as const;

describe('a device with a meter’s address is renamed', () => {
  test('where it gives itself another name', () => {
    expect(isRenamed({ deviceId: A, name: 'Pin meter' }, 'Scale')).toBe(true);
  });

  test.each([
    ['gives no name', 'Pin meter', ''],
    ['shortens its name, as an advert may', 'Pin meter', 'Pin'],
    ['gives the whole of a shortened one', 'Pin', 'Pin meter'],
    ['has the same name', 'Pin meter', 'Pin meter'],
    ['was remembered by its address alone', A, 'Pin meter'],
  ])('but not where it %s', (_, name, ownName) => {
    expect(isRenamed({ deviceId: A, name }, ownName)).toBe(false);
  });
});

// A device may make up a new address at each start: Bluetooth Core Specification, Vol 6 Part B 1.3.2.
describe('a device with a new address may be', () => {
  const known = [meter(A, 'Pin meter'), meter(B, 'Pin meter 0002'), meter(C, 'Scale')];
  const of = (ownName: string, deviceId = 'a4:c1:38:00:00:09', meters = known) =>
    namesakes({ deviceId, ownName }, meters).map((each) => each.deviceId);

  test('each meter of its name, also one with the end of its address added', () => {
    expect(of('Pin meter')).toEqual([A, B]);
    expect(of('Pin meter 0002')).toEqual([B]);
    expect(of('Hygrometer')).toEqual([]);
  });

  test('none without a name', () => {
    expect(of('', 'a4:c1:38:00:00:09', [meter(A, '')])).toEqual([]);
  });

  test('not the meter of its own address, and none that was never described', () => {
    expect(of('Pin meter', A)).toEqual([B]);
    expect(of('Pin meter', C, [meter(A, 'Pin meter', false)])).toEqual([]);
  });
});

describe('two meters are read alike', () => {
  const described = plainDescription({
    source: { kind: 'sent', serviceUuid: 'aa00', characteristicUuid: 'aa01' },
    value: { kind: 'number', format: 6, byteOffset: 0, exponent: -1, scale: 1, offset: 0 },
    unit: 'pct',
    range: { min: 0, max: 100 },
    origin: 'mapped-by-hand',
  });

  test('where they send the same number at the same place, whatever else is known of them', () => {
    const other = {
      ...described,
      source: { kind: 'read', serviceUuid: 'aa00', characteristicUuid: 'aa01', everyMs: 500 },
      range: { min: 4, max: 60 },
      origin: 'self-described',
    } as const;
    expect(isReadAlike(described, other)).toBe(true);
  });

  test.each<[string, Partial<MeterDescription>]>([
    ['unit', { unit: 'ohm' }],
    ['layout', { value: { kind: 'number', format: 4, byteOffset: 0, exponent: -1, scale: 1, offset: 0 } }],
    ['characteristic', { source: { kind: 'sent', serviceUuid: 'aa00', characteristicUuid: 'aa02' } }],
  ])('but not with another %s', (_, difference) => {
    expect(isReadAlike(described, { ...described, ...difference })).toBe(false);
  });
});
