import { randomUUID } from 'node:crypto';
import { basename } from 'node:path';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type Restored, restoredSchema } from '../../../shared-core/contract/backups.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { asBackupProblem, sizeOf } from '../../store/backup.ts';
import { readBackupName } from '../../store/backup-name.ts';
import { giveUpRestore, RESTORED } from '../../store/restore.ts';
import type { Commands, Queries } from '../handlers.ts';
import { createTurns } from '../turns.ts';
import { askBackup, type BackupThread, patienceFor } from './backup-tasks.ts';
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
  /** For what takes as long as a file is large. */
  thread: BackupThread,
  /** For all that does not. */
  shortThread: BackupThread,
  {
    dataDir,
    answerMs,
    now,
    leave,
    begin,
  }: {
    dataDir: string;
    /** How long a disk has to answer, ms. */
    answerMs: number;
    now: () => string;
    leave: () => void;
    begin: () => YardInfo;
  },
) {
  let isRestoring = false;
  /** Copies, one at a time: two may have the same name. */
  const { inTurn } = createTurns();

  /** @throws Refusal */
  const restorable = (typed: string) =>
    askBackup(shortThread, 'chosenFile', { typed, openYard: yards.ownFile }, answerMs);

  async function replace(typed: string, newUuid: string | null): Promise<YardInfo> {
    const { file: source, sizeBytes } = await restorable(typed);
    const yardFile = yards.ownFile;
    const limitMs = patienceFor(sizeBytes);
    await yards.checking();
    const letGo = yards.beginReplacing();
    try {
      const backupId = yards.toBackUp()?.backupId ?? null;
      await askBackup(thread, 'prepare', { source, yardFile, newUuid, backupId }, limitMs);
      await complete(source, newUuid, limitMs);
    } catch (error) {
      giveUpRestore(yardFile);
      throw asBackupProblem(error, yardFile);
    } finally {
      letGo();
    }
    return yards.info();
  }

  /** Nothing can be written from here on, so that the backup of the current yard has everything. */
  async function complete(source: string, newUuid: string | null, limitMs: number): Promise<void> {
    const present = yards.toBackUp();
    leave();
    const release = present && yards.holdWriting();
    try {
      let restored: Omit<Restored, 'missing'> | null = null;
      if (present) {
        const undoFile = await backups.make('restore', present);
        const backedUpAt = readBackupName(basename(source))?.at ?? null;
        if (newUuid !== null) restored = { backedUpAt, restoredAt: now(), undoFile };
      }
      await askBackup(thread, 'complete', { yardFile: yards.ownFile, restored }, limitMs);
      yards.replaceOwn();
    } finally {
      release?.();
      begin();
    }
  }

  async function alone(typed: string, newUuid: string | null): Promise<YardInfo> {
    if (isRestoring) throw new Refusal(message('refusal.restore-busy'));
    isRestoring = true;
    try {
      return await replace(typed, newUuid);
    } finally {
      isRestoring = false;
    }
  }

  return {
    queries: {
      'backups.look': async ({ file: typed }) => {
        const present = yards.toBackUp()?.file ?? null;
        const { file, sizeBytes } = await restorable(typed);
        const look = await askBackup(thread, 'look', { file, present }, patienceFor(sizeBytes));
        return { ...look, file };
      },
    } satisfies Partial<Queries>,
    commands: {
      'backups.restore': ({ file }) => alone(file, randomUUID()),
      'backups.undoRestore': () => {
        const restored = restoredOf(yards);
        if (restored === null) throw new Refusal(message('refusal.restore-none'));
        return alone(restored.undoFile, null);
      },
      'backups.saveCopy': ({ file: typed, replaces }) =>
        inTurn(async () => {
          const present = yards.toBackUp();
          if (present === null) throw new Refusal(message('refusal.backup-own-not-open'));
          const { target, isTaken } = await askBackup(
            shortThread,
            'copyTarget',
            { typed, dataDir },
            answerMs,
          );
          if (isTaken && !replaces) return { isTaken };
          const { file: from } = present;
          await askBackup(thread, 'copy', { from, target }, patienceFor(sizeOf(from)));
          return { isTaken: false };
        }),
    } satisfies Partial<Commands>,
  };
}
