import { describe, expect, test } from 'vitest';
import type { DiscoveredCharacteristic } from '../../../shared-core/gatt/describe-meter.ts';
import {
  type MeterDescription,
  meterDescriptionSchema,
} from '../../../shared-core/gatt/meter-description.ts';
import { confirmed, recognizeMeter } from '../../../shared-core/gatt/recognize-meter.ts';
import { decodeValue } from '../../../shared-core/gatt/value.ts';

// Descriptor 0x2904: Bluetooth Core Specification, Vol 3 Part G 3.3.3.5. The meter is our own invention.

/** uint16, a power of ten, percentage (0x27AD), namespace SIG. */
const format = (exponent: number, code = 0x06) => Uint8Array.of(code, exponent & 0xff, 0xad, 0x27, 1, 0, 0);

const value = (changes: Partial<DiscoveredCharacteristic> = {}): DiscoveredCharacteristic => ({
  serviceUuid: 'aa00',
  characteristicUuid: 'aa01',
  canNotify: true,
  canRead: false,
  canWrite: false,
  presentationFormat: format(-2),
  userDescription: 'Moisture content',
  validRange: null,
  ...changes,
});
const other = value({ serviceUuid: 'bb00', characteristicUuid: 'bb01', presentationFormat: null });

const met = (...found: DiscoveredCharacteristic[]): MeterDescription =>
  recognizeMeter(found, null).description!;
const shown = (description: MeterDescription | null, bytes: number[]) => {
  const decoded = decodeValue(Uint8Array.from(bytes), description!);
  return decoded.ok ? decoded.value : null;
};
/** 124, low byte first. */
const bytes = [0x7c, 0x00];

test('a meter that was never met describes itself, and needs no confirmation', () => {
  const { description, toConfirm } = recognizeMeter([value(), other], null);
  expect(toConfirm).toBeUndefined();
  expect(description?.identity).toEqual({
    presentationFormatHex: '06fead27010000',
    userDescription: 'Moisture content',
    validRangeHex: null,
    serviceUuids: ['aa00', 'bb00'],
  });
  expect(meterDescriptionSchema.parse(description)).toEqual(description);
});

test('a meter that is as it was is read as it was, whatever order its services are listed in', () => {
  const known = met(value(), other);
  expect(recognizeMeter([other, value()], known)).toEqual({ description: known, remarks: [] });
});

test('another power of ten is confirmed first: both numbers are there to choose from', () => {
  const known = met(value());
  const { description, toConfirm } = recognizeMeter([value({ presentationFormat: format(-1) })], known);
  expect(shown(description, bytes)).toBe(12.4);
  expect(shown(toConfirm!.before, bytes)).toBe(1.24);
});

test.each([
  ['the format of its number', value({ presentationFormat: format(-2, 0x0e) })],
  ['what it calls its value', value({ userDescription: 'Moisture of wood' })],
  ['its range', value({ validRange: Uint8Array.of(0, 0, 0xff, 0) })],
  ['that it describes itself', value({ presentationFormat: null })],
])('a meter that changed %s is confirmed first', (_, changed) => {
  expect(recognizeMeter([changed], met(value())).toConfirm).toBeDefined();
});

test('a meter with another service is confirmed first, by the one number that it shows', () => {
  const { description, toConfirm } = recognizeMeter([value(), other], met(value()));
  expect(toConfirm).toEqual({ before: null });
  expect(shown(description, bytes)).toBe(1.24);
});

test('a meter that sends another characteristic is confirmed first', () => {
  const changed = recognizeMeter([value({ characteristicUuid: 'aa02' })], met(value()));
  expect(changed.description?.source).toMatchObject({ characteristicUuid: 'aa02' });
  expect(changed.toConfirm).toEqual({ before: null });
  expect(changed.remarks).toEqual([{ code: 'meter.self.changed' }]);
});

test('a meter that sends nothing readable any more is set up by hand', () => {
  const changed = recognizeMeter(
    [value({ presentationFormat: null, characteristicUuid: 'aa02' })],
    met(value()),
  );
  expect(changed).toMatchObject({ description: null, remarks: [{ code: 'meter.self.changed' }] });
  expect(changed.toConfirm).toBeUndefined();
});

test('once confirmed, the same meter needs no further confirmation', () => {
  const found = [value({ presentationFormat: format(-1) })];
  const { description, toConfirm } = recognizeMeter(found, met(value()));
  for (const chosen of [description!, toConfirm!.before!]) {
    expect(recognizeMeter(found, confirmed(found, chosen)).toConfirm).toBeUndefined();
  }
});

describe('a meter that an earlier Pintally saved', () => {
  const { identity: _, ...saved } = met(value());

  test('is taken as it is where it says the same', () => {
    const { description, toConfirm } = recognizeMeter([value()], saved);
    expect(toConfirm).toBeUndefined();
    expect(description).toEqual(met(value()));
  });

  test('is confirmed first where it says something else', () => {
    const { toConfirm } = recognizeMeter([value({ presentationFormat: format(-1) })], saved);
    expect(shown(toConfirm!.before, bytes)).toBe(1.24);
  });

  test('is taken as it was set up by hand where it says nothing of itself', () => {
    const byHand: MeterDescription = { ...saved, origin: 'mapped-by-hand' };
    const { description, toConfirm } = recognizeMeter([value({ presentationFormat: null })], byHand);
    expect(toConfirm).toBeUndefined();
    expect(description).toMatchObject(byHand);
  });
});
