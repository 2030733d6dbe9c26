import { expect, test } from 'vitest';
import { parseDecimal, parseDecimals } from '../../../shared-core/units/decimal.ts';

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
