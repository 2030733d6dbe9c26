import { randomUUID } from 'node:crypto';
import { statSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type Restored, restoredSchema } from '../../../shared-core/contract/backups.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { asBackupProblem } from '../../store/backup.ts';
import { readBackupName } from '../../store/backup-name.ts';
import { giveUpRestore, RESTORED } from '../../store/restore.ts';
import type { Commands, Queries } from '../handlers.ts';
import { askBackup, type BackupThread } from './backup-tasks.ts';
import type { Backups } from './backups.ts';
import type { Yards } from './yards.ts';

/** The last restore of the open yard, which can be undone; null where there was none. */
export function restoredOf(yards: Yards): Restored | null {
  if (yards.kind() !== 'own' || yards.uuid() === null) return null;
  return restoredSchema.safeParse(yards.reader().settings.get(RESTORED)).data ?? null;
}

/**
 * Puts another yard in the place of the person's own: a backup, or any yard file. The present one is backed up first, so
 * that it can be undone. Until the last step, which is one rename, the present file stays as it is.
 */
export function createRestoring(
  yards: Yards,
  backups: Backups,
  thread: BackupThread,
  {
    dataDir,
    now,
    leave,
    begin,
  }: { dataDir: string; now: () => string; leave: () => void; begin: () => YardInfo },
) {
  let isRestoring = false;

  function restorable(typed: string): string {
    const file = resolve(typed);
    if (isSameFile(file, yards.ownFile)) throw new Refusal(message('refusal.restore-open-yard'));
    return file;
  }

  async function replace(source: string, newUuid: string | null): Promise<YardInfo> {
    const yardFile = yards.ownFile;
    await yards.checking();
    const letGo = yards.beginReplacing();
    try {
      await askBackup(thread, 'prepare', { source, yardFile, newUuid });
      await complete(source, newUuid);
    } catch (error) {
      giveUpRestore(yardFile);
      throw asBackupProblem(error, yardFile);
    } finally {
      letGo();
    }
    return yards.info();
  }

  /** Nothing can be written from here on, so that the backup of the current yard has everything. */
  async function complete(source: string, newUuid: string | null): Promise<void> {
    const present = yards.toBackUp();
    leave();
    const release = present && yards.holdWriting();
    try {
      let restored: Omit<Restored, 'readingsLeftOut'> | null = null;
      if (present) {
        const undoFile = await backups.make('restore', present);
        const backedUpAt = readBackupName(basename(source))?.at ?? null;
        if (newUuid !== null) restored = { backedUpAt, restoredAt: now(), undoFile };
      }
      await askBackup(thread, 'complete', { yardFile: yards.ownFile, restored });
      yards.replaceOwn();
    } finally {
      release?.();
      begin();
    }
  }

  async function alone(source: string, newUuid: string | null): Promise<YardInfo> {
    if (isRestoring) throw new Refusal(message('refusal.restore-busy'));
    isRestoring = true;
    try {
      return await replace(source, newUuid);
    } finally {
      isRestoring = false;
    }
  }

  return {
    queries: {
      'backups.look': async ({ file }) => {
        const present = yards.toBackUp();
        const look = await askBackup(thread, 'look', {
          file: restorable(file),
          present: present?.file ?? null,
        });
        return { ...look, file };
      },
    } satisfies Partial<Queries>,
    commands: {
      'backups.restore': ({ file }) => alone(restorable(file), randomUUID()),
      'backups.undoRestore': () => {
        const restored = restoredOf(yards);
        if (restored === null) throw new Refusal(message('refusal.restore-none'));
        return alone(restored.undoFile, null);
      },
      'backups.saveCopy': async ({ file, replaces }) => {
        const present = yards.toBackUp();
        if (present === null) throw new Refusal(message('refusal.backup-own-not-open'));
        if (dirname(resolve(file)) === resolve(dataDir)) throw new Refusal(message('refusal.copy-in-data'));
        return askBackup(thread, 'copy', { from: present.file, target: file, replaces });
      },
    } satisfies Partial<Commands>,
  };
}

/** By whatever name. Neither is opened: see `makePrivateFile`. */
function isSameFile(file: string, other: string): boolean {
  const [found, open] = [file, other].map((each) => statSync(each, { bigint: true, throwIfNoEntry: false }));
  return file === other || (found !== undefined && found.dev === open?.dev && found.ino === open.ino);
}
