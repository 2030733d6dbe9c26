import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { BackupThread } from '../../../electron/app/yard/backup-tasks.ts';
import { someBackups } from './some-backups.ts';

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
  const backups = someBackups(dataDir, thread, { holdsAnything, afterMs });
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
