import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkCharacter } from '../../../shared-core/reports/check-character.ts';
import {
  type CheckCode,
  checkCodeText,
  digestText,
  EXAMPLE_CHECK_CODE,
  instantOfMinute,
  minuteOf,
  parsedCheckCode,
} from '../../../shared-core/reports/check-code.ts';

const DIGITS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const codes = fc.record<CheckCode>({
  boardCode: fc.constantFrom('OAK-07', 'A', 'X-1234567890-ABC', '7'),
  kind: fc.constantFrom('passport', 'buyer'),
  minute: fc.integer({ min: 0, max: 32 ** 5 - 1 }),
  digest: fc.string({ unit: fc.constantFrom(...DIGITS), minLength: 9, maxLength: 9 }),
});

// The example of the Global Release Identifier's standard, A1-2425G-ABC1234002-M, which uses ISO/IEC 7064 MOD 37,36
// (from memory).
test('the check character of a published example', () => {
  expect(checkCharacter('A1-2425G-ABC1234002')).toBe('M');
});

describe('a check code', () => {
  test('is read back as it was printed', () => {
    fc.assert(
      fc.property(codes, (code) => {
        expect(parsedCheckCode(checkCodeText(code))).toEqual({ ok: true, code });
      }),
    );
  });

  test('is read with a space for the slash, in small letters, without hyphens, and with O and l for 0 and 1', () => {
    const code = { boardCode: 'OAK-07', kind: 'buyer', minute: 3_455_000, digest: '0110ABCDE' } as const;
    const [board, rest] = checkCodeText(code).split('/') as [string, string];
    const typed = rest.slice(0, 1) + rest.slice(1).replaceAll('0', 'O').replaceAll('1', 'l');
    expect(parsedCheckCode(`  ${board.toLowerCase()} ${typed.toLowerCase().replaceAll('-', '')} `)).toEqual({
      ok: true,
      code,
    });
  });

  // What MOD 37,36 promises: every single wrong character is noticed.
  test('with one wrong character is refused', () => {
    fc.assert(
      fc.property(codes, fc.nat(14), fc.constantFrom(...DIGITS), (code, at, digit) => {
        const [board, rest] = checkCodeText(code).split('/') as [string, string];
        const characters = rest.replaceAll('-', '').split('');
        fc.pre(characters[at + 1] !== digit && at + 1 < 15);
        characters[at + 1] = digit;
        expect(parsedCheckCode(`${board}/${characters.join('')}`)).toEqual({
          ok: false,
          problem: 'mistyped',
        });
      }),
    );
  });

  test.each([
    '',
    'OAK-07',
    'OAK-07/P0AB',
    'hello world',
    'OAK 07/B39E-0RK7-Y34F-1CDY',
    'OAK-07/Z39E-0RK7-Y34F-1CDY',
  ])('“%s” is none', (typed) => {
    expect(parsedCheckCode(typed)).toEqual({ ok: false, problem: 'no-check-code' });
  });

  test('the example that people see is well-formed', () => {
    expect(parsedCheckCode(EXAMPLE_CHECK_CODE)).toMatchObject({ ok: true });
  });

  test('has the minute of an instant, and its instant', () => {
    expect(instantOfMinute(minuteOf('2026-11-27T01:02:48.874Z'))).toBe('2026-11-27T01:02:00.000Z');
  });

  test('has the first 45 bits of a hash', () => {
    expect(digestText(Uint8Array.of(0xff, 0, 0, 0, 0, 0x08, 9))).toBe('ZW0000001');
  });
});
