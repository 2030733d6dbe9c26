import { expect, test } from 'vitest';
import { parseDecimal, parseDecimals, twoNumbersIn } from '../../../shared-core/units/decimal.ts';

test.each([
  ['12.4', 12.4],
  ['12,4', 12.4],
  [' 7 ', 7],
  ['12,', 12],
  [',5', 0.5],
  ['-3.5', -3.5],
  ['−3,5', -3.5],
])('“%s” is the number %f', (text, value) => {
  expect(parseDecimal(text)).toBe(value);
});

test('an empty field is no number yet', () => {
  expect(parseDecimal('  ')).toBeNull();
});

test.each(['twelve', '1.2.3', '1,2,3', '1e3', '1e309', '12 %', '0x10', 'Infinity', '9'.repeat(310)])(
  '“%s” is not a number',
  (text) => {
    expect(parseDecimal(text)).toBeNaN();
  },
);

test.each([
  ['12.4 12,6; 13', [12.4, 12.6, 13]],
  ['12,4, 12,6,', [12.4, 12.6]],
  ['12,4 twelve', [12.4, Number.NaN]],
  [' ', []],
])('“%s” is the row of numbers %j', (text, row) => {
  expect(parseDecimals(text)).toEqual(row);
});

test.each([
  ['1,200', '.', 1200, 1.2],
  ['2.400', ',', 2400, 2.4],
  ['12,345 mm', '.', 12345, 12.345],
])('“%s” could mean two numbers where “%s” parts decimals: %f or %f', (text, mark, whole, decimal) => {
  expect(twoNumbersIn(text, mark)?.facts).toEqual({ typedText: text, rawWhole: whole, rawDecimal: decimal });
});

test.each([
  ['1.200', '.'],
  ['2,400', ','],
  ['0,500', '.'],
  ['12,4', '.'],
  ['1,2000', '.'],
  ['1200', '.'],
])('“%s” means one number where “%s” parts decimals', (text, mark) => {
  expect(twoNumbersIn(text, mark)).toBeNull();
});
