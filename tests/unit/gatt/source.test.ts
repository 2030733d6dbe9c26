/** Where packets come from. */
import { describe, expect, test } from 'vitest';
import {
  bytesHexSchema,
  fromOf,
  isAdvertised,
  isFrom,
  keyOfFrom,
  type PacketFrom,
  packetFromSchema,
  type Source,
  sourceSchema,
  uuidSchema,
} from '../../../shared-core/gatt/source.ts';

const characteristic = { serviceUuid: 'aa00', characteristicUuid: 'aa01' };
const sources: Source[] = [
  { kind: 'sent', ...characteristic },
  { kind: 'read', ...characteristic, everyMs: 1000 },
  { kind: 'service-data', serviceUuid: 'aa00' },
  { kind: 'manufacturer-data', companyId: 0xffff },
];
const origins: PacketFrom[] = [
  { kind: 'characteristic', ...characteristic },
  { kind: 'service-data', serviceUuid: 'aa00' },
  { kind: 'manufacturer-data', companyId: 0xffff },
];

test('what a meter sends and what is read from it come from a characteristic, an advert from itself', () => {
  expect(sources.map(fromOf)).toEqual([origins[0], origins[0], origins[1], origins[2]]);
  for (const each of sources) expect(sourceSchema.parse(each)).toEqual(each);
  for (const each of origins) expect(packetFromSchema.parse(each)).toEqual(each);
});

test('each origin has its own key', () => {
  expect(origins.map(keyOfFrom)).toEqual(['aa00 aa01', 'service-data aa00', 'manufacturer-data 65535']);
});

test('a packet is from the source that has its origin', () => {
  expect(sources.map((source) => origins.map((from) => isFrom(source, from)))).toEqual([
    [true, false, false],
    [true, false, false],
    [false, true, false],
    [false, false, true],
  ]);
});

test('a meter that advertises its values is never connected to', () => {
  expect(sources.map(isAdvertised)).toEqual([false, false, true, true]);
});

describe('what is no source', () => {
  test('a company number beyond 16 bits, and reading faster or slower than anybody probes', () => {
    const company = (companyId: number) =>
      packetFromSchema.safeParse({ kind: 'manufacturer-data', companyId }).success;
    expect([-1, 0, 0xffff, 0x10000].map(company)).toEqual([false, true, true, false]);
    const every = (everyMs: number) =>
      sourceSchema.safeParse({ kind: 'read', ...characteristic, everyMs }).success;
    expect([199, 200, 5000, 5001].map(every)).toEqual([false, true, true, false]);
  });

  test('a UUID spelled another way', () => {
    const isUuid = (uuid: string) => uuidSchema.safeParse(uuid).success;
    expect(['2a19', 'x2a19', '2a19x', '2A19', '2a1', 'a'.repeat(32), 'a'.repeat(31)].map(isUuid)).toEqual([
      true,
      false,
      false,
      false,
      false,
      true,
      false,
    ]);
    expect(uuidSchema.safeParse('2A19').error!.issues[0]!.message).toBe('meter.form.wrong.characteristic');
  });

  // Longest value of an attribute: Core Specification, Vol 3 Part F 3.2.9.
  test('a value longer than 512 bytes, or half a byte', () => {
    const isHex = (hex: string) => bytesHexSchema.safeParse(hex).success;
    expect(['', '0a', '0a1', 'x0a', '0ax', '0'.repeat(1024), '0'.repeat(1026)].map(isHex)).toEqual([
      true,
      true,
      false,
      false,
      false,
      true,
      false,
    ]);
  });
});
