import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTyped } from '../../../shared-core/labels/typed-value.ts';
import { megohmsOf, ohmsOfMegohms, parseOhms } from '../../../shared-core/units/typed-ohms.ts';

describe('a resistance as a person types it', () => {
  test.each([
    ['350', 350e6],
    ['0.5', 500_000],
    ['12', 12e6],
    ['1,1', 1_100_000],
    ['2.2G', 2.2e9],
    ['2.2 GΩ', 2.2e9],
    ['800k', 800_000],
    ['800 kohm', 800_000],
    ['12 MΩ', 12e6],
    ['12m', 12e6],
  ])('%j is %d ohms', (text, ohms) => expect(parseOhms(text)).toBe(ohms));

  test.each(['k', 'twelve', '1.2.3', '12 %', '12x'])('%j is none', (text) =>
    expect(parseOhms(text)).toBeNaN(),
  );
  test('nothing is null', () => expect(parseOhms(' ')).toBeNull());

  test('megohms come back to the last digit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000_000 }), (thousandths) => {
        expect(megohmsOf(ohmsOfMegohms(thousandths / 1000))).toBe(thousandths / 1000);
      }),
    );
  });
});

describe('in the value field of a meter that shows ohms', () => {
  test('a plain number is megohms, also one that is the ID of a board', () => {
    expect(readTyped('350', ['350'], 'ohm')).toEqual({ raw: 350e6 });
    expect(readTyped('0.125', [], 'ohm')).toEqual({ raw: 125_000 });
  });
  test('an ID that is no number is that board', () => {
    expect(readTyped('WAL-01', ['WAL-01'], 'ohm')).toEqual({ boardCode: 'WAL-01' });
  });
  test.each(['1,200', '1.250M'])('%j may be two numbers, so it is none', (text) => {
    expect(readTyped(text, [], 'ohm')).toMatchObject({ problem: { code: 'round.two-numbers' } });
  });
  test.each(['-3', '0', 'abc'])('%j is refused with a sentence', (text) => {
    expect(readTyped(text, [], 'ohm')).toHaveProperty('problem');
  });
});
