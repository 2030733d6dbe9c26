import { createHash } from 'node:crypto';
import {
  closeSync,
  fstatSync,
  lstatSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  statfsSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { syncFile, syncFolder } from './durable-files.ts';
import { makePrivateFolder } from './private-files.ts';

/** Left free on the disk, so that pictures are never what keeps a reading from being saved. */
const LEAST_LEFT_BYTES = 16 * 1024 * 1024;
/** How long the file of a picture that nothing refers to any more stays, so that deleting it can be undone. */
export const UNUSED_STAYS_MS = 30 * 24 * 60 * 60_000;
const NAME = /^[0-9a-f]{64}$/;
/** Where those wait that nothing refers to. */
const UNUSED = 'unused';

/** Where the pictures of a yard file are: each file has its SHA-256 as its name. */
export const picturesBeside = (yardFile: string): string => `${yardFile}-pictures`;

/** Where the pictures of a yard's backups are, once each: beside the backups. */
export const picturesOfBackups = (folder: string, yardId: string): string =>
  join(folder, `pintally-pictures-${yardId}`);

export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const isPlainFile = (file: string): boolean => lstatSync(file, { throwIfNoEntry: false })?.isFile() ?? false;

/** The file of a picture; null where there is none. */
function find(folder: string, hash: string): string | null {
  const files = [join(folder, hash), join(folder, UNUSED, hash)];
  return files.find(isPlainFile) ?? null;
}

/** Whether a picture has a file; it may be damaged. */
export const hasPicture = (folder: string, hash: string): boolean => find(folder, hash) !== null;

/** Whether a picture is there as it was saved. */
export function checkPicture(folder: string, hash: string): 'whole' | 'missing' | 'damaged' {
  const file = find(folder, hash);
  if (file === null) return 'missing';
  return hashOf(readFileSync(file)) === hash ? 'whole' : 'damaged';
}

/** A part of a picture's file. @throws where there is none */
export function readPart(folder: string, hash: string, offset: number, most: number): Buffer {
  const opened = openSync(find(folder, hash) ?? join(folder, hash), 'r');
  try {
    const bytes = Buffer.alloc(Math.max(0, Math.min(most, fstatSync(opened).size - offset)));
    readSync(opened, bytes, 0, bytes.length, offset);
    return bytes;
  } finally {
    closeSync(opened);
  }
}

const isRoomFor = (folder: string, bytes: number): boolean => {
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize >= bytes + LEAST_LEFT_BYTES;
};

/**
 * Saves a picture under its hash; it is on disk when this returns. One that is damaged is replaced.
 * @returns false where there is no room for it
 */
export function savePicture(folder: string, bytes: Uint8Array, hash: string): boolean {
  makePrivateFolder(folder);
  const file = join(folder, hash);
  if (isPlainFile(file) && hashOf(readFileSync(file)) === hash) return true;
  if (!isRoomFor(folder, bytes.length)) return false;
  const part = `${file}.part`;
  rmSync(part, { force: true });
  try {
    writeFileSync(part, bytes, { mode: 0o600, flag: 'wx' });
    syncFile(part);
    renameSync(part, file);
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
  syncFolder(folder);
  return true;
}

/** What became of the pictures that were to be in a folder. */
export interface Copied {
  /** Those that are in it now. */
  there: number;
  /** Not whole in any of the folders they were looked for. */
  missing: number;
  /** Those that the disk had no room for. */
  noRoom: number;
}

/**
 * Copies to a folder the pictures that it lacks.
 * @param isChecked  whether what is there is read, and replaced where it is damaged; else it was checked when it came
 */
export function copyPictures(
  from: readonly string[],
  to: string,
  hashes: readonly string[],
  isChecked: boolean,
): Copied {
  const copied: Copied = { there: 0, missing: 0, noRoom: 0 };
  for (const hash of hashes) {
    if (isChecked ? checkPicture(to, hash) === 'whole' : isPlainFile(join(to, hash))) {
      copied.there++;
      continue;
    }
    const bytes = from.map((folder) => wholePicture(folder, hash)).find((found) => found !== null);
    if (bytes == null) copied.missing++;
    else if (savePicture(to, bytes, hash)) copied.there++;
    else copied.noRoom++;
  }
  return copied;
}

/** A picture as it was saved; null where it is missing or damaged. */
export function wholePicture(folder: string, hash: string): Buffer | null {
  try {
    const file = find(folder, hash);
    const bytes = file === null ? null : readFileSync(file);
    return bytes !== null && hashOf(bytes) === hash ? bytes : null;
  } catch {
    // A disk that cannot read it has lost it.
    return null;
  }
}

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
};

/**
 * Brings in order what nothing refers to: it waits in its own folder, is deleted after a month, and is brought back
 * where something refers to it again.
 */
export function tidyPictures(folder: string, used: ReadonlySet<string>, nowMs: number): void {
  const unused = join(folder, UNUSED);
  for (const name of namesIn(folder)) {
    if (name.endsWith('.part')) rmSync(join(folder, name), { force: true });
    if (!NAME.test(name) || used.has(name)) continue;
    makePrivateFolder(unused);
    renameSync(join(folder, name), join(unused, name));
    utimesSync(join(unused, name), nowMs / 1000, nowMs / 1000);
  }
  for (const name of namesIn(unused).filter((each) => NAME.test(each))) {
    const file = join(unused, name);
    if (used.has(name)) renameSync(file, join(folder, name));
    else if (nowMs - statSync(file).mtimeMs > UNUSED_STAYS_MS) rmSync(file, { force: true });
  }
}

/** Deletes the pictures of backups that are in none of them any more. */
export function dropPictures(folder: string, used: ReadonlySet<string>): void {
  for (const name of namesIn(folder)) {
    if (name.endsWith('.part') || (NAME.test(name) && !used.has(name)))
      rmSync(join(folder, name), { force: true });
  }
}

/** How much the pictures in a folder take on disk, bytes. */
export const sizeOfPictures = (folder: string): number =>
  namesIn(folder).reduce(
    (sum, name) => sum + (statSync(join(folder, name), { throwIfNoEntry: false })?.size ?? 0),
    0,
  );
