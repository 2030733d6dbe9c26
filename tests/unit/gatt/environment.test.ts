import { expect, test } from 'vitest';
import {
  humidityOf,
  openSensorUuid,
  sensedInAdvert,
  temperatureOf,
} from '../../../shared-core/gatt/environment.ts';

const bytes = (...octets: number[]) => new Uint8Array(octets);

// Bluetooth SIG, GATT Specification Supplement: sint16 in 0.01 °C, 0x8000 is not known (from memory).
test.each([
  [[0xca, 0x09], 25.06],
  [[0x18, 0xfc], -10],
  [[0x00, 0x00], 0],
  // Air that wood dries in: ±60 °C.
  [[0x70, 0x17], 60],
  [[0x71, 0x17], null],
  [[0x90, 0xe8], -60],
  [[0x8f, 0xe8], null],
  [[0x00, 0x80], null],
  [[0x10, 0x27], null],
  [[0xca], null],
  [[0xca, 0x09, 0x00], null],
])('temperature %j is %j °C', (octets, tempC) => {
  expect(temperatureOf(bytes(...octets))).toBe(tempC);
});

// The same source: uint16 in 0.01 %, 0xFFFF is not known (from memory).
test.each([
  [[0xbf, 0x13], 0.5055],
  [[0x10, 0x27], 1],
  // 101 %, as a sensor in fog has it.
  [[0x74, 0x27], 1],
  [[0x00, 0x00], 0],
  [[0x04, 0x29], 1],
  [[0x05, 0x29], null],
  [[0xff, 0xff], null],
  [[], null],
])('humidity %j is %j', (octets, rh) => {
  expect(humidityOf(bytes(...octets))).toBe(rh);
});

// The example of the standard, https://bthome.io/format, as listed in open code (LightFiLimited/bthome-ts-parser, README).
test('reads the example of the open standard for adverts', () => {
  expect(sensedInAdvert(bytes(64, 2, 202, 9, 3, 191, 19))).toEqual({ tempC: 25.06, rh: 0.5055 });
});

test('skips what it need not know in an advert, and reads the coarser values', () => {
  const packet = [0x00, 7];
  const battery = [0x01, 93];
  const wholePercent = [0x2e, 55];
  const tenths = [0x45, 0x11, 0x01];
  expect(sensedInAdvert(bytes(0x44, ...packet, ...battery, ...wholePercent, ...tenths))).toEqual({
    tempC: 27.3,
    rh: 0.55,
  });
});

// The standard's tables of object numbers and their lengths (https://bthome.io/format, from memory).
test.each([
  [1, [0x00, 0x01, 0x09, 0x0f, 0x10, 0x11, 0x15, 0x20, 0x2d, 0x2f]],
  [2, [0x06, 0x07, 0x08, 0x0c, 0x0d, 0x0e, 0x12, 0x13, 0x14]],
  [3, [0x04, 0x05, 0x0a, 0x0b]],
])('values of %d octets are skipped by their length: %j', (length, ids) => {
  for (const id of ids) {
    const skipped = [id, ...Array<number>(length).fill(0x02)];
    expect(sensedInAdvert(bytes(0x40, ...skipped, 0x45, 0x11, 0x01))).toEqual({ tempC: 27.3, rh: null });
  }
});

test('reads a temperature in whole degrees, and a humidity alone', () => {
  expect(sensedInAdvert(bytes(0x40, 0x57, 0xea))).toEqual({ tempC: -22, rh: null });
  expect(sensedInAdvert(bytes(0x40, 0x2e, 55))).toEqual({ tempC: null, rh: 0.55 });
  expect(openSensorUuid).toBe('fcd2');
});

test.each([
  ['nothing', []],
  ['an encrypted one', [0x41, 2, 202, 9]],
  ['another version', [0x20, 2, 202, 9]],
  ['one cut short', [0x40, 2, 202]],
  ['one without air', [0x40, 0x01, 93]],
  ['a value nobody knows first', [0x40, 0xf7, 1, 2, 202, 9]],
])('%s is no advert of air', (_, octets) => {
  expect(sensedInAdvert(bytes(...octets))).toBeNull();
});

test('never reads past the end, whatever comes', () => {
  for (let seed = 1; seed <= 2000; seed++) {
    const octets = Array.from({ length: seed % 25 }, (_, at) => (seed * (at + 7) * 2654435761) >>> 24);
    const sensed = sensedInAdvert(bytes(0x40, ...octets));
    if (sensed === null) continue;
    if (sensed.tempC !== null) expect(Math.abs(sensed.tempC)).toBeLessThanOrEqual(60);
    if (sensed.rh !== null) expect(sensed.rh).toBeLessThanOrEqual(1);
  }
});
