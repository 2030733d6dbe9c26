import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { filesEndedByV8, toldByPlaywright, whatPassedAgain } from '../../runner-reports.ts';

/** As vitest 5 prints it of a run in which V8 ended one process. */
const byV8 = [
  '# Fatal error in , line 0',
  '# Check failed: jit_page.has_value().',
  'Error: [vitest-pool]: Worker forks emitted error.',
  'Caused by: Error: Worker exited unexpectedly with signal SIGTRAP during started state while running test file /yard/a.test.ts',
  ' Test Files  335 passed (336)',
  '     Errors  1 error',
];
const endedIn = (...lines: string[]) => filesEndedByV8(lines.join('\n'));

test('a test file whose process V8 ended by its own fault runs once more', () => {
  expect(endedIn(...byV8)).toEqual(['/yard/a.test.ts']);
});

test.each([
  ['its process ended otherwise', byV8.filter((line) => !line.includes('jit_page'))],
  ['a test failed, too', [...byV8, '⎯⎯⎯⎯⎯⎯⎯ Failed Tests 1 ⎯⎯⎯⎯⎯⎯⎯']],
  ['there was another error', [...byV8.slice(0, -1), '     Errors  2 errors']],
  ['nothing ended', []],
])('no file does where %s', (_, lines) => {
  expect(endedIn(...lines)).toEqual([]);
});

/** As Playwright 1 writes it, of tests that ended so. */
function reportOf(...ends: { title: string; status: string; errors: string[] }[]): string {
  const report = join(mkdtempSync(join(tmpdir(), 'pintally-reports-')), 'e2e.json');
  const specs = ends.map(({ title, status, errors }, index) => ({
    title,
    line: index + 1,
    tests: [
      {
        status,
        results: [...errors.map((message) => ({ duration: 100, error: { message } })), { duration: 100 }],
      },
    ],
  }));
  writeFileSync(report, JSON.stringify({ suites: [{ file: 'yard.spec.ts', specs }] }));
  return report;
}

test('a browser test that passed only when it ran once more is named, with what failed at first', () => {
  const told = toldByPlaywright(
    reportOf(
      { title: 'a stack is made', status: 'expected', errors: [] },
      { title: 'a board is moved', status: 'flaky', errors: ['The board was not there.'] },
      { title: 'a label is drawn', status: 'unexpected', errors: ['No label.', 'No label.'] },
    ),
  );
  expect(told.failed).toEqual([expect.stringContaining('yard.spec.ts:3 › a label is drawn')]);
  expect(whatPassedAgain([told]).split('\n').slice(1)).toEqual([
    '  tests/e2e/yard.spec.ts:2 › a board is moved',
    '      The board was not there.',
  ]);
});

test('where all passed at once, nothing is said', () => {
  const told = toldByPlaywright(reportOf({ title: 'a stack is made', status: 'expected', errors: [] }));
  expect(whatPassedAgain([told])).toBe('');
});
