import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createBackupFolder } from '../../../electron/app/yard/backup-folder.ts';
import type { BackupThread } from '../../../electron/app/yard/backup-tasks.ts';
import { createBackups } from '../../../electron/app/yard/backups.ts';

test('backups are listed while a large one is being made', async () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-large-'));
  const tasks: string[] = [];
  let makeIt = (): void => undefined;
  const long: BackupThread = {
    ask: ({ task }) => {
      tasks.push(task);
      return new Promise((resolve) => {
        makeIt = () => resolve({ ok: true, value: { isFullOfOnlyCopies: false, picturesLeftOut: 0 } });
      });
    },
    close: async () => undefined,
  };
  const short: BackupThread = {
    ask: async () => ({ ok: true, value: [] }),
    close: async () => undefined,
  };
  const backups = createBackups(createBackupFolder(dataDir, short, 1000), long, short, {
    now: () => '2026-11-26T08:00:00.000Z',
    reportFault: (error) => expect(error).toBeUndefined(),
    changed: () => undefined,
    yardToBackUp: () => ({
      file: join(dataDir, 'yard.sqlite'),
      backupId: 'abcdef01',
      uuid: '00000000-0000-4000-8000-000000000001',
      holdsAnything: true,
    }),
    restored: () => null,
    hasDialogs: false,
    afterMs: 0,
  });
  const made = backups.commands['backups.make']();
  await expect.poll(() => tasks).toEqual(['make']);
  expect(await backups.queries['backups.list']()).toEqual([]);
  makeIt();
  expect(await made).toMatchObject({ problem: null });
  await backups.close();
});
