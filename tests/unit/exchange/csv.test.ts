/** CSV as RFC 4180 has it, and texts that a spreadsheet would run. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asEntered, csvRow, neutralized } from '../../../shared-core/exchange/csv.ts';

// RFC 4180, section 2, rules 2, 5, 6 and 7.
describe('RFC 4180', () => {
  test.each([
    [['aaa', 'bbb', 'ccc'], 'aaa,bbb,ccc\r\n'],
    [['aaa', 'b\r\nbb', 'ccc'], 'aaa,"b\r\nbb",ccc\r\n'],
    [['aaa', 'b"bb', 'ccc'], 'aaa,"b""bb",ccc\r\n'],
    [['a,b', null, 12.4], '"a,b",,12.4\r\n'],
  ])('%j', (cells, row) => {
    expect(csvRow(cells)).toBe(row);
  });
});

// OWASP, CSV Injection: the characters that begin a formula (from memory).
test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', "'=1"])(
  'a text that begins as %j is neutralized',
  (text) => {
    expect(neutralized(text)).toBe(`'${text}`);
  },
);

test('a number is no formula', () => {
  expect(csvRow([-3.5, '-3.5'])).toBe("-3.5,'-3.5\r\n");
});

test('what was neutralized comes back as it was entered', () => {
  const text = fc.string({ unit: fc.constantFrom(..."'=+-@\t\r\na ") });
  fc.assert(
    fc.property(text, (entered) => {
      expect(asEntered(neutralized(entered))).toBe(entered);
    }),
  );
});
