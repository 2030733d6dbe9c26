import { randomUUID } from 'node:crypto';
import { accessSync, constants, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, isAbsolute, join, resolve } from 'node:path';
import { z } from 'zod';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { message } from '../../../shared-core/words/message.ts';
import { syncFile, syncFolder } from '../../store/durable-files.ts';
import { makePrivateFolder } from '../../store/private-files.ts';

const choiceSchema = z.object({ folder: z.string().nullable(), mark: z.uuid().nullable() });
type FolderChoice = z.infer<typeof choiceSchema>;
const NO_CHOICE: FolderChoice = { folder: null, mark: null };
/** Lies in the chosen folder: an empty folder where a disk is usually mounted is not that disk. */
const MARK = '.pintally-backups';

/**
 * Where backups go: a folder of the person's choice, or one beside the yard. The choice is saved beside the yard file and
 * not in it, so that a damaged yard does not lose it.
 */
export function createBackupFolder(dataDir: string) {
  const usual = join(dataDir, 'backups');
  const choiceFile = join(dataDir, 'backups.json');
  let choice = readChoice(choiceFile);

  /** Whether the chosen folder is there and can be written to now. */
  function isThere({ folder, mark }: FolderChoice): boolean {
    if (folder === null) return false;
    try {
      accessSync(folder, constants.W_OK);
      return readFileSync(join(folder, MARK), 'utf8').trim() === mark;
    } catch {
      return false;
    }
  }

  return {
    usual,
    chosen: (): string | null => choice.folder,
    isAway: (): boolean => choice.folder !== null && !isThere(choice),
    /** Where a backup may go, the best first. */
    toWriteTo: (): string[] => (isThere(choice) ? [choice.folder as string, usual] : [usual]),
    /** Where backups may be. */
    toReadFrom: (): string[] => (choice.folder === null ? [usual] : [choice.folder, usual]),
    /**
     * Takes another folder, which is made where there is none; null for the usual one.
     * @throws Refusal where it cannot be written to
     */
    choose(folder: string | null): void {
      choice = folder === null ? NO_CHOICE : { folder: made(folder), mark: marked(folder) };
      writeWhole(choiceFile, JSON.stringify(choice));
    },
  };
}
export type BackupFolder = ReturnType<typeof createBackupFolder>;

function readChoice(file: string): FolderChoice {
  try {
    return choiceSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    return NO_CHOICE;
  }
}

function made(typed: string): string {
  if (!isAbsolute(typed)) throw new Refusal(message('refusal.backup-folder-relative'));
  const folder = resolve(typed);
  try {
    makePrivateFolder(folder);
    return folder;
  } catch {
    throw new Refusal(message('refusal.backup-folder-refused', { folder }));
  }
}

/** @returns the mark of the folder, of which several yards may have one */
function marked(folder: string): string {
  const file = join(folder, MARK);
  try {
    const mark = z.uuid().safeParse(readIfAny(file).trim()).data ?? randomUUID();
    // Written again in any case: that it can be written is what is to be found out.
    writeWhole(file, mark);
    return mark;
  } catch {
    throw new Refusal(message('refusal.backup-folder-refused', { folder }));
  }
}

function readIfAny(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

/** All of it or nothing, whenever the power goes. */
function writeWhole(file: string, text: string): void {
  const part = `${file}.part`;
  try {
    writeFileSync(part, text, { mode: 0o600 });
    syncFile(part);
    renameSync(part, file);
    syncFolder(dirname(file));
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}
