import { expect, test } from 'vitest';
import { type Burst, nextBurst } from '../../../shared-core/labels/scan.ts';

/** What the last key ended, where one came every so many milliseconds. */
function scanned(keys: string[], everyMs: number): string | null {
  let burst: Burst | null = null;
  let code: string | null = null;
  keys.forEach((key, index) => {
    ({ burst, scanned: code } = nextBurst(burst, key, 1000 + index * everyMs));
  });
  return code;
}
const keysOf = (text: string) => [...text, 'Enter'];

// Pace of hand and scanner: from memory. A hand needs some 60 ms a key at its fastest.
test.each([
  ['WAL-02', 5, 'WAL-02'],
  ['1204', 10, '1204'],
  ['12', 10, '12'],
  ['12.4', 60, null],
  ['145', 40, null],
  ['9', 5, null],
  ['OAK-2026-0017', 9, 'OAK-2026-0017'],
  ['OAK-2026-0017', 20, 'OAK-2026-0017'],
  ['WAL-02', 20, 'WAL-02'],
  ['12.4', 22, null],
  ['OAK-2026-0017', 25, null],
])('%s and Enter, a key every %i ms, scans %j', (text, everyMs, code) => {
  expect(scanned(keysOf(text), everyMs)).toBe(code);
});

test('a scanner that holds Shift for capitals still scans', () => {
  expect(scanned(['Shift', 'W', 'Shift', 'A', 'Shift', 'L', '1', 'Enter'], 5)).toBe('WAL1');
});

test('a scan right after a typed digit is only what the scanner typed', () => {
  const typed = nextBurst(null, '9', 0);
  let { burst } = nextBurst(typed.burst, 'A', 400);
  ({ burst } = nextBurst(burst, '1', 405));
  expect(nextBurst(burst, 'Enter', 410).scanned).toBe('A1');
});

test('another key between ends the burst', () => {
  expect(scanned(['1', '2', 'Backspace', 'Enter'], 5)).toBe(null);
});
