import { existsSync, readdirSync, rmSync } from 'node:fs';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { backupsToKeep } from '../../../shared-core/backups/rotation.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Backup, Restored, YardContents } from '../../../shared-core/contract/backups.ts';
import type { Outcome } from '../../../shared-core/outcome.ts';
import { message } from '../../../shared-core/words/message.ts';
import { clearForBackup, sizeOf, writeBackup } from '../../store/backup.ts';
import { type BackupName, readBackupName, UNKNOWN_YARD } from '../../store/backup-name.ts';
import { withChosenYard } from '../../store/chosen-file.ts';
import { hasAsSaved } from '../../store/damaged-readings.ts';
import { completeRestore, prepareRestore } from '../../store/restore.ts';
import { contentsIn, readingsMissingIn } from '../../store/yard-contents.ts';
import type { OwnThread } from '../own-thread.ts';

/** What is in a yard file, and what it lacks of the open one. */
export interface Look {
  contents: YardContents;
  sizeBytes: number;
  readingsLeftOut: number | null;
}

interface PreparedRestore {
  source: string;
  yardFile: string;
  newUuid: string | null;
}
interface CompletedRestore {
  yardFile: string;
  restored: Omit<Restored, 'readingsLeftOut'> | null;
}

interface ReadingsToFind {
  folders: string[];
  yardId: string;
  /** The yard. */
  file: string;
  ids: number[];
}

/** What takes long with backups; done on a thread (`backup-worker.ts`). */
const backupTasks = {
  /** Makes a backup, and deletes those of the same yard whose turn is over. */
  make: async ({ from, target }: { from: string; target: string }): Promise<null> => {
    clearForBackup(target);
    await writeBackup(from, target);
    const name = readBackupName(basename(target));
    if (name) rotate(dirname(target), name.yardId);
    return null;
  },

  /** Never over another file, unless the person said so. */
  copy: async ({ from, target, replaces }: { from: string; target: string; replaces: boolean }) => {
    if (!isAbsolute(target)) throw new Refusal(message('refusal.copy-relative'));
    if (existsSync(target) && !replaces) return { isTaken: true };
    await writeBackup(from, target);
    return { isTaken: false };
  },

  prepare: async ({ source, yardFile, newUuid }: PreparedRestore): Promise<null> => {
    await prepareRestore(source, yardFile, newUuid);
    return null;
  },

  complete: async ({ yardFile, restored }: CompletedRestore): Promise<number> =>
    completeRestore(yardFile, restored),

  /** The backups in these folders, the newest first. */
  list: async ({ folders, yardId }: { folders: string[]; yardId: string | null }): Promise<Backup[]> => {
    const found = folders.flatMap(backupsIn).sort((a, b) => b.number - a.number || (a.at < b.at ? 1 : -1));
    return Promise.all(
      found.map(async ({ file, at, why, yardId: of }) => ({
        file,
        at,
        why,
        sizeBytes: sizeOf(file),
        contents: await withChosenYard(file, (readable) => contentsIn(readable, false)).catch(() => null),
        isOfOtherYard: yardId !== null && ![yardId, UNKNOWN_YARD].includes(of),
      })),
    );
  },

  /** When the newest backup was made that has these readings of a yard as they were saved, UTC; null where none has. */
  newestWith: async ({ folders, yardId, file, ids }: ReadingsToFind): Promise<string | null> =>
    folders
      .flatMap(backupsIn)
      .filter((backup) => backup.yardId === yardId)
      .sort((a, b) => b.number - a.number)
      .find((backup) => hasThem(backup.file, file, ids))?.at ?? null,

  /** @param present  the yard file that is open; null where it cannot be read */
  look: ({ file, present }: { file: string; present: string | null }): Promise<Look> =>
    withChosenYard(file, (readable) => ({
      contents: contentsIn(readable, true),
      sizeBytes: sizeOf(file),
      readingsLeftOut: present === null ? null : readingsMissingIn(present, readable),
    })),
};
type BackupTasks = typeof backupTasks;
type TaskName = keyof BackupTasks;

interface BackupQuestion {
  task: TaskName;
  input: unknown;
}
export type BackupThread = OwnThread<BackupQuestion, Outcome<unknown>>;

/** Does a task where the thread is: what is wrong with a file or a disk is an outcome, and no fault. */
export async function doBackupTask({ task, input }: BackupQuestion): Promise<Outcome<unknown>> {
  try {
    return { ok: true, value: await backupTasks[task](input as never) };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, problem: error.problem };
    throw error;
  }
}

/**
 * Has a task done by the thread.
 * @throws Refusal
 */
export async function askBackup<N extends TaskName>(
  thread: BackupThread,
  task: N,
  input: Parameters<BackupTasks[N]>[0],
): Promise<Awaited<ReturnType<BackupTasks[N]>>> {
  const outcome = await thread.ask({ task, input });
  if (!outcome.ok) throw new Refusal(outcome.problem);
  return outcome.value as Awaited<ReturnType<BackupTasks[N]>>;
}

interface BackupFile extends BackupName {
  file: string;
}

/** Nothing where there is no such folder, or it cannot be read. */
export function backupsIn(folder: string): BackupFile[] {
  return namesIn(folder).flatMap((fileName) => {
    const name = readBackupName(fileName);
    return name ? [{ ...name, file: join(folder, fileName) }] : [];
  });
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function rotate(folder: string, yardId: string): void {
  const own = backupsIn(folder)
    .filter((backup) => backup.yardId === yardId)
    .map((backup) => ({ ...backup, day: localDay(backup.at) }));
  const kept = backupsToKeep(own);
  for (const backup of own) if (!kept.has(backup)) rmSync(backup.file, { force: true });
}

/** The local ISO day of an instant, where this computer is. */
export const localDay = (instant: string): string => new Date(instant).toLocaleDateString('sv-SE');

/** One of an earlier layout, or that cannot be read, has none. */
function hasThem(backup: string, file: string, ids: readonly number[]): boolean {
  try {
    return hasAsSaved(backup, file, ids);
  } catch {
    return false;
  }
}
