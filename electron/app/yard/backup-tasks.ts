import { rmSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import Database from 'better-sqlite3';
import { backupsToKeep, MOST_ONLY_COPIES, onlyCopies } from '../../../shared-core/backups/rotation.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Backup, MissingParts, Restored, YardContents } from '../../../shared-core/contract/backups.ts';
import type { Outcome } from '../../../shared-core/outcome.ts';
import { message } from '../../../shared-core/words/message.ts';
import { clearForBackup, lackingRoom, sizeOf, writeBackup, writeCopy } from '../../store/backup.ts';
import { readBackupName, UNKNOWN_YARD } from '../../store/backup-name.ts';
import {
  type BackupFile,
  backupsIn,
  type ChosenFolder,
  clearLeft,
  isThere,
  takeFolder,
} from '../../store/backup-place.ts';
import { chosenFile, withChosenYard } from '../../store/chosen-file.ts';
import { copyTarget } from '../../store/copy-target.ts';
import { hasAsSaved } from '../../store/damaged-readings.ts';
import { copyPictures, dropPictures, picturesBeside, picturesOfBackups } from '../../store/picture-files.ts';
import { pictureHashesIn } from '../../store/picture-table.ts';
import { readingsAreElsewhere } from '../../store/readings-elsewhere.ts';
import { completeRestore, prepareDamaged, prepareRestore } from '../../store/restore.ts';
import { missingPartsOf } from '../../store/yard-comparison.ts';
import { backupIdIn, contentsIn } from '../../store/yard-contents.ts';
import { NoAnswer, type OwnThread } from '../own-thread.ts';
import { orRefused, outcomeOf } from '../thread-outcome.ts';

/** What is in a yard file, and what it lacks of the open one. */
export interface Look {
  contents: YardContents;
  sizeBytes: number;
  isOfOtherYard: boolean;
  missing: MissingParts | null;
}

interface PreparedRestore {
  source: string;
  yardFile: string;
  /** Null for an undo: the yard is that one again. */
  asNew: { uuid: string; backupId: string } | null;
}
interface CompletedRestore {
  yardFile: string;
  /** Null for an undo. */
  told: { restored: Omit<Restored, 'missing'> | null } | null;
}

/** The own yard as it is or last was. */
interface OwnYard {
  backupId: string | null;
  uuid: string | null;
}

interface ReadingsToFind {
  /** Those of the yard. */
  backups: BackupFile[];
  /** The yard. */
  file: string;
  ids: number[];
}

/** A disk that does not answer holds up nothing but the thread (`backup-worker.ts`). */
const backupTasks = {
  // Short ones, on a thread of their own: a disk that has not answered one after some seconds will not.

  take: async ({ typed, usual }: { typed: string; usual: string }): Promise<ChosenFolder | null> =>
    takeFolder(typed, usual),

  isThere: async (chosen: ChosenFolder): Promise<boolean> => isThere(chosen),

  find: async ({ folder }: { folder: string }): Promise<BackupFile[]> => backupsIn(folder),

  /** Removes what interrupted backups of a yard left. */
  clear: async ({ folder, yardIds }: { folder: string; yardIds: string[] }): Promise<null> => {
    clearLeft(folder, yardIds);
    return null;
  },

  /** What is in these backups, the newest first. */
  list: async ({ backups, own }: { backups: BackupFile[]; own: OwnYard }): Promise<Backup[]> => {
    const found = [...backups].sort((a, b) => b.number - a.number || (a.at < b.at ? 1 : -1));
    return Promise.all(
      found.map(async ({ file, at, why, yardId }) => {
        const contents = await withChosenYard(file, (readable) => contentsIn(readable, false)).catch(
          () => null,
        );
        return {
          file,
          at,
          why,
          sizeBytes: sizeOf(file),
          contents,
          isOfOtherYard: isOfOther(yardId, own.backupId),
          isOfPresent: own.uuid !== null && contents?.uuid === own.uuid,
        };
      }),
    );
  },

  copyTarget: async ({ typed, dataDir }: { typed: string; dataDir: string }) => copyTarget(typed, dataDir),

  chosenFile: async ({ typed, openYard }: { typed: string; openYard: string }) => chosenFile(typed, openYard),

  // Those that take as long as a file is large.

  /** Makes a backup, and deletes those of the same yard whose turn is over. */
  make: async ({
    from,
    target,
  }: {
    from: string;
    target: string;
  }): Promise<{ isFullOfOnlyCopies: boolean; picturesLeftOut: number }> => {
    clearForBackup(target);
    const name = readBackupName(basename(target));
    if (name) makeRoom(from, { ...name, file: target });
    await writeBackup(from, target);
    return {
      picturesLeftOut: name === null ? 0 : backUpPictures(from, target, name.yardId),
      isFullOfOnlyCopies: name !== null && rotate(dirname(target), name.yardId),
    };
  },

  copy: async ({ from, target }: { from: string; target: string }): Promise<null> => {
    await writeCopy(from, target);
    return null;
  },

  prepare: async ({ source, yardFile, asNew }: PreparedRestore): Promise<null> => {
    await prepareRestore(source, yardFile, asNew);
    return null;
  },

  prepareDamaged: async ({ source, yardFile }: { source: string; yardFile: string }): Promise<null> => {
    prepareDamaged(source, yardFile);
    return null;
  },

  complete: async ({ yardFile, told }: CompletedRestore): Promise<null> => {
    completeRestore(yardFile, told);
    return null;
  },

  /** When the newest backup was made that has these readings of a yard as they were saved, UTC; null where none has. */
  newestWith: async ({ backups, file, ids }: ReadingsToFind): Promise<string | null> =>
    [...backups].sort((a, b) => b.number - a.number).find((backup) => hasThem(backup.file, file, ids))?.at ??
    null,

  /** @param present  the yard file that is open; null where it cannot be read */
  look: ({ file, present, ownId }: { file: string; present: string | null; ownId: string | null }) =>
    withChosenYard(
      file,
      (readable): Look => ({
        contents: contentsIn(readable, true),
        sizeBytes: sizeOf(file),
        isOfOtherYard: isOfOther(backupIdIn(readable), ownId) ?? false,
        missing: present === null ? null : missingPartsOf(present, readable),
      }),
    ),
};
type BackupTasks = typeof backupTasks;
type TaskName = keyof BackupTasks;

interface BackupQuestion {
  task: TaskName;
  input: unknown;
}
export type BackupThread = OwnThread<BackupQuestion, Outcome<unknown>>;

export const doBackupTask = ({ task, input }: BackupQuestion): Promise<Outcome<unknown>> =>
  outcomeOf(() => backupTasks[task](input as never));

/** The disk or network drive that a task was about did not answer in time. */
export class Unanswered extends Refusal {
  override name = 'Unanswered';
  /** When it answered after all. */
  readonly ended: Promise<unknown>;
  constructor(ended: Promise<unknown>) {
    super(message('refusal.disk-silent'));
    this.ended = ended;
  }
}

/** A disk that writes less than this in a second is not one to wait for. */
const SLOWEST_BYTES_PER_MS = 1000;
const LEAST_MS = 60_000;
/** After how long without an answer the copy of a file that large is given up, ms. */
export const patienceFor = (bytes: number): number => LEAST_MS + bytes / SLOWEST_BYTES_PER_MS;

/**
 * Has a task done by the thread.
 * @param limitMs  after how long it is given up
 * @throws Refusal; Unanswered
 */
export async function askBackup<N extends TaskName>(
  thread: BackupThread,
  task: N,
  input: Parameters<BackupTasks[N]>[0],
  limitMs: number,
): Promise<Awaited<ReturnType<BackupTasks[N]>>> {
  const outcome = await thread.ask({ task, input }, undefined, limitMs).catch((error) => {
    throw error instanceof NoAnswer ? new Unanswered(error.ended) : error;
  });
  return orRefused(outcome) as Awaited<ReturnType<BackupTasks[N]>>;
}

/**
 * Copies the pictures that a backup refers to beside it, once for all backups of the yard.
 * @returns how many the disk had no room for
 */
function backUpPictures(from: string, backup: string, yardId: string): number {
  const folder = picturesOfBackups(dirname(backup), yardId);
  return copyPictures([picturesBeside(from)], folder, pictureHashesOf(backup), false).noRoom;
}

/** Deletes pictures that no backup of the yard refers to any more; none while a backup cannot be read. */
function rotatePictures(folder: string, yardId: string): void {
  try {
    const used = new Set(backupsOf(folder, yardId).flatMap(({ file }) => pictureHashesOf(file)));
    dropPictures(picturesOfBackups(folder, yardId), used);
  } catch {
    // The next backup tries again.
  }
}

function pictureHashesOf(file: string): string[] {
  const db = new Database(file, { readonly: true, timeout: 2000 });
  try {
    return pictureHashesIn(db);
  } finally {
    db.close();
  }
}

/** @returns whether as many stay for their readings alone as may */
function rotate(folder: string, yardId: string): boolean {
  const { due, isFullOfOnlyCopies } = inTurn(backupsOf(folder, yardId));
  for (const { file } of due) rmSync(file, { force: true });
  rotatePictures(folder, yardId);
  return isFullOfOnlyCopies;
}

/** Where a backup has no room, those whose turn is over once it is made are deleted before it, if that is enough. */
function makeRoom(from: string, next: BackupFile): void {
  const folder = dirname(next.file);
  const lacking = lackingRoom(from, folder);
  if (lacking <= 0) return;
  // It will have what the yard has.
  const { due } = inTurn([...backupsOf(folder, next.yardId), { ...next, file: from }]);
  if (due.reduce((sum, { file }) => sum + sizeOf(file), 0) < lacking) return;
  for (const { file } of due) rmSync(file, { force: true });
}

const backupsOf = (folder: string, yardId: string): BackupFile[] =>
  backupsIn(folder).filter((backup) => backup.yardId === yardId);

/** Those of one yard whose turn is over, and whose readings are in others that stay. */
function inTurn(backups: readonly BackupFile[]): { due: BackupFile[]; isFullOfOnlyCopies: boolean } {
  const dated = backups.map((backup) => ({ ...backup, day: localDay(backup.at) }));
  const filesOf = (all: readonly BackupFile[]): string[] => all.map(({ file }) => file);
  const only = onlyCopies(dated, ({ file }, others) => readingsAreElsewhere(file, filesOf(others)));
  const kept = new Set([...backupsToKeep(dated), ...only]);
  return {
    due: dated.filter((backup) => !kept.has(backup)),
    isFullOfOnlyCopies: only.length === MOST_ONLY_COPIES,
  };
}

/** Null where it is not known which is the own yard. One of a layout without ids is nobody else's. */
function isOfOther(backupId: string, ownId: string | null): boolean | null {
  if (backupId === UNKNOWN_YARD) return false;
  return ownId === null ? null : backupId !== ownId;
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
