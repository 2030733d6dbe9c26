import { dirname, join } from 'node:path';
import type { BackupReason } from '../../../shared-core/backups/rotation.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { BackupState, Restored } from '../../../shared-core/contract/backups.ts';
import type { Topic } from '../../../shared-core/contract/topics.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { clearForBackup, sizeOf, sizeWithPictures, writeBackupAtOnce } from '../../store/backup.ts';
import { backupFileName, numberAfter, UNKNOWN_YARD } from '../../store/backup-name.ts';
import { clearLeft } from '../../store/backup-place.ts';
import { backupIdOf, holdsAnything } from '../../store/yard-contents.ts';
import type { Db } from '../../store/yard-file.ts';
import type { Commands, Queries } from '../handlers.ts';
import { createTurns } from '../turns.ts';
import type { BackupFolder } from './backup-folder.ts';
import { askBackup, type BackupThread, localDay, patienceFor, Unanswered } from './backup-tasks.ts';

/** How often a failed backup is tried again, and a new day is noticed while Pintally stays open. */
const LOOK_AGAIN_MS = 10 * 60_000;

/** The open yard as far as its backups need it. */
export interface YardToBackUp {
  file: string;
  uuid: string;
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
  /** Nobody who looks at backups waits for one that is being made. */
  shortThread: BackupThread,
  {
    now,
    reportFault,
    changed,
    yardToBackUp,
    restored,
    hasDialogs,
    afterMs,
  }: {
    now: () => string;
    reportFault: (error: unknown) => void;
    changed: (topics: Topic[]) => void;
    /** Null while the own yard is not open. */
    yardToBackUp: () => YardToBackUp | null;
    restored: () => Restored | null;
    hasDialogs: boolean;
    /** How long after a yard was opened the day's backup is begun: the first screen comes first. */
    afterMs: number;
  },
) {
  let problem: Message | null = null;
  let isFullOfOnlyCopies = false;
  let picturesLeftOut = 0;
  /** Begins the day's backup. */
  let beginning: NodeJS.Timeout | undefined;
  /** One at a time: each has its own number. */
  const { inTurn, idle } = createTurns();
  const timer = setInterval(() => {
    if (problem !== null) void makeQuietly('round');
    else makeOfDay();
  }, LOOK_AGAIN_MS).unref();

  /**
   * Makes a backup in the first folder that takes it.
   * @returns its file
   * @throws Refusal where none does
   */
  const make = (why: BackupReason, yard: YardToBackUp): Promise<string> => inTurn(() => makeNow(why, yard));

  async function makeNow(why: BackupReason, yard: YardToBackUp): Promise<string> {
    const { toWriteTo, backups } = await folder.places();
    const number = numberAfter([folder.highest(), ...backups.map((backup) => backup.number)]);
    const name = backupFileName({ at: now(), why, number, yardId: yard.backupId });
    const { made, failure } = await firstThatWorks(toWriteTo, async (into) => {
      const target = join(into, name);
      const limitMs = patienceFor(sizeWithPictures(yard.file));
      const rotated = await askBackup(thread, 'make', { from: yard.file, target }, limitMs).catch((error) => {
        if (error instanceof Unanswered) folder.leaveAlone(into, error);
        throw error;
      });
      ({ isFullOfOnlyCopies, picturesLeftOut } = rotated);
      return target;
    });
    const isFull = failure instanceof Refusal && failure.problem.code === 'refusal.backup-no-room';
    folder.made(number, dirname(made) === folder.chosen() ? null : isFull ? 'full' : 'away');
    tell(null);
    return made;
  }

  /** Where the newest backup is, if not where the person wants it. */
  function elsewhere(): Message | null {
    const [chosenFolder, why] = [folder.chosen(), folder.insteadFor()];
    if (chosenFolder === null || why === null) return null;
    const usualFolder = folder.usual;
    return why === 'full'
      ? message('backups.went-elsewhere-full', { chosenFolder, usualFolder })
      : message('backups.went-elsewhere', { chosenFolder, usualFolder });
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

  /** In a folder that was chosen just now, where it has none of this yard. @returns whether it has one now */
  async function makeFirstThere(): Promise<boolean> {
    const yard = yardToBackUp();
    const { elsewhere: chosen, backups } = await folder.places();
    const isThere = backups.some(({ file, yardId }) => dirname(file) === chosen && yardId === yard?.backupId);
    if (chosen === null || !yard?.holdsAnything || isThere) return isThere;
    await make('asked', yard).catch(fail);
    return problem === null && folder.insteadFor() === null;
  }

  /** Where this day has no backup of the yard yet. */
  function makeOfDay(): void {
    const yard = yardToBackUp();
    if (!yard?.holdsAnything) return;
    const today = localDay(now());
    void inTurn(async () => {
      const { backups } = await folder.places();
      const isMade = backups.some(({ yardId, at }) => yardId === yard.backupId && localDay(at) === today);
      if (!isMade) await makeNow('day', yard);
    }).catch(fail);
  }

  /** What backups left that were interrupted when Pintally was last open. */
  function clear(): void {
    const yard = yardToBackUp();
    if (!yard?.holdsAnything) return;
    void inTurn(async () => {
      const yardIds = [yard.backupId, UNKNOWN_YARD];
      clearLeft(folder.usual, yardIds);
      const { elsewhere: chosen } = await folder.places();
      if (chosen === null) return;
      await askBackup(shortThread, 'clear', { folder: chosen, yardIds: [yard.backupId] }, patienceFor(0));
    }).catch((error) => {
      // The next backup to that folder says that its disk is not responding.
      if (!(error instanceof Refusal)) reportFault(error);
    });
  }

  const state = async (): Promise<BackupState> => {
    const { isAway } = await folder.places();
    return {
      chosenFolder: folder.chosen(),
      usualFolder: folder.usual,
      isAway,
      problem,
      elsewhere: elsewhere(),
      restored: restored(),
      isFullOfOnlyCopies,
      picturesLeftOut,
      hasDialogs,
    };
  };

  return {
    make,
    /** When the newest backup of the open yard was made that has these readings as they were saved; null where none has. */
    newestWith: async (ids: number[]): Promise<string | null> => {
      const yard = yardToBackUp();
      if (yard === null) return null;
      const { backups } = await folder.places();
      const own = backups.filter(({ yardId }) => yardId === yard.backupId);
      const limitMs = patienceFor(own.length * sizeOf(yard.file));
      return askBackup(thread, 'newestWith', { backups: own, file: yard.file, ids }, limitMs);
    },
    /** Whether the person's own yard was ever backed up, as far as it can be known at once. */
    areThere: (): boolean => folder.highest() > 0,
    /** The own yard was opened, and can be written to. */
    yardOpened: (): void => {
      const yard = yardToBackUp();
      if (yard) folder.rememberYard({ backupId: yard.backupId, uuid: yard.uuid, restored: restored() });
      clearTimeout(beginning);
      // An empty yard has no backup at its opening, whatever is added in the next moments.
      if (!yard?.holdsAnything) return;
      beginning = setTimeout(() => {
        clear();
        makeOfDay();
      }, afterMs).unref();
    },
    roundFinished: (): void => void makeQuietly('round'),
    /** What could be read of a damaged file, or a rescued copy, is the yard now. */
    recovered: (): void => void makeQuietly('recovered'),
    /**
     * A file is about to be brought to the newest layout, and its opening waits for that: the backup goes to the one disk
     * that is known to answer, beside the file where the usual folder does not take it. Where nothing does, that is said
     * and does not lock the person out: the migration is one transaction, and leaves the file whole without a backup too.
     */
    beforeMigrating: (db: Db): void => {
      if (!holdsAnything(db)) return;
      const number = numberAfter([folder.highest()]);
      const name = backupFileName({ at: now(), why: 'migration', number, yardId: backupIdOf(db) });
      for (const into of [folder.usual, folder.beside]) {
        try {
          clearForBackup(join(into, name));
          writeBackupAtOnce(db, join(into, name));
          problem = null;
          return;
        } catch (error) {
          if (!(error instanceof Refusal)) reportFault(error);
          problem = message('backups.none-before-update', { folder: folder.beside });
        }
      }
    },
    queries: {
      'backups.state': state,
      'backups.list': async () => {
        const { backups } = await folder.places();
        const yard = yardToBackUp();
        const backupId = yard?.backupId ?? folder.backupId();
        const uuid = yard?.uuid ?? folder.lastYard()?.uuid ?? null;
        return askBackup(shortThread, 'list', { backups, own: { backupId, uuid } }, patienceFor(0));
      },
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
      'backups.setFolder': async ({ folder: typed }) => {
        await folder.choose(typed);
        const isBackedUp = await makeFirstThere();
        return { ...(await state()), isBackedUp };
      },
    } satisfies Partial<Commands>,
    /** Waits for the backup that is being made. */
    close: async (): Promise<void> => {
      clearInterval(timer);
      clearTimeout(beginning);
      await idle();
    },
  };
}
export type Backups = ReturnType<typeof createBackups>;

/**
 * @returns what the first came to that works, and why one before did not
 * @throws what the first threw, where none works
 */
async function firstThatWorks<T, R>(
  all: readonly T[],
  work: (each: T) => Promise<R>,
): Promise<{ made: R; failure: unknown }> {
  let failure: unknown;
  for (const each of all) {
    try {
      return { made: await work(each), failure };
    } catch (error) {
      failure ??= error;
    }
  }
  throw failure;
}
