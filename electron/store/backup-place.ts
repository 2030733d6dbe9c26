import { randomUUID } from 'node:crypto';
import {
  accessSync,
  constants,
  lstatSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { type BackupName, readBackupName } from './backup-name.ts';
import { syncFile, syncFolder } from './durable-files.ts';
import { makePrivateFolder } from './private-files.ts';
import { typedPath } from './typed-path.ts';
import { isWithin } from './within-folder.ts';

/** A folder that a person chose for backups. */
export interface ChosenFolder {
  folder: string;
  /** What its mark says: an empty folder where a disk is usually mounted is not that disk. */
  mark: string;
}

/** A backup's file, as far as its name tells. */
export interface BackupFile extends BackupName {
  file: string;
}

/** Lies in a chosen folder. */
const MARK = '.pintally-backups';

/**
 * Makes a folder ready for backups; it is made where there is none.
 * @returns null for the usual folder, by whatever name
 * @throws Refusal where it is no folder that can be written to
 */
export function takeFolder(typed: string, usual: string): ChosenFolder | null {
  const folder = typedPath(typed);
  const there = whatIsThere(folder);
  if (!isFolder(there)) throw new Refusal(message('refusal.backup-folder-no-folder'));
  if (folder === usual || isSameFolder(folder, usual)) return null;
  if (isWithin(realpathSync(there), dirname(usual))) {
    throw new Refusal(message('refusal.backup-folder-own'));
  }
  try {
    makePrivateFolder(folder);
    const file = join(folder, MARK);
    const mark = z.uuid().safeParse(markIn(folder)).data ?? randomUUID();
    // Written again in any case: that it can be written is what is to be found out.
    writeWhole(file, mark);
    return { folder, mark };
  } catch {
    throw new Refusal(message('refusal.backup-folder-not-changed', { folder }));
  }
}

/** The folder, or the first above it that there is. */
function whatIsThere(folder: string): string {
  if (dirname(folder) === folder) return folder;
  try {
    lstatSync(folder);
    return folder;
  } catch {
    return whatIsThere(dirname(folder));
  }
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    // A link to nothing, or to itself.
    return false;
  }
}

function isSameFolder(folder: string, other: string): boolean {
  const [one, two] = [folder, other].map((each) => statSync(each, { bigint: true, throwIfNoEntry: false }));
  return one !== undefined && one.dev === two?.dev && one.ino === two.ino;
}

/** Whether a chosen folder is there and can be written to now. */
export function isThere({ folder, mark }: ChosenFolder): boolean {
  try {
    accessSync(folder, constants.W_OK);
    return markIn(folder) === mark;
  } catch {
    return false;
  }
}

/** Of plain files alone: whoever opens a pipe waits for as long as nobody writes to it. */
function markIn(folder: string): string | null {
  const file = join(folder, MARK);
  return isPlainFile(file) ? readFileSync(file, 'utf8').trim() : null;
}

const isPlainFile = (file: string): boolean => lstatSync(file, { throwIfNoEntry: false })?.isFile() ?? false;

/** The plain files in a folder that are backups by their name. Nothing where it cannot be read. */
export function backupsIn(folder: string): BackupFile[] {
  return plainFilesIn(folder).flatMap((fileName) => {
    const name = readBackupName(fileName);
    return name ? [{ ...name, file: join(folder, fileName) }] : [];
  });
}

/**
 * Removes what interrupted backups left in a folder, and nothing else. Those of other yards may be under way, on another
 * computer.
 */
export function clearLeft(folder: string, yardIds: readonly string[]): void {
  for (const name of plainFilesIn(folder)) {
    const [, whole = ''] = /^(.*)\.part(-\w+)?$/.exec(name) ?? [];
    const left = readBackupName(whole);
    if (left !== null && yardIds.includes(left.yardId)) rmSync(join(folder, name), { force: true });
  }
}

function plainFilesIn(folder: string): string[] {
  try {
    const entries = readdirSync(folder, { withFileTypes: true });
    return entries.filter((entry) => entry.isFile()).map(({ name }) => name);
  } catch {
    return [];
  }
}

/** All of it or nothing, whenever the power goes. */
export function writeWhole(file: string, text: string): void {
  const part = `${file}.part`;
  try {
    // Whatever is there is none of a person's files, and is never written through.
    rmSync(part, { force: true });
    writeFileSync(part, text, { mode: 0o600, flag: 'wx' });
    syncFile(part);
    renameSync(part, file);
    syncFolder(dirname(file));
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}
