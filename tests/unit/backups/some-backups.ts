import { join } from 'node:path';
import { expect } from 'vitest';
import { createBackupFolder } from '../../../electron/app/yard/backup-folder.ts';
import type { BackupThread } from '../../../electron/app/yard/backup-tasks.ts';
import { createBackups } from '../../../electron/app/yard/backups.ts';

/**
 * Backups of a yard by threads that a test plays.
 * @param short    looks at what is there, while `thread` makes them
 * @param afterMs  how long after its opening the day's backup is begun
 */
export const someBackups = (
  dataDir: string,
  thread: BackupThread,
  { short = thread, holdsAnything = true, afterMs = 0 } = {},
) =>
  createBackups(createBackupFolder(dataDir, short, 1000), thread, short, {
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
