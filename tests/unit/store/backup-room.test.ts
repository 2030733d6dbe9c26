import { mkdtempSync, readdirSync, rmSync, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { writeBackup } from '../../../electron/store/backup.ts';
import { backupFileName } from '../../../electron/store/backup-name.ts';
import { message } from '../../../shared-core/words/message.ts';

vi.mock('node:fs', async (original) => {
  const fs = await original<typeof import('node:fs')>();
  return { ...fs, statfsSync: vi.fn(fs.statfsSync) };
});

let folder: string;
let yard: string;
let target: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pintally-room-'));
  yard = join(folder, 'yard.sqlite');
  const db = new Database(yard);
  for (const table of ['stack', 'board', 'reading'])
    db.exec(`CREATE TABLE ${table} (id INTEGER PRIMARY KEY)`);
  db.close();
  target = join(
    folder,
    backupFileName({ at: '2026-11-26T08:00:00.000Z', why: 'asked', number: 1, yardId: 'y'.repeat(8) }),
  );
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const leave = (bytes: number): void => {
  vi.mocked(statfsSync).mockReturnValueOnce({ bavail: Math.floor(bytes / 4096), bsize: 4096 } as never);
};

test('a backup that would leave less than 16 MB is refused before a byte of it is written', async () => {
  leave(16 * 1024 * 1024);
  await expect(writeBackup(yard, target)).rejects.toMatchObject({
    problem: message('refusal.backup-no-room', { folder }),
  });
  expect(readdirSync(folder)).toEqual(['yard.sqlite']);
});

test('a backup that leaves 16 MB is made', async () => {
  leave(17 * 1024 * 1024);
  await writeBackup(yard, target);
  expect(readdirSync(folder)).toHaveLength(2);
});
