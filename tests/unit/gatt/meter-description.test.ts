import { describe, expect, test } from 'vitest';
import {
  meterDescriptionSchema,
  meterRangeSchema,
  NO_FIELDS,
  plainDescription,
} from '../../../shared-core/gatt/meter-description.ts';

describe('the range of a meter', () => {
  test('is from a lower to a higher value, also below zero', () => {
    expect(meterRangeSchema.parse({ min: -10, max: 60 })).toEqual({ min: -10, max: 60 });
    expect(meterRangeSchema.safeParse({ min: -1e60, max: 1e60 }).success).toBe(true);
  });

  test.each([
    [{ max: 60 }, 'min', 'meter.form.wrong.lowest'],
    [{ min: -1e61, max: 60 }, 'min', 'meter.form.wrong.lowest'],
    [{ min: 1e61, max: 60 }, 'min', 'meter.form.wrong.lowest'],
    [{ min: 4 }, 'max', 'meter.form.wrong.highest'],
    [{ min: 4, max: 1e61 }, 'max', 'meter.form.wrong.highest'],
    [{ min: 4, max: -1e61 }, 'max', 'meter.form.wrong.highest'],
    [{ min: 60, max: 4 }, 'max', 'meter.form.wrong.order'],
    [{ min: 60, max: 60 }, 'max', 'meter.form.wrong.order'],
  ])('of %j says beside %s what is wrong', (range, path, wrong) => {
    expect(meterRangeSchema.safeParse(range).error!.issues[0]).toMatchObject({
      path: [path],
      message: wrong,
    });
  });
});

describe('a description', () => {
  const plain = { exponent: 0, scale: 1, offset: 0 } as const;
  const byte = { kind: 'number', format: 4, byteOffset: 2, ...plain } as const;
  const described = plainDescription({
    source: { kind: 'sent', serviceUuid: 'aa00', characteristicUuid: 'aa01' },
    value: { kind: 'number', format: 6, byteOffset: 0, ...plain },
    unit: 'pct',
    range: { min: 0, max: 100 },
    origin: 'mapped-by-hand',
  });
  const ofSpecies = (species: unknown) =>
    meterDescriptionSchema.safeParse({ ...described, fields: { ...NO_FIELDS, species } });

  test('keeps all that was found in the packets and how to start', () => {
    const whole = {
      ...described,
      start: { serviceUuid: 'aa00', characteristicUuid: 'aa02', bytesHex: '01', withResponse: true },
      match: { layout: byte, equals: 1 },
      fields: {
        hold: { word: 'H' },
        batteryPct: byte,
        tempC: { ...byte, byteOffset: 3 },
        species: { at: { kind: 'letters', byteOffset: 4, octets: 2 }, expected: 'A1' },
      },
    };
    expect(meterDescriptionSchema.parse(whole)).toEqual(whole);
  });

  test('has each field, if only to say that there is none', () => {
    for (const field of Object.keys(NO_FIELDS)) {
      const { [field as keyof typeof NO_FIELDS]: _, ...others } = NO_FIELDS;
      expect(meterDescriptionSchema.safeParse({ ...described, fields: others }).success).toBe(false);
    }
  });

  test('is of a meter that described itself, or by hand', () => {
    const isFrom = (origin: string) => meterDescriptionSchema.safeParse({ ...described, origin }).success;
    expect(['self-described', 'mapped-by-hand', ''].map(isFrom)).toEqual([true, true, false]);
  });

  test('has a species by a number, a text or letters, of 64 characters at most', () => {
    expect(ofSpecies({ at: byte, expected: null }).success).toBe(true);
    expect(ofSpecies({ at: { kind: 'text', byteOffset: 0, nth: 1, ...plain }, expected: '' }).success).toBe(
      true,
    );
    expect(
      ofSpecies({ at: { kind: 'letters', byteOffset: 0, octets: 1 }, expected: 'A'.repeat(64) }).success,
    ).toBe(true);
    expect(ofSpecies({ at: byte, expected: 'A'.repeat(65) }).success).toBe(false);
    expect(ofSpecies({ at: { kind: 'sound' }, expected: null }).success).toBe(false);
    expect(ofSpecies({ at: byte }).success).toBe(false);
  });
});
