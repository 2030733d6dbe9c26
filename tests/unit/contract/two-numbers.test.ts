import { expect, test } from 'vitest';
import { twoNumbersIn } from '../../../shared-core/contract/validation.ts';

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
