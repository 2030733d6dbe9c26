import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test, vi } from 'vitest';
import type * as durableFiles from '../../../electron/store/durable-files.ts';
import { renameDamaged } from '../../../electron/store/yard-file.ts';
import { newFolder } from '../app/new-yard.ts';

let goes: string | null = null;

// The moment between seeing a file and renaming it is too short for a second real connection to hit it each time.
vi.mock('../../../electron/store/durable-files.ts', async (original) => {
  const real = await original<typeof durableFiles>();
  return {
    ...real,
    syncFile: (file: string) => {
      if (goes !== null && file.endsWith(goes)) rmSync(file);
      real.syncFile(file);
    },
  };
});

test.each(['-wal', '-shm'])(
  'a damaged file is renamed also where SQLite takes its %s away just then',
  (suffix) => {
    const folder = newFolder();
    const file = join(folder, 'yard.sqlite');
    for (const each of ['', '-wal', '-shm']) writeFileSync(file + each, `damaged${each}`);
    goes = suffix;
    const beside = renameDamaged(file, '2026-05-01');
    expect(readFileSync(beside, 'utf8')).toBe('damaged');
    expect(existsSync(beside + suffix)).toBe(false);
    expect(readdirSync(folder).filter((name) => !name.startsWith(basename(beside)))).toEqual([]);
  },
);

test('a damaged file that disappears is reported missing', () => {
  const file = join(newFolder(), 'yard.sqlite');
  writeFileSync(file, 'damaged');
  goes = 'yard.sqlite';
  expect(() => renameDamaged(file, '2026-05-01')).toThrow('ENOENT');
});
