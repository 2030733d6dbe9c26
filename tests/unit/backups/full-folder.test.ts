import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import type { BackupThread } from '../../../electron/app/yard/backup-tasks.ts';
import { message } from '../../../shared-core/words/message.ts';
import { say } from '../app/a-window.ts';
import { someBackups } from './some-backups.ts';

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-full-'));
const chosen = '/media/disk/backups';
const full = message('refusal.backup-no-room', { folder: chosen });

/** A thread for which the chosen folder is there, and has no room. */
const thread: BackupThread = {
  ask: async ({ task, input }) => {
    if (task === 'take') return { ok: true, value: { folder: chosen, mark: crypto.randomUUID() } };
    if (task === 'isThere') return { ok: true, value: true };
    if (task === 'find') return { ok: true, value: [] };
    const { target } = input as { target: string };
    return dirname(target) === chosen
      ? { ok: false, problem: full }
      : { ok: true, value: { isFullOfOnlyCopies: false } };
  },
  close: async () => undefined,
};

const start = () => someBackups(dataDir, thread);

test('a chosen folder without room is said to be full, where the backup is instead, and after a restart too', async () => {
  const backups = start();
  const changed = await backups.commands['backups.setFolder']({ folder: chosen });
  expect(changed).toMatchObject({ chosenFolder: chosen, isBackedUp: false, problem: null });
  const sentence = `There is not enough room in the backup folder ${chosen}. The newest backup is in ${join(dataDir, 'backups')}.`;
  expect(say(changed.elsewhere!)).toBe(sentence);
  await backups.close();
  const again = start();
  expect(say((await again.queries['backups.state']()).elsewhere!)).toBe(sentence);
  await again.close();
});
