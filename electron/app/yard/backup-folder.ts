import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { z } from 'zod';
import { type Restored, restoredSchema } from '../../../shared-core/contract/backups.ts';
import { UNKNOWN_YARD } from '../../store/backup-name.ts';
import { type BackupFile, backupsIn, writeWhole } from '../../store/backup-place.ts';
import { askBackup, type BackupThread, Unanswered } from './backup-tasks.ts';

/** What must be known of the own yard where its file cannot be read. */
const lastYardSchema = z.object({
  /** Under which its backups belong together. */
  backupId: z.string(),
  uuid: z.uuid(),
  /** Its last restore, which can be undone. */
  restored: restoredSchema.nullable(),
});
type LastYard = z.infer<typeof lastYardSchema>;

const choiceSchema = z.object({
  folder: z.string().nullable(),
  mark: z.uuid().nullable(),
  /** The highest number of a backup there, which is not always there to be looked up. */
  highest: z.number().int().default(0),
  /** Why the newest backup is not there; null where it is. */
  insteadFor: z.enum(['away', 'full']).nullable().default(null).catch(null),
  lastYard: lastYardSchema.nullable().default(null).catch(null),
});
type FolderChoice = z.infer<typeof choiceSchema>;
export type Instead = NonNullable<FolderChoice['insteadFor']>;
const NO_FOLDER = { folder: null, mark: null };
const NO_CHOICE: FolderChoice = { ...NO_FOLDER, highest: 0, insteadFor: null, lastYard: null };

/** Where backups may go and are, as found just now. */
interface BackupPlaces {
  /** The best first. */
  toWriteTo: string[];
  /** The chosen folder, where it is there. */
  elsewhere: string | null;
  backups: BackupFile[];
  /** The chosen folder cannot be written to now. */
  isAway: boolean;
}

/**
 * Where backups go: a folder of the person's choice, or one beside the yard. The choice is saved beside the yard file and
 * not in it, so that a damaged yard does not lose it. A chosen folder may be on a disk that never answers: only the
 * thread touches it. The one beside the yard is on the yard's own disk.
 */
export function createBackupFolder(dataDir: string, thread: BackupThread, answerMs: number) {
  const usual = join(dataDir, 'backups');
  const choiceFile = join(dataDir, 'backups.json');
  let choice = readChoice(choiceFile);
  /** The chosen folder whose disk did not answer. It is left alone until that does. */
  let silent: string | null = null;

  function save(next: FolderChoice): void {
    choice = next;
    writeWhole(choiceFile, JSON.stringify(choice));
  }

  const backupsHere = (): BackupFile[] => [usual, dataDir].flatMap(backupsIn);

  function rememberYard(lastYard: LastYard): void {
    if (isDeepStrictEqual(lastYard, choice.lastYard)) return;
    try {
      save({ ...choice, lastYard });
    } catch {
      // On a full disk, say: the next opening saves it.
    }
  }

  function rememberOf(changed: Pick<LastYard, 'restored'>): void {
    if (choice.lastYard !== null) rememberYard({ ...choice.lastYard, ...changed });
  }

  function leaveAlone(folder: string, { ended }: Unanswered): void {
    silent = folder;
    void ended.then(() => {
      if (silent === folder) silent = null;
    });
  }

  /** The backups in the chosen folder; null where it is away. */
  async function chosenBackups(): Promise<BackupFile[] | null> {
    const { folder, mark } = choice;
    if (folder === null || mark === null || folder === silent) return null;
    try {
      if (!(await askBackup(thread, 'isThere', { folder, mark }, answerMs))) return null;
      return await askBackup(thread, 'find', { folder }, answerMs);
    } catch (error) {
      if (!(error instanceof Unanswered)) throw error;
      leaveAlone(folder, error);
      return null;
    }
  }

  return {
    usual,
    chosen: (): string | null => choice.folder,
    /** Why the newest backup is not in the chosen folder; null where it is, or none is chosen. */
    insteadFor: (): Instead | null => choice.insteadFor,
    /** Beside the yard file: there a backup goes before an update where the usual folder does not take it. */
    beside: dataDir,
    places: async (): Promise<BackupPlaces> => {
      const { folder } = choice;
      const here = backupsHere();
      const there = await chosenBackups();
      if (folder === null || there === null) {
        return { toWriteTo: [usual], elsewhere: null, backups: here, isAway: folder !== null };
      }
      return { toWriteTo: [folder, usual], elsewhere: folder, backups: [...there, ...here], isAway: false };
    },
    /** The highest number of any backup, as far as it can be known at once. */
    highest: (): number => Math.max(choice.highest, ...backupsHere().map(({ number }) => number)),
    /**
     * A backup with this number was made.
     * @param insteadFor  why it did not go to the chosen folder; null where it did
     */
    made: (number: number, insteadFor: Instead | null): void => {
      if (choice.folder === null) return;
      save({ ...choice, highest: Math.max(choice.highest, number), insteadFor });
    },
    /**
     * Under which the backups of the own yard belong together, also where it cannot be read; null where nothing says it.
     * The folder beside it has those of no other.
     */
    backupId: (): string | null => choice.lastYard?.backupId ?? onlyYardIn(backupsHere()),
    /** The own yard as it was when it was last open; null where it never was. */
    lastYard: (): LastYard | null => choice.lastYard,
    /** The own yard was opened. */
    rememberYard,
    /** A restore was done, which can be undone. */
    rememberRestored: (restored: Restored): void => rememberOf({ restored }),
    /** It was undone. */
    forgetRestored: (): void => rememberOf({ restored: null }),
    /** Leaves a folder alone until its disk answers: a backup could not be written there. */
    leaveAlone,
    /**
     * Takes another folder, which is made where there is none; null for the usual one.
     * @throws Refusal where it cannot be written to
     */
    choose: async (typed: string | null): Promise<void> => {
      const taken = typed && (await askBackup(thread, 'take', { typed, usual }, answerMs));
      save({ ...choice, insteadFor: null, ...(taken || NO_FOLDER) });
    },
  };
}
export type BackupFolder = ReturnType<typeof createBackupFolder>;

/** Null where there are backups of several, or of none that is known. */
function onlyYardIn(backups: readonly BackupFile[]): string | null {
  const ids = new Set(backups.map(({ yardId }) => yardId).filter((yardId) => yardId !== UNKNOWN_YARD));
  const [only] = ids;
  return ids.size === 1 && only !== undefined ? only : null;
}

function readChoice(file: string): FolderChoice {
  try {
    return choiceSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    return NO_CHOICE;
  }
}
