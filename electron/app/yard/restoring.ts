import { randomUUID } from 'node:crypto';
import { basename } from 'node:path';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type Restored, restoredSchema } from '../../../shared-core/contract/backups.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { asBackupProblem, sizeWithPictures } from '../../store/backup.ts';
import { readBackupName } from '../../store/backup-name.ts';
import { giveUpRestore, RESTORED } from '../../store/restore.ts';
import type { Commands, Queries } from '../handlers.ts';
import { createTurns } from '../turns.ts';
import type { BackupFolder } from './backup-folder.ts';
import { askBackup, type BackupThread, patienceFor } from './backup-tasks.ts';
import type { Backups } from './backups.ts';
import type { Yards } from './yards.ts';

/** The last restore of the own yard, which can be undone, also where that cannot be opened; null where there was none. */
export function restoredOf(yards: Yards, folder: Pick<BackupFolder, 'lastYard'>): Restored | null {
  if (yards.kind() !== 'own') return null;
  if (yards.uuid() === null) return folder.lastYard()?.restored ?? null;
  return restoredSchema.safeParse(yards.reader().settings.get(RESTORED)).data ?? null;
}

/** An undo brings a yard back as it was: a backup of it, or the damaged file. */
type What =
  | { isUndo: false; typed: string; newestAct?: number | null }
  | { isUndo: true; restored: Restored };

/**
 * Puts another yard in the place of the person's own: a backup, or any yard file. The present one is backed up first, so
 * that it can be undone. Until the last step, which is one rename, the present file stays as it is.
 */
export function createRestoring(
  yards: Yards,
  backups: Backups,
  folder: BackupFolder,
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

  async function replace(what: What): Promise<YardInfo> {
    const { isUndo } = what;
    const { file: source, sizeBytes } = await restorable(isUndo ? what.restored.undoFile : what.typed);
    const yardFile = yards.ownFile;
    const limitMs = patienceFor(sizeBytes);
    await yards.checking();
    const letGo = yards.beginReplacing();
    try {
      if (isUndo && what.restored.wasDamaged) {
        await askBackup(thread, 'prepareDamaged', { source, yardFile }, limitMs);
      } else {
        const asNew = isUndo ? null : newYard();
        await askBackup(thread, 'prepare', { source, yardFile, asNew }, limitMs);
      }
      await complete(source, what, limitMs);
    } catch (error) {
      giveUpRestore(yardFile);
      throw asBackupProblem(error, yardFile);
    } finally {
      letGo();
    }
    return yards.info();
  }

  /** Its backups go on as those of the own yard. Where nothing says which these are, it takes none that another has. */
  function newYard() {
    const uuid = randomUUID();
    return { uuid, backupId: yards.toBackUp()?.backupId ?? folder.backupId() ?? uuid.slice(0, 8) };
  }

  /** Nothing can be written from here on, so that the backup of the current yard has everything. */
  async function complete(source: string, what: What, limitMs: number): Promise<void> {
    const { isUndo } = what;
    const wasMerged = !isUndo && what.newestAct !== undefined;
    const present = yards.toBackUp();
    leave();
    const release = present && yards.holdWriting();
    try {
      if (wasMerged && yards.reader().acts.newestId() !== what.newestAct) {
        throw new Refusal(message('refusal.merge-changed-since'));
      }
      const why = isUndo ? 'undo' : wasMerged ? 'merge' : 'restore';
      const undoFile = present && (await backups.make(why, present));
      const backedUpAt = readBackupName(basename(source))?.at ?? null;
      const restored = undoFile && { backedUpAt, restoredAt: now(), undoFile, wasMerged, wasDamaged: false };
      const told = isUndo ? null : { restored: restored || null };
      await askBackup(thread, 'complete', { yardFile: yards.ownFile, told }, limitMs);
      const damagedFile = yards.replaceOwn();
      if (isUndo) folder.forgetRestored();
      else if (restored) remember({ ...restored, missing: null });
      else if (damagedFile) {
        remember({
          backedUpAt,
          restoredAt: now(),
          undoFile: damagedFile,
          wasMerged: false,
          wasDamaged: true,
          missing: null,
        });
      }
    } finally {
      release?.();
      begin();
    }
  }

  /** How to undo a restore, also where the restored yard cannot be opened. */
  function remember(restored: Restored): void {
    folder.rememberRestored(restored);
    if (restored.wasDamaged && yards.mayWrite()) yards.current().settings.put(RESTORED, restored);
  }

  async function alone(what: What): Promise<YardInfo> {
    if (isRestoring) throw new Refusal(message('refusal.restore-busy'));
    isRestoring = true;
    try {
      return await replace(what);
    } finally {
      isRestoring = false;
    }
  }

  return {
    restorable,
    /**
     * Puts the own yard in its place with another one in it.
     * @param file  that was made of it
     * @param newestAct  that it had then
     * @throws Refusal where there is another act by now
     */
    takeMerged: (file: string, newestAct: number | null): Promise<YardInfo> =>
      alone({ isUndo: false, typed: file, newestAct }),
    queries: {
      'backups.look': async ({ file: typed }) => {
        const present = yards.toBackUp()?.file ?? null;
        const { file, sizeBytes } = await restorable(typed);
        const ownId = yards.toBackUp()?.backupId ?? folder.backupId();
        const look = await askBackup(thread, 'look', { file, present, ownId }, patienceFor(sizeBytes));
        return { ...look, file };
      },
    } satisfies Partial<Queries>,
    commands: {
      'backups.restore': ({ file }) => alone({ isUndo: false, typed: file }),
      'backups.undoRestore': () => {
        const restored = restoredOf(yards, folder);
        if (restored === null) throw new Refusal(message('refusal.restore-none'));
        return alone({ isUndo: true, restored });
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
          await askBackup(thread, 'copy', { from, target }, patienceFor(sizeWithPictures(from)));
          return { isTaken: false };
        }),
    } satisfies Partial<Commands>,
  };
}
export type Restoring = ReturnType<typeof createRestoring>;
