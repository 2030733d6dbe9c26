/** UUIDs, hex digits and addresses as they are written. */
import { describe, expect, test } from 'vitest';
import { withAddressEnd } from '../../../shared-core/gatt/address-end.ts';
import * as assigned from '../../../shared-core/gatt/assigned-numbers.ts';
import { bytesOfHex } from '../../../shared-core/gatt/bytes-of-hex.ts';

test('the end of an address tells two of one name apart', () => {
  expect(withAddressEnd('Pin meter', 'a4:c1:38:0b:1c:2d')).toBe('Pin meter 1c2d');
  expect(withAddressEnd('Pin meter', '2d')).toBe('Pin meter 2d');
});

test('hex digits are bytes, in pairs and of either case; anything odd at the end is left out', () => {
  expect([...bytesOfHex('0a1BfF')]).toEqual([0x0a, 0x1b, 0xff]);
  expect([...bytesOfHex('0a1')]).toEqual([0x0a]);
  expect([...bytesOfHex('0azz1b')]).toEqual([0x0a, 0x1b]);
  expect([...bytesOfHex('')]).toEqual([]);
});

// Bluetooth SIG, Assigned Numbers, 16-bit UUIDs and units (from memory).
test('the numbers that the Bluetooth SIG assigned', () => {
  expect(assigned).toMatchObject({
    serviceChangedUuid: '2a05',
    batteryLevelUuid: '2a19',
    environmentUuid: '181a',
    temperatureUuid: '2a6e',
    humidityUuid: '2a6f',
    userDescriptionUuid: '2901',
    presentationFormatUuid: '2904',
    validRangeUuid: '2906',
    ohmUnit: 0x272a,
    percentageUnit: 0x27ad,
  });
});

// A 16-bit UUID stands for 0000xxxx-0000-1000-8000-00805f9b34fb: Core Specification, Vol 3 Part B 2.5.1.
describe('one spelling for every UUID', () => {
  test.each([
    ['2A19', '2a19'],
    ['a00', '0a00'],
    ['00002a19', '2a19'],
    ['00002A19-0000-1000-8000-00805F9B34FB', '2a19'],
    ['12342a19-0000-1000-8000-00805f9b34fb', '12342a1900001000800000805f9b34fb'],
    ['00002a19-0000-1000-8000-00805f9b34fc', '00002a1900001000800000805f9b34fc'],
    ['6e400001-b5a3-f393-e0a9-e50e24dcca9e', '6e400001b5a3f393e0a9e50e24dcca9e'],
  ])('%s is %s', (written, plain) => {
    expect(assigned.plainUuid(written)).toBe(plain);
  });

  test.each(['', 'zz2a', '2a19z', '12342a19', '2a19-2a', '00002a190000100080000080', 'meter'])(
    '%s is none',
    (written) => {
      expect(assigned.plainUuid(written)).toBeNull();
    },
  );
});
