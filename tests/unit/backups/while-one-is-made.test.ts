import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { BackupThread } from '../../../electron/app/yard/backup-tasks.ts';
import { someBackups } from './some-backups.ts';

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
  const backups = someBackups(dataDir, long, { short });
  const made = backups.commands['backups.make']();
  await expect.poll(() => tasks).toEqual(['make']);
  expect(await backups.queries['backups.list']()).toEqual([]);
  makeIt();
  expect(await made).toMatchObject({ problem: null });
  await backups.close();
});
