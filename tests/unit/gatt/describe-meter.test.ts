import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import { type DiscoveredCharacteristic, describeMeter } from '../../../shared-core/gatt/describe-meter.ts';
import { meterDescriptionSchema } from '../../../shared-core/gatt/meter-description.ts';

const ownService = '7d0a1f00b2c94a6e8f5317c2a4e9d010';
const ownValue = '7d0a1f01b2c94a6e8f5317c2a4e9d010';
const percentUint16 = Uint8Array.of(0x06, 0xfe, 0xad, 0x27, 1, 0, 0);
const ohmUint32 = Uint8Array.of(0x08, 0x03, 0x2a, 0x27, 1, 0, 0);

const characteristic = (differences: Partial<DiscoveredCharacteristic>): DiscoveredCharacteristic => ({
  serviceUuid: ownService,
  characteristicUuid: ownValue,
  canNotify: true,
  canRead: true,
  canWrite: false,
  presentationFormat: percentUint16,
  userDescription: null,
  validRange: null,
  ...differences,
});
const battery = characteristic({
  serviceUuid: '180f',
  characteristicUuid: '2a19',
  presentationFormat: Uint8Array.of(0x04, 0, 0xad, 0x27, 1, 0, 0),
});

describe('a meter that describes itself', () => {
  test('a percentage named moisture content becomes the whole description', () => {
    const found = [battery, characteristic({ userDescription: 'Moisture content' })];
    expect(describeMeter(found)).toEqual({
      description: {
        version: 2,
        source: { kind: 'sent', serviceUuid: ownService, characteristicUuid: ownValue },
        start: null,
        match: null,
        value: { kind: 'number', format: 6, byteOffset: 0, exponent: -2, scale: 1, offset: 0 },
        fields: { hold: null, batteryPct: null, tempC: null, species: null },
        unit: 'pct',
        range: { min: 0, max: 200 },
        origin: 'self-described',
      },
      remarks: [],
    });
    expect(() => meterDescriptionSchema.parse(describeMeter(found).description)).not.toThrow();
  });

  test('ohms are recognized by the unit 0x272A; the exponent multiplies', () => {
    const { description } = describeMeter([characteristic({ presentationFormat: ohmUint32 })]);
    expect(description).toMatchObject({ unit: 'ohm', value: { format: 8, exponent: 3 }, range: { min: 0 } });
  });

  // Bluetooth SIG, Valid Range: lower then upper inclusive value, in the characteristic's format and exponent.
  test('the Valid Range descriptor sets what the meter can show', () => {
    const validRange = Uint8Array.of(0xf4, 0x01, 0x70, 0x17); // 500 and 6000 hundredths
    expect(describeMeter([characteristic({ validRange })]).description?.range).toEqual({ min: 5, max: 60 });
  });

  test('a range that makes no sense is passed over', () => {
    const validRange = Uint8Array.of(0x70, 0x17, 0xf4, 0x01);
    expect(describeMeter([characteristic({ validRange })]).description?.range).toEqual({ min: 0, max: 200 });
  });

  test('a value too small to hold 200 % has the range that it can hold', () => {
    const uint8Tenths = Uint8Array.of(0x04, 0xff, 0xad, 0x27, 1, 0, 0);
    const { description } = describeMeter([characteristic({ presentationFormat: uint8Tenths })]);
    expect(description?.range).toEqual({ min: 0, max: 25.5 });
  });

  test('the exponent of a float is not used', () => {
    const float32 = Uint8Array.of(0x14, 0x7f, 0xad, 0x27, 1, 0, 0);
    const { description } = describeMeter([characteristic({ presentationFormat: float32 })]);
    expect(description?.value).toMatchObject({ format: 20, exponent: 0 });
  });
});

describe('a percentage is not yet moisture content', () => {
  test('a battery level is never the reading', () => {
    expect(describeMeter([battery])).toEqual({ description: null, remarks: [] });
  });

  test('humidity without a presentation format is not guessed', () => {
    const found = [
      characteristic({ serviceUuid: '181a', characteristicUuid: '2a6f', presentationFormat: null }),
    ];
    expect(describeMeter(found)).toEqual({ description: null, remarks: [] });
  });

  test('humidity with a percent sign and no name asks the person', () => {
    const found = [characteristic({ serviceUuid: '181a', characteristicUuid: '2a6f' })];
    const { description, remarks } = describeMeter(found);
    expect(description).toBeNull();
    expect(remarks).toEqual([{ code: 'meter.self.humidity-unconfirmed' }]);
  });

  test('humidity that calls itself moisture of wood is the reading', () => {
    const found = [
      characteristic({ serviceUuid: '181a', characteristicUuid: '2a6f', userDescription: 'Wood moisture' }),
    ];
    expect(describeMeter(found).description?.source).toMatchObject({ characteristicUuid: '2a6f' });
  });

  test.each(['Relative humidity', 'RH', 'Battery charge', 'Air'])(
    'a percentage named %j is not it',
    (name) => {
      expect(describeMeter([characteristic({ userDescription: name })]).description).toBeNull();
    },
  );
});

