import type { BoardReportKind } from '../contract/report.ts';
import { checkCharacter } from './check-character.ts';

/**
 * Printed on a sheet about a board: "OAK-07/P0AB-3CDE-FGHJ-KMNP". It has no secret in it: whoever has the yard can tell
 * whether a sheet says what is in it, and nobody is to take it for a signature.
 */
export interface CheckCode {
  boardCode: string;
  kind: BoardReportKind;
  /** Minutes since 2020-01-01, UTC. */
  minute: number;
  /** Of the printed facts, `DIGEST_LENGTH` digits. */
  digest: string;
}

/** Crockford's base 32: no letter that is taken for a digit. */
const DIGITS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const START_MS = Date.UTC(2020, 0, 1);
const MINUTE_MS = 60_000;
const MINUTE_LENGTH = 5;
const DIGEST_LENGTH = 9;
const letters: Record<BoardReportKind, string> = { passport: 'P', buyer: 'B' };

/** 32 to the power of that many digits is past 2083. */
const MOST_MINUTES = 32 ** MINUTE_LENGTH - 1;

export const minuteOf = (instant: string): number =>
  Math.min(MOST_MINUTES, Math.max(0, Math.floor((Date.parse(instant) - START_MS) / MINUTE_MS)));

export const instantOfMinute = (minute: number): string =>
  new Date(START_MS + minute * MINUTE_MS).toISOString();

/** The first 45 bits of a hash, as digits. */
export function digestText(hash: Uint8Array): string {
  let bits = '';
  for (const byte of hash.subarray(0, 6)) bits += byte.toString(2).padStart(8, '0');
  return Array.from({ length: DIGEST_LENGTH }, (_, index) =>
    DIGITS.charAt(Number.parseInt(bits.slice(5 * index, 5 * index + 5), 2)),
  ).join('');
}

export function checkCodeText({ boardCode, kind, minute, digest }: CheckCode): string {
  let rest = minute;
  let minutes = '';
  for (let length = 0; length < MINUTE_LENGTH; length++) {
    minutes = DIGITS.charAt(rest % 32) + minutes;
    rest = Math.floor(rest / 32);
  }
  const code = letters[kind] + minutes + digest;
  const whole = code + checkCharacter(boardCode + code);
  return `${boardCode}/${whole.match(/.{4}/g)!.join('-')}`;
}

/** What one looks like; of no board. */
export const EXAMPLE_CHECK_CODE = 'OAK-07/B39E-0RK7-Y34F-1CDY';

/** What is typed for these digits is read as them. */
const asDigits = (text: string): string => text.replaceAll('O', '0').replaceAll(/[IL]/g, '1');

const typedCode = /^([A-Z0-9][A-Z0-9-]{0,15})[\s/]+([A-Z0-9](?:[\s-]*[A-Z0-9]){15})$/;

/**
 * A check code as it was typed or scanned: capitals, spaces and hyphens make no difference.
 * @returns what is wrong with it, where it is none
 */
export function parsedCheckCode(
  typed: string,
): { ok: true; code: CheckCode } | { ok: false; problem: 'no-check-code' | 'mistyped' } {
  const [, boardCode, rest] = typedCode.exec(typed.trim().toUpperCase()) ?? [];
  if (boardCode === undefined || rest === undefined) return { ok: false, problem: 'no-check-code' };
  const whole = rest.replaceAll(/[\s-]/g, '');
  const code = whole.charAt(0) + asDigits(whole.slice(1, -1));
  const kind = (Object.keys(letters) as BoardReportKind[]).find((each) => letters[each] === code.charAt(0));
  if (kind === undefined) return { ok: false, problem: 'no-check-code' };
  // It is of all letters: taking one for another here would let errors pass.
  const isRight = checkCharacter(boardCode + code) === whole.slice(-1);
  const values = Array.from(code.slice(1), (digit) => DIGITS.indexOf(digit));
  if (!isRight || values.includes(-1)) return { ok: false, problem: 'mistyped' };
  const minute = values.slice(0, MINUTE_LENGTH).reduce((sum, value) => 32 * sum + value, 0);
  return { ok: true, code: { boardCode, kind, minute, digest: code.slice(1 + MINUTE_LENGTH) } };
}
