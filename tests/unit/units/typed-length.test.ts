import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  exactLengthText,
  quartersMeant,
  typedLengthMm,
  typedLengthText,
  typedLongLengthMm,
  typedLongLengthText,
  typedQuarters,
} from '../../../shared-core/units/typed-length.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';

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
    ['1 1/16 in', 'metric', 26.9875],
    ['2 in', 'metric', 50.8],
    ['27 mm', 'metric', 27],
    ['0.5 m', 'imperial', 500],
    ['1 ft 2 1/2 in', 'metric', 368.3],
    ['½', 'imperial', 12.7],
    ['1½', 'imperial', 38.1],
    ['1 ⅛ in', 'metric', 28.575],
    ['1 1⁄16', 'imperial', 26.9875],
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

  test.each([
    'thick',
    '4/0',
    '1/2/3',
    '-27',
    '27 mi',
    '1e3',
    '4//4',
    '3 in 2 ft',
    '3 4',
    '1 ft 2 ft',
    '2 m 3 in x',
    '7 ft 99 in',
    '7 ft 12 in',
    "7' 12",
    '2 m 150 cm',
    '1e309',
    '9'.repeat(310),
  ])('%s is not a length', (text) => {
    expect(typedLengthMm(text, 'metric')).toBeNaN();
  });
});

describe('A length in a field', () => {
  test.each([
    [54, 'metric', '54'],
    [9.5, 'metric', '9.5'],
    [53.975, 'metric', '54'],
    [53.975, 'imperial', '2 1/8'],
    [50.8, 'imperial', '2'],
    [9.525, 'imperial', '3/8'],
    [54, 'imperial', '2 1/8'],
    // The sizes of the demo yard's WAL-01, of which the page says 1 1/8 in and 8 1/4 in.
    [29, 'imperial', '1 1/8'],
    [210, 'imperial', '8 1/4'],
    [0.5, 'imperial', '0.02'],
  ] as const)('of %f mm in %s units is "%s"', (mm, units, text) => {
    expect(typedLengthText(mm, units)).toBe(text);
  });

  test.each([
    [53.975, 'metric', '53.975'],
    [53.975, 'imperial', '2 1/8'],
    [1.05 * 25.4, 'imperial', '1.05'],
    [54, 'imperial', '2.126'],
  ] as const)('of %f mm in %s units is "%s" where it must be exact', (mm, units, text) => {
    expect(exactLengthText(mm, units)).toBe(text);
  });

  // Half of 0.1 mm, and half of 1/16 in, which is 1.5875 mm; where exact, half of a thousandth of an inch.
  test.each([
    ['metric', typedLengthText, 0.0501],
    ['imperial', typedLengthText, 0.7938],
    ['metric', exactLengthText, 0.0006],
    ['imperial', exactLengthText, 0.0128],
  ] as const)('in %s units by %o is read as what it was, within %f mm', (units, textOf, most) => {
    for (let mm = 3; mm < 400; mm += 0.37) {
      expect(Math.abs(typedLengthMm(textOf(mm, units), units)! - mm)).toBeLessThan(most);
    }
  });
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

describe('A length along a board as a person types it', () => {
  // 1 ft = 304.8 mm exactly, by definition (1959).
  test.each([
    ['2.4', 'metric', 2400],
    ['2,4 m', 'imperial', 2400],
    ['240cm', 'imperial', 2400],
    ['8', 'imperial', 2438.4],
    ['7 ft 3 in', 'imperial', 2209.8],
    ['7 ft 3 in', 'metric', 2209.8],
    ['7 Fuß 3 Zoll', 'metric', 2209.8],
    [`7'3"`, 'metric', 2209.8],
    ["7' 3", 'imperial', 2209.8],
    ['7′3″', 'metric', 2209.8],
    ['7 feet 3 1/2 inches', 'imperial', 2222.5],
    ['24 in', 'metric', 609.6],
    ['8½', 'imperial', 2590.8],
    ['8 1/2', 'imperial', 2590.8],
    ['7 ft 3½', 'imperial', 2222.5],
    ['2½', 'metric', 2500],
  ] as const)('%s in %s units is %f mm', (text, units, mm) => {
    expect(typedLongLengthMm(text, units)).toBeCloseTo(mm, 6);
  });

  test.each([
    [2209.8, 'imperial', '7 ft 3 in'],
    [2438.4, 'imperial', '8'],
    // The demo yard's WAL-01, of which the page says 8 ft.
    [2440, 'imperial', '8'],
    [2400, 'imperial', '7 ft 10 in'],
    [610, 'imperial', '24 in'],
    [2400, 'metric', '2.4'],
    [2438.4, 'metric', '2.44'],
  ] as const)('of %f mm in %s units is "%s" in its field', (mm, units, text) => {
    expect(typedLongLengthText(mm, units)).toBe(text);
  });

  test.each(['metric', 'imperial'] as const)(
    'is read from its field as what it was, in %s units',
    (units) => {
      fc.assert(
        fc.property(fc.integer({ min: 50, max: 20_000 }), (mm) => {
          // Half a centimeter, and half an inch, which is 12.7 mm.
          expect(
            Math.abs(typedLongLengthMm(typedLongLengthText(mm, units), units)! - mm),
          ).toBeLessThanOrEqual(units === 'metric' ? 5.001 : 12.701);
        }),
      );
    },
  );
});

describe('What is shown anywhere can be typed, whatever the units of the field', () => {
  const locales = ['en-US', 'en-GB', 'en-DE', 'en-FR', 'en-IN'];
  const unitPairs = [
    ['metric', 'metric'],
    ['metric', 'imperial'],
    ['imperial', 'metric'],
    ['imperial', 'imperial'],
  ] as const;
  const formatsOf = (locale: string, units: 'metric' | 'imperial') =>
    createWords({ catalog: english, locale, timeZone: 'UTC', units, today: null }).formats;

  test.each(unitPairs)('a %s thickness or width, in a %s field', (shown, field) => {
    fc.assert(
      fc.property(fc.constantFrom(...locales), fc.integer({ min: 3, max: 3000 }), (locale, mm) => {
        const text = formatsOf(locale, shown).shortLength(mm);
        // To the half millimeter, or to half a sixteenth of an inch.
        expect(Math.abs(typedLengthMm(text, field)! - mm)).toBeLessThanOrEqual(
          shown === 'metric' ? 0.5 : 0.794,
        );
      }),
    );
  });

  test.each(unitPairs)('a %s length along a board, in a %s field', (shown, field) => {
    fc.assert(
      fc.property(fc.constantFrom(...locales), fc.integer({ min: 50, max: 20_000 }), (locale, mm) => {
        const text = formatsOf(locale, shown).longLength(mm);
        // To the tenth of a meter, or to the inch.
        expect(Math.abs(typedLongLengthMm(text, field)! - mm)).toBeLessThanOrEqual(
          shown === 'metric' ? 50.001 : 12.701,
        );
      }),
    );
  });
});

describe('A very thin board', () => {
  // Common practice, no source: whoever types 3 for a thickness in millimeters counts quarters.
  test.each([3, 4, 5])('of %f mm may mean quarters', (mm) => expect(quartersMeant(mm)).toBe(mm));

  // 3 in; 3/4 in; 1/4 in; a usual board; nothing.
  test.each([76.2, 19.05, 6.35, 27, 0, Number.NaN])('is not one of %f mm', (mm) => {
    expect(quartersMeant(mm)).toBeNull();
  });
});