describe('a choice', () => {
  const named = characteristic({ userDescription: 'Moisture content' });
  const unnamed = characteristic({ characteristicUuid: 'aa01' });
  const ohms = characteristic({ characteristicUuid: 'aa02', presentationFormat: ohmUint32 });

  test('named percentage before ohms before unnamed percentage', () => {
    expect(describeMeter([unnamed, ohms, named]).description?.source).toMatchObject({
      characteristicUuid: ownValue,
    });
    expect(describeMeter([unnamed, ohms]).description?.unit).toBe('ohm');
    expect(describeMeter([unnamed]).description?.source).toMatchObject({ characteristicUuid: 'aa01' });
  });

  test('two of the same rank are left to the person', () => {
    const two = describeMeter([named, { ...named, characteristicUuid: 'aa03' }]);
    expect(two.description).toBeNull();
    expect(two.remarks).toEqual([{ code: 'meter.self.several', facts: { values: 2 } }]);
  });

  test('one that cannot notify, and one in degrees, are something else', () => {
    const celsius = Uint8Array.of(0x0e, 0xfe, 0x2f, 0x27, 1, 0, 0);
    const found = [characteristic({ canNotify: false }), characteristic({ presentationFormat: celsius })];
    expect(describeMeter(found)).toEqual({ description: null, remarks: [] });
  });

  test.each([
    ['a damaged descriptor', Uint8Array.of(6, 0xfe), 'meter.self.format-length', { sent: 2, needed: 7 }],
    ['a struct', Uint8Array.of(0x1b, 0, 0xad, 0x27, 1, 0, 0), 'meter.self.format-unreadable', { format: 27 }],
    [
      'an absurd exponent',
      Uint8Array.of(0x06, 0x63, 0xad, 0x27, 1, 0, 0),
      'meter.self.exponent-absurd',
      { exponent: 99 },
    ],
  ])('%s is passed over with the reason', (_, presentationFormat, code, facts) => {
    const { description, remarks } = describeMeter([characteristic({ presentationFormat })]);
    expect(description).toBeNull();
    expect(remarks).toEqual([{ code, facts }]);
  });

  test('a valid range beyond what a meter can show is passed over', () => {
    // FLOAT (23), its lowest and highest value: -8388608e54 and 0.
    const { description } = describeMeter([
      characteristic({
        presentationFormat: Uint8Array.of(23, 0, 0xad, 0x27, 1, 0, 0),
        validRange: Uint8Array.of(0, 0, 128, 54, 0, 0, 0, 0),
      }),
    ]);
    expect(description?.range).toEqual({ min: 0, max: 200 });
  });

  test('whatever descriptors come, it answers, and a description it makes is one that can be saved', () => {
    const any = fc.record({
      serviceUuid: fc.constant(ownService),
      characteristicUuid: fc.constantFrom(ownValue, '2a6f', '2a19', '2a05'),
      canNotify: fc.boolean(),
      canRead: fc.boolean(),
      canWrite: fc.boolean(),
      presentationFormat: fc.option(
        fc.oneof(
          fc.uint8Array({ maxLength: 9 }),
          fc
            .tuple(fc.nat(40), fc.nat(255), fc.constantFrom(0xad, 0x2a))
            .map(([format, exponent, unit]) => Uint8Array.of(format, exponent, unit, 0x27, 1, 0, 0)),
        ),
      ),
      userDescription: fc.option(fc.string()),
      validRange: fc.option(fc.uint8Array({ maxLength: 16 })),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 4 }), (found) => {
        const { description } = describeMeter(found);
        if (description !== null) {
          expect(meterDescriptionSchema.parse(description)).toEqual(description);
          expect(description.range.min).toBeLessThan(description.range.max);
        }
      }),
      { numRuns: 1000 },
    );
  });
});

describe('one spelling for a UUID', () => {
  // Core Specification, Vol 3 Part B 2.5.1: a 16-bit UUID is short for 0000xxxx-0000-1000-8000-00805F9B34FB.
  test.each([
    ['2A6F', '2a6f'],
    ['00002A6F-0000-1000-8000-00805F9B34FB', '2a6f'],
    ['a00', '0a00'],
    ['00002a19', '2a19'],
    ['7D0A1F00-B2C9-4A6E-8F53-17C2A4E9D010', ownService],
    ['not a uuid', null],
    ['123456789', null],
    ['', null],
  ])('%s is %s', (written, plain) => {
    expect(plainUuid(written)).toBe(plain);
  });
});
