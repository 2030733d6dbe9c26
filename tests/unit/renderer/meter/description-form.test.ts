import { describe, expect, test } from 'vitest';
import {
  type DescriptionForm,
  previewOf,
  readForm,
  startForm,
} from '../../../../renderer/features/meter/description-form.ts';
import { aLiveMeter } from '../shell/a-meter.ts';

const { characteristics, description } = aLiveMeter();
const form = (changes: Partial<DescriptionForm> = {}): DescriptionForm => ({
  ...startForm(description, characteristics, 'metric'),
  ...changes,
});
const offering = (lastBytesHex: string | null) => [{ ...characteristics[0]!, lastBytesHex }];

describe('the preview of the newest bytes', () => {
  // Arithmetic on the SIG's layouts: little-endian integers times a power of ten; IEEE 754 and IEEE 11073 as published.
  test.each([
    ['16 bits unsigned in tenths', '7e00', {}, 12.6],
    ['8 bits at the third byte', '00007e', { format: 4, byteOffset: 2 }, 12.6],
    ['hundredths, as the SIG’s 0x2A6F has them', 'e204', { exponent: -2 }, 12.5],
    ['a negative 16-bit number', 'ffff', { format: 14 }, -0.1],
    ['an SFLOAT, whose exponent is its own', '7ef0', { format: 22, exponent: 3 }, 12.6],
    ['times and plus', '0a00', { exponent: 0, scale: 0.5, offset: 2 }, 7],
    ['text with a comma', '31322c36', { format: 25 }, 12.6],
  ] as [string, string, Partial<DescriptionForm>, number][])('reads %s', (_, hex, changes, value) => {
    expect(previewOf(form(changes), offering(hex))).toEqual({ ok: true, value: expect.closeTo(value, 9) });
  });

  test('shows why there is no value', () => {
    expect(previewOf(form({ byteOffset: 1 }), offering('7e00'))).toMatchObject({ ok: false });
  });

  test('is empty before any bytes came, and while a number is half typed', () => {
    expect(previewOf(form(), offering(null))).toBeNull();
    expect(previewOf(form({ scale: Number.NaN }), offering('7e00'))).toBeNull();
  });
});

describe('the description that is saved', () => {
  test('is what the form holds, as set up by hand', () => {
    const read = readForm(form({ basisCurveId: 'baldcypress', basisTemp: 21 }), 'metric');
    expect(read).toEqual({
      ok: true,
      description: { ...description, basis: { curveId: 'baldcypress', tempC: 21 }, origin: 'mapped-by-hand' },
    });
  });

  test('takes the basis temperature in the person’s unit, and none from a meter of ohms', () => {
    const fahrenheit = readForm(form({ basisCurveId: 'baldcypress', basisTemp: 68 }), 'imperial');
    expect(fahrenheit.ok && fahrenheit.description.basis?.tempC).toBeCloseTo(20, 9);
    const ohms = readForm(form({ basisCurveId: 'baldcypress', basisTemp: 68, unit: 'ohm' }), 'imperial');
    expect(ohms.ok && ohms.description.basis).toBeNull();
  });

  test.each([
    ['characteristic', { characteristic: '' }],
    ['byteOffset', { byteOffset: 1.5 }],
    ['byteOffset', { byteOffset: 600 }],
    ['exponent', { exponent: null }],
    ['scale', { scale: 0 }],
    ['offset', { offset: Number.NaN }],
    ['min', { min: null }],
    ['max', { min: 30, max: 30 }],
    ['basisTemp', { basisCurveId: 'baldcypress', basisTemp: null }],
    ['basisTemp', { basisCurveId: 'baldcypress', basisTemp: 90 }],
  ] as [keyof DescriptionForm, Partial<DescriptionForm>][])(
    'is not made while %s is %o',
    (field, changes) => {
      const read = readForm(form(changes), 'metric');
      expect(read.ok ? {} : read.problems).toHaveProperty(field);
    },
  );
});
