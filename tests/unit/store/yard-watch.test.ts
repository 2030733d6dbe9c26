import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openYard, type Yard } from '../../../electron/store/yard.ts';

let file: string;
let yard: Yard;
beforeEach(() => {
  file = join(mkdtempSync(join(tmpdir(), 'pintally-watch-')), 'yard.sqlite');
  yard = openYard(file);
});
afterEach(() => yard.close());

const save = (value: string) => yard.transaction(() => yard.settings.put('theme', value));

test('an older copy in the place of a large file is noticed, though SQLite has no page of it any more', () => {
  // Larger than what SQLite keeps in memory.
  yard.transaction(() => {
    for (let n = 0; n < 20; n++) yard.settings.put(`large-${n}`, 'x'.repeat(1_500_000));
  });
  save('light');
  yard.checkpoint();
  const older = readFileSync(file);
  save('dark');
  yard.checkpoint();
  for (let n = 0; n < 20; n++) yard.settings.get(`large-${n}`);
  writeFileSync(file, older);
  expect(yard.loss()).toBe('spoiled');
});

test('one byte in the middle of the WAL that another program changed is noticed', () => {
  for (const value of ['light', 'dark', 'light']) save(value);
  const wal = readFileSync(`${file}-wal`);
  wal.writeUInt8(wal.readUInt8(200) ^ 1, 200);
  writeFileSync(`${file}-wal`, wal);
  expect(yard.loss()).toBe('spoiled');
});

test('a WAL whose time alone is another, or that is written to outside a transaction, is as it was', () => {
  save('dark');
  writeFileSync(`${file}-wal`, readFileSync(`${file}-wal`));
  expect(yard.loss()).toBeNull();
  yard.settings.put('theme', 'light');
  expect(yard.loss()).toBeNull();
  save('dark');
  expect(yard.loss()).toBeNull();
});

test('what is rolled back after it was written to the WAL is no loss', () => {
  save('dark');
  const before = statSync(`${file}-wal`).size;
  expect(() =>
    yard.transaction(() => {
      // More than SQLite keeps in memory.
      for (let n = 0; n < 20; n++) yard.settings.put(`large-${n}`, 'x'.repeat(1_500_000));
      throw new RangeError('not this');
    }),
  ).toThrow('not this');
  expect(statSync(`${file}-wal`).size).toBeGreaterThan(before);
  expect(yard.loss()).toBeNull();
  save('light');
  expect(yard.loss()).toBeNull();
  yard.close();
  yard = openYard(file);
  expect(yard.settings.get('theme')).toBe('light');
});
