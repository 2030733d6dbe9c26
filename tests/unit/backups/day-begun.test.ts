import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createBackupFolder } from '../../../electron/app/yard/backup-folder.ts';
import type { BackupThread } from '../../../electron/app/yard/backup-tasks.ts';
import { createBackups } from '../../../electron/app/yard/backups.ts';

/** Backups of a yard, and what their thread was asked to do. */
function backupsOf({ holdsAnything, afterMs }: { holdsAnything: boolean; afterMs: number }) {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-day-'));
  const tasks: string[] = [];
  const thread: BackupThread = {
    ask: async ({ task }) => {
      tasks.push(task);
      return { ok: true, value: task === 'find' ? [] : { isFullOfOnlyCopies: false, picturesLeftOut: 0 } };
    },
    close: async () => undefined,
  };
  const backups = createBackups(createBackupFolder(dataDir, thread, 1000), thread, thread, {
    now: () => '2026-11-26T08:00:00.000Z',
    reportFault: (error) => expect(error).toBeUndefined(),
    changed: () => undefined,
    yardToBackUp: () => ({
      file: join(dataDir, 'yard.sqlite'),
      backupId: 'abcdef01',
      uuid: '00000000-0000-4000-8000-000000000001',
      holdsAnything,
    }),
    restored: () => null,
    hasDialogs: false,
    afterMs,
  });
  return { backups, made: () => tasks.filter((task) => task === 'make').length };
}

test('the day’s backup is begun a while after the yard was opened', async () => {
  const { backups, made } = backupsOf({ holdsAnything: true, afterMs: 30 });
  backups.yardOpened();
  expect(made()).toBe(0);
  await expect.poll(made).toBe(1);
  await backups.close();
  expect(made()).toBe(1);
});

test('who closes Pintally before that does not wait for it: the next opening of that day makes it', async () => {
  const { backups, made } = backupsOf({ holdsAnything: true, afterMs: 30 });
  backups.yardOpened();
  await backups.close();
  await new Promise((resolve) => setTimeout(resolve, 60));
  expect(made()).toBe(0);
});

test('a yard without anything in it has none', async () => {
  const { backups, made } = backupsOf({ holdsAnything: false, afterMs: 0 });
  backups.yardOpened();
  await new Promise((resolve) => setTimeout(resolve, 30));
  await backups.close();
  expect(made()).toBe(0);
});
