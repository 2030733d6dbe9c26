import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ofVersion1, savedDescriptionSchema } from '../../../shared-core/gatt/saved-description.ts';
import { decodeValue } from '../../../shared-core/gatt/value.ts';

const identity = {
  presentationFormatHex: '06fead27010000',
  userDescription: 'Moisture',
  validRangeHex: null,
  serviceUuids: ['181a'],
};
/** As version 1 was saved. */
const saved = (layout: object) => ({
  serviceUuid: '181a',
  characteristicUuid: '2a6f',
  layout: { format: 6, byteOffset: 2, exponent: -2, scale: 0.5, offset: 1, ...layout },
  unit: 'pct' as const,
  range: { min: 4, max: 60 },
  origin: 'mapped-by-hand' as const,
  identity,
});

test('a description of version 1 is read as version 2, with all that it held', () => {
  expect(savedDescriptionSchema.parse(saved({ byteOrder: 'high-first' }))).toEqual({
    version: 2,
    source: { kind: 'sent', serviceUuid: '181a', characteristicUuid: '2a6f' },
    start: null,
    match: null,
    value: {
      kind: 'number',
      format: 6,
      byteOffset: 2,
      byteOrder: 'high-first',
      exponent: -2,
      scale: 0.5,
      offset: 1,
    },
    fields: { hold: null, batteryPct: null, tempC: null, species: null },
    unit: 'pct',
    range: { min: 4, max: 60 },
    origin: 'mapped-by-hand',
    identity,
  });
});

test('text of version 1 is the first number of the text, without an exponent, which it ignored', () => {
  const { value } = savedDescriptionSchema.parse(saved({ format: 25 }));
  expect(value).toEqual({ kind: 'text', nth: 1, byteOffset: 2, exponent: 0, scale: 0.5, offset: 1 });
});

test('what was read is saved as it is, and read again as the same', () => {
  const once = savedDescriptionSchema.parse(saved({}));
  expect(savedDescriptionSchema.parse(JSON.parse(JSON.stringify(once)))).toEqual(once);
});

test('any format of version 1 gives a description that reads without failing', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 27 }), fc.uint8Array({ maxLength: 20 }), (format, bytes) => {
      const description = ofVersion1(saved({ format }));
      expect(savedDescriptionSchema.parse(description)).toEqual(description);
      expect(decodeValue(bytes, description)).toHaveProperty('ok');
    }),
  );
});
