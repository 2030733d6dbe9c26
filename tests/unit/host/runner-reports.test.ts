import { expect, test } from 'vitest';
import { filesEndedByV8 } from '../../runner-reports.ts';

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
