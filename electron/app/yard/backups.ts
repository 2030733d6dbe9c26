import { join } from 'node:path';
import type { BackupReason } from '../../../shared-core/backups/rotation.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { BackupState, Restored } from '../../../shared-core/contract/backups.ts';
import type { Topic } from '../../../shared-core/contract/topics.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { clearForBackup, writeBackupAtOnce } from '../../store/backup.ts';
import { backupFileName } from '../../store/backup-name.ts';
import { backupIdOf, holdsAnything } from '../../store/yard-contents.ts';
import type { Db } from '../../store/yard-file.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { BackupFolder } from './backup-folder.ts';
import { askBackup, type BackupThread, backupsIn, localDay } from './backup-tasks.ts';

/** How often a failed backup is tried again, and a new day is noticed while Pintally stays open. */
const LOOK_AGAIN_MS = 10 * 60_000;

/** The open yard as far as its backups need it. */
export interface YardToBackUp {
  file: string;
  backupId: string;
  holdsAnything: boolean;
}

/**
 * Backups of the person's own yard: at its first opening of a day, before each migration, after each finished round, and
 * when asked. One that fails disturbs nothing: it is said in the window and tried again.
 */
export function createBackups(
  folder: BackupFolder,
  thread: BackupThread,
  {
    now,
    reportFault,
    changed,
    yardToBackUp,
    restored,
  }: {
    now: () => string;
    reportFault: (error: unknown) => void;
    changed: (topics: Topic[]) => void;
    /** Null while the own yard is not open. */
    yardToBackUp: () => YardToBackUp | null;
    restored: () => Restored | null;
  },
) {
  let problem: Message | null = null;
  /** One at a time: each has its own number. */
  let last: Promise<unknown> = Promise.resolve();
  const timer = setInterval(() => {
    if (problem !== null) void makeQuietly('round');
    else makeOfDay();
  }, LOOK_AGAIN_MS).unref();

  /** The next name, in a folder. */
  function nextIn(into: string, why: BackupReason, yardId: string): string {
    const numbers = folder
      .toReadFrom()
      .flatMap(backupsIn)
      .filter((backup) => backup.yardId === yardId)
      .map(({ number }) => number);
    return join(into, backupFileName({ at: now(), why, number: Math.max(0, ...numbers) + 1, yardId }));
  }

  /**
   * Makes a backup in the first folder that takes it.
   * @returns its file
   * @throws Refusal where none does
   */
  function make(why: BackupReason, yard: YardToBackUp): Promise<string> {
    const made = last.then(async () => {
      const found = await firstThatWorks(folder.toWriteTo(), async (into) => {
        const target = nextIn(into, why, yard.backupId);
        await askBackup(thread, 'make', { from: yard.file, target });
        return target;
      });
      tell(null);
      return found;
    });
    last = made.catch(() => undefined);
    return made;
  }

  function tell(found: Message | null): void {
    problem = found;
    changed(['backups']);
  }

  /** What a person reads of it. */
  function problemOf(error: unknown): Message {
    if (error instanceof Refusal) return error.problem;
    reportFault(error);
    return message('refusal.backup-failed');
  }

  const fail = (error: unknown): void => tell(problemOf(error));

  async function makeQuietly(why: BackupReason): Promise<void> {
    const yard = yardToBackUp();
    if (yard?.holdsAnything) await make(why, yard).catch(fail);
  }

  /** Where this day has no backup of the yard yet. */
  function makeOfDay(): void {
    const yard = yardToBackUp();
    if (!yard?.holdsAnything) return;
    const today = localDay(now());
    const isThere = folder
      .toReadFrom()
      .flatMap(backupsIn)
      .some(({ yardId, at }) => yardId === yard.backupId && localDay(at) === today);
    if (!isThere) void makeQuietly('day');
  }

  const state = (): BackupState => ({
    chosenFolder: folder.chosen(),
    usualFolder: folder.usual,
    isAway: folder.isAway(),
    problem,
    restored: restored(),
  });

  return {
    make,
    /** When the newest backup of the open yard was made that has these readings as they were saved; null where none has. */
    newestWith: async (ids: number[]): Promise<string | null> => {
      const yard = yardToBackUp();
      if (yard === null) return null;
      const { file, backupId: yardId } = yard;
      return askBackup(thread, 'newestWith', { folders: folder.toReadFrom(), yardId, file, ids });
    },
    /** The own yard was opened, and can be written to. */
    yardOpened: makeOfDay,
    roundFinished: (): void => void makeQuietly('round'),
    /**
     * A file is about to be brought to the newest layout. A backup that fails is said and does not lock the person out:
     * the migration is one transaction, and leaves the file whole without a backup too.
     */
    beforeMigrating: (db: Db): void => {
      if (!holdsAnything(db)) return;
      let failure: unknown = null;
      for (const into of folder.toWriteTo()) {
        const target = nextIn(into, 'migration', backupIdOf(db));
        try {
          clearForBackup(target);
          writeBackupAtOnce(db, target);
          return;
        } catch (error) {
          failure ??= error;
        }
      }
      problem = problemOf(failure);
    },
    queries: {
      'backups.state': state,
      'backups.list': () =>
        askBackup(thread, 'list', {
          folders: folder.toReadFrom(),
          yardId: yardToBackUp()?.backupId ?? null,
        }),
    } satisfies Partial<Queries>,
    commands: {
      'backups.make': async () => {
        const yard = yardToBackUp();
        if (yard === null) throw new Refusal(message('refusal.backup-own-not-open'));
        await make('asked', yard).catch((error) => {
          fail(error);
          throw error;
        });
        return state();
      },
      'backups.setFolder': ({ folder: chosen }) => {
        folder.choose(chosen);
        return state();
      },
    } satisfies Partial<Commands>,
    /** Waits for the backup that is being made. */
    close: async (): Promise<void> => {
      clearInterval(timer);
      await last;
    },
  };
}
export type Backups = ReturnType<typeof createBackups>;

/** @throws what the last one threw, where none works */
async function firstThatWorks<T, R>(all: readonly T[], work: (each: T) => Promise<R>): Promise<R> {
  let failure: unknown;
  for (const each of all) {
    try {
      return await work(each);
    } catch (error) {
      failure ??= error;
    }
  }
  throw failure;
}
