import { mkdtempSync, readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { doBackupTask } from '../../../electron/app/yard/backup-tasks.ts';
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

describe('a folder that is full', () => {
  const named = (day: number) =>
    join(
      folder,
      backupFileName({
        at: `2026-11-${String(day).padStart(2, '0')}T08:00:00.000Z`,
        why: 'day',
        number: day,
        yardId: 'abcdef01',
      }),
    );
  /** Full of backups of so many days, each of 1 MiB. */
  function fill(days: number): void {
    for (let day = 1; day <= days; day++) writeFileSync(named(day), Buffer.alloc(1024 * 1024));
    const room = 16 * 1024 * 1024 + days * 1024 * 1024;
    vi.mocked(statfsSync).mockImplementation((() => ({
      bavail: (room - (readdirSync(folder).length - 1) * 1024 * 1024) / 4096,
      bsize: 4096,
    })) as never);
  }
  afterEach(() => vi.mocked(statfsSync).mockReset());
  const make = (day: number) => doBackupTask({ task: 'make', input: { from: yard, target: named(day) } });

  test('of backups whose turn is over has room for the next one', async () => {
    fill(24);
    expect(await make(25)).toMatchObject({ ok: true });
    expect(readdirSync(folder)).toContain(basename(named(25)));
    expect(readdirSync(folder)).not.toContain(basename(named(17)));
  });

  test('of backups that stay keeps every one of them', async () => {
    fill(3);
    expect(await make(4)).toMatchObject({ ok: false, problem: { code: 'refusal.backup-no-room' } });
    expect(readdirSync(folder)).toHaveLength(4);
  });
});
