import { chmodSync, mkdirSync, mkdtempSync, statSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { dataDir } from '../../../electron/data-dir.ts';
import { type Db, openYardFile } from '../../../electron/store/yard-file.ts';
import { lockYard } from '../../../electron/store/yard-lock.ts';

let parent: string;
let file: string;
const open: Db[] = [];
const usual = process.umask();
beforeEach(() => {
  parent = mkdtempSync(join(tmpdir(), 'pintally-private-'));
  chmodSync(parent, 0o755);
  file = join(parent, 'pintally', 'yard.sqlite');
});
afterEach(() => {
  process.umask(usual);
  vi.unstubAllEnvs();
  for (const db of open.splice(0)) db.close();
});

const modeOf = (path: string): string => (statSync(path).mode & 0o777).toString(8);

/** A yard file with something written to it since it was opened. */
function openAndWrite(): void {
  const { db } = openYardFile(file);
  open.push(db);
  db.exec('CREATE TABLE IF NOT EXISTS written (x); INSERT INTO written VALUES (1)');
}

test.each([0o000, 0o022, 0o377])('a new yard is its user’s alone, whatever the umask: %i', (umask) => {
  process.umask(umask);
  openAndWrite();
  const lock = lockYard(file, '2026-06-01T08:00:00.000Z');
  expect(modeOf(dirname(file))).toBe('700');
  for (const suffix of ['', '-wal', '-shm', '-lock', '-owner.json']) {
    expect([suffix, modeOf(file + suffix)]).toEqual([suffix, '600']);
  }
  lock.release();
});

test('files of an earlier Pintally are closed to others when the yard is opened; a folder that the person chose stays', () => {
  process.umask(0o022);
  mkdirSync(dirname(file));
  openAndWrite();
  const suffixes = ['', '-wal', '-shm'];
  for (const suffix of suffixes) chmodSync(file + suffix, 0o644);
  openAndWrite();
  expect(suffixes.map((suffix) => modeOf(file + suffix))).toEqual(['600', '600', '600']);
  expect(modeOf(dirname(file))).toBe('755');
  expect(modeOf(parent)).toBe('755');
});

test('a yard file that its user made read-only stays so, and is closed to others', () => {
  openAndWrite();
  open.pop()?.close();
  chmodSync(file, 0o444);
  open.push(openYardFile(file).db);
  expect(modeOf(file)).toBe('400');
});

test('what a read-only yard left beside it can be written to once the yard can', () => {
  openAndWrite();
  for (const suffix of ['-wal', '-shm']) chmodSync(file + suffix, 0o400);
  openAndWrite();
  for (const suffix of ['-wal', '-shm']) expect(modeOf(file + suffix)).toBe('600');
});

test('the folder of an earlier Pintally is closed to others, and a folder that the person chose is not', () => {
  vi.stubEnv('XDG_DATA_HOME', parent);
  vi.stubEnv('PINTALLY_DATA', '');
  const own = dataDir();
  mkdirSync(own, { mode: 0o755 });
  expect(modeOf(dataDir())).toBe('700');
  chmodSync(own, 0o755);
  vi.stubEnv('PINTALLY_DATA', own);
  expect(modeOf(dataDir())).toBe('755');
});

test('the folder that a person chose is whole, whatever they typed; a blank one is none', () => {
  vi.stubEnv('XDG_DATA_HOME', parent);
  const typed = (folder: string) => {
    vi.stubEnv('PINTALLY_DATA', folder);
    return dataDir();
  };
  expect(typed('my-yard')).toBe(join(process.cwd(), 'my-yard'));
  expect(typed('~/my-yard')).toBe(join(homedir(), 'my-yard'));
  expect(typed(' /mnt/my-yard ')).toBe('/mnt/my-yard');
  expect(typed('   ')).toBe(join(parent, 'pintally'));
});
