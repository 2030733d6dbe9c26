import { describe, expect, test } from 'vitest';
import { typedLengthMm, typedLengthText, typedQuarters } from '../../../shared-core/units/typed-length.ts';

describe('A thickness as a person types it', () => {
  // 1 in = 25.4 mm exactly, by definition (international yard and pound agreement, 1959).
  test.each([
    ['27', 'metric', 27],
    ['27,5', 'metric', 27.5],
    ['27 mm', 'imperial', 27],
    ['2.7cm', 'imperial', 27],
    ['1', 'imperial', 25.4],
    ['1.5', 'imperial', 38.1],
    ['1 in', 'metric', 25.4],
    ['2"', 'metric', 50.8],
    ['1 1/16', 'imperial', 26.9875],
    ['1-1/4 in', 'metric', 31.75],
  ] as const)('%s in %s units is %f mm', (text, units, mm) => {
    expect(typedLengthMm(text, units)).toBeCloseTo(mm, 9);
  });

  // Quarter names count quarters of an inch of rough thickness (common practice, no source).
  test.each([
    ['4/4', 25.4],
    ['5/4', 31.75],
    ['8/4', 50.8],
  ])('the quarter name %s is %f mm, whatever the units', (name, mm) => {
    expect(typedLengthMm(name, 'metric')).toBeCloseTo(mm, 9);
    expect(typedLengthMm(name, 'imperial')).toBeCloseTo(mm, 9);
  });

  test('nothing typed is nothing, not zero', () => {
    expect(typedLengthMm('  ', 'metric')).toBeNull();
  });

  test.each(['thick', '4/0', '1/2/3', '-27', '27 m', '1e3', '4//4'])('%s is not a length', (text) => {
    expect(typedLengthMm(text, 'metric')).toBeNaN();
  });
});

describe('A length in a field', () => {
  test.each([
    [54, 'metric', '54'],
    [9.5, 'metric', '9.5'],
    [53.975, 'metric', '53.975'],
    [2.125 * 25.4, 'metric', '53.975'],
    [53.975, 'imperial', '2 1/8'],
    [50.8, 'imperial', '2'],
    [9.525, 'imperial', '3/8'],
    [1.05 * 25.4, 'imperial', '1.05'],
    [54, 'imperial', '2.126'],
    [0.5, 'imperial', '0.02'],
  ] as const)('of %f mm in %s units is "%s"', (mm, units, text) => {
    expect(typedLengthText(mm, units)).toBe(text);
  });

  // A thousandth of an inch is 0.0254 mm.
  test.each(['metric', 'imperial'] as const)(
    'is read as what it was, to a thousandth, in %s units',
    (units) => {
      for (let mm = 3; mm < 400; mm += 0.37) {
        expect(Math.abs(typedLengthMm(typedLengthText(mm, units), units)! - mm)).toBeLessThan(0.0128);
      }
    },
  );
});

describe('Quarters of an inch', () => {
  test.each([
    ['4/4', 4],
    ['5/4', 5],
    [' 8/4 ', 8],
    ['12/4', 12],
  ])('are what "%s" names', (text, quarters) => expect(typedQuarters(text)).toBe(quarters));

  // Below 4/4 the trade names a thickness in inches (NHLA rules, from memory).
  test.each(['3/4', '54', '2 1/8', '1 5/4', '8/4 in', '8/8', '', '8/4x', '-8/4'])(
    'are not what "%s" names',
    (text) => expect(typedQuarters(text)).toBeNull(),
  );
});
