import { existsSync, mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { createLog, LOG_LIMITS } from '../../../electron/log/log-file.ts';

// What a log of faults must and must not hold: issue 10; common practice, no source.

const clock = () => new Date('2026-11-26T08:00:00.000Z');
const aFolder = () => mkdtempSync(join(tmpdir(), 'pintally-log-'));
const logIn = (folder = aFolder()) => createLog(folder, clock);

afterEach(() => vi.restoreAllMocks());

test('a fault is written with its time, its kind and where it happened', () => {
  const log = logIn();
  log.fault(new RangeError('too long', { cause: Object.assign(new Error('inner'), { code: 'EIO' }) }));
  const text = readFileSync(log.file, 'utf8');
  expect(text).toMatch(
    /^2026-11-26T08:00:00\.000Z fault: RangeError: too long\n {2}at .*log-file\.test\.ts:\d+/,
  );
  expect(text).toContain('cause: Error EIO: inner');
});

test('the fault log has no readings, no typed text and no secret', () => {
  const log = logIn();
  const secret = 'a3f09c'.repeat(10);
  log.fault(new Error(`12.4 is no reading, 1240000 neither, nor 5e-324 of board "Oak 7" or 'Elm'`));
  log.fault(new Error(`GET /s/${secret}/ws from /open/${secret}`));
  log.fault(`a text ${secret}`);
  const schema = z.object({ board: z.object({ note: z.literal('x') }) });
  log.fault(schema.safeParse({ board: { note: 'private words' } }).error);
  log.fault(new Error(`no such file: ${homedir()}/yard.sqlite`));
  const text = log.newest();
  for (const content of ['12.4', '124', '324', 'Oak', 'Elm', 'a3f0', 'private', homedir()]) {
    const said = text
      .split('\n')
      .filter((line) => !line.startsWith('  at ') && line.replace(/^\S+ /, '').includes(content));
    expect(said).toEqual([]);
  }
  expect(text).toContain('invalid_value at board/note');
});

test('only the person can read it', () => {
  const log = logIn();
  log.note('begun');
  expect(statSync(log.file).mode & 0o777).toBe(0o600);
  expect(statSync(join(log.file, '..')).mode & 0o777).toBe(0o700);
});

test('it never takes more than five files of one megabyte', () => {
  const folder = aFolder();
  const log = logIn(folder);
  const line = 'x'.repeat(200_000);
  for (let lines = 0; lines < 40; lines++) log.note(`${lines} ${line}`);
  const files = readdirSync(join(folder, 'logs'));
  expect(files.toSorted()).toEqual([
    'pintally.1.log',
    'pintally.2.log',
    'pintally.3.log',
    'pintally.4.log',
    'pintally.log',
  ]);
  for (const file of files) {
    const { size, mode } = statSync(join(folder, 'logs', file));
    expect(size).toBeLessThanOrEqual(LOG_LIMITS.fileBytes);
    expect(mode & 0o777).toBe(0o600);
  }
  expect(readFileSync(log.file, 'utf8')).toContain(' 39 x');
});

test('what is shown is the newest part, from the beginning of a line', () => {
  const log = logIn();
  for (let lines = 0; lines < 60_000; lines += 100) log.note(`${lines} ${'y'.repeat(1000)}`);
  const shown = log.newest();
  expect(shown.length).toBeLessThan(300 * 1024);
  expect(shown).toMatch(/^2026-11-26T08/);
  expect(shown.trimEnd().split('\n').at(-1)).toContain(' 59900 y');
  expect(logIn().newest()).toBe('');
});

test('a log that cannot be written causes no other fault', () => {
  const printed = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  const folder = aFolder();
  writeFileSync(join(folder, 'logs'), 'a file where the folder should be');
  const log = logIn(folder);
  expect(() => log.fault(new Error('the disk is full'))).not.toThrow();
  expect(String(printed.mock.lastCall)).toContain('the disk is full');
  expect(log.newest()).toBe('');
  expect(existsSync(log.file)).toBe(false);
  expect(log.isLastLost()).toBe(true);
});
