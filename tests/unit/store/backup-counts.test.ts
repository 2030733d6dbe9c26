/** A backup that is sound, and does not hold what the yard did, as where a disk or another program replaced it. */
import { copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeBackupAtOnce } from '../../../electron/store/backup.ts';
import { type Db, openYardFile } from '../../../electron/store/yard-file.ts';
import { copyOfLayout } from './layout-copy.ts';

const folder = mkdtempSync(join(tmpdir(), 'pintally-counts-'));
const emptyYard = join(folder, 'empty.sqlite');
openYardFile(emptyYard).db.close();

/** The yard, whose copying does something else. */
function copiedBy(db: Db, copy: (part: string) => void): Db {
  const prepare = (sql: string) => (sql.startsWith('VACUUM') ? { run: copy } : db.prepare(sql));
  return { name: db.name, prepare } as unknown as Db;
}

test.each([
  ['has other counts', (part: string) => copyFileSync(emptyYard, part)],
  ['is gone', (part: string) => rmSync(part)],
])('a copy that %s gets no name, and nothing is left of it', (_, copy) => {
  const { db } = openYardFile(copyOfLayout(13));
  const into = mkdtempSync(join(tmpdir(), 'pintally-counts-'));
  const target = join(into, 'pintally-2026-06-01T08-00-00Z-day-00001-abcdef01.sqlite');
  expect(() => writeBackupAtOnce(copiedBy(db, copy), target)).toThrow();
  expect(existsSync(target)).toBe(false);
  expect(readdirSync(into)).toEqual([]);
  writeBackupAtOnce(db, target);
  expect(readdirSync(into)).toHaveLength(1);
  db.close();
});
