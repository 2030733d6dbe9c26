import { existsSync, readdirSync, renameSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { syncFile, syncFolder } from './durable-files.ts';
import { makePrivateFile, makePrivateFolder } from './private-files.ts';
import type { Db } from './yard-file.ts';

/**
 * Tells later whether the file of a path is still the one that is there now. By its path alone: see `makePrivateFile`.
 * As long as a file is open, no other gets its number.
 */
export function stillThere(file: string): () => boolean {
  const { dev, ino } = statSync(file, { bigint: true });
  return () => {
    try {
      const found = statSync(file, { bigint: true });
      // One that was emptied holds no more than one that is gone.
      return found.dev === dev && found.ino === ino && found.size > 0n;
    } catch (error) {
      // A share that cannot be reached for a moment is not a file that is gone.
      return !['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '');
    }
  };
}

/**
 * Copies all that was committed to an open yard file, which is no longer at its path, to a new file beside where it
 * was. The lost file gets what SQLite had not yet written into it, in case somebody puts it back.
 * @returns the new file
 * @throws where it could not be copied; `db` is then all there is
 */
export function rescue(db: Db, file: string, day: string): string {
  makePrivateFolder(dirname(file));
  let copy = `${file}.rescued-${day}`;
  for (let n = 2; existsSync(copy); n++) copy = `${file}.rescued-${day}-${n}`;
  makePrivateFile(copy);
  db.prepare('VACUUM INTO ?').run(copy);
  syncFile(copy);
  syncFolder(dirname(file));
  // What is left there would go into whatever file takes the lost one's place.
  db.pragma('wal_checkpoint(TRUNCATE)');
  return copy;
}

/** The newest rescued copy of a yard file whose path is empty; null where there is none, or a file is there. */
export function rescuedCopyOf(file: string): string | null {
  const start = `${basename(file)}.rescued-`;
  try {
    if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > 0) return null;
    const copies = readdirSync(dirname(file))
      // Not what SQLite may have made beside one.
      .filter((name) => name.startsWith(start) && /^[\d-]+$/.test(name.slice(start.length)))
      .map((name) => join(dirname(file), name));
    return copies.toSorted((a, b) => statSync(a).mtimeMs - statSync(b).mtimeMs).at(-1) ?? null;
  } catch {
    // There is no such folder, or it cannot be read.
    return null;
  }
}

/** Puts a rescued copy where its yard file was. */
export function putBack(copy: string, file: string): void {
  renameSync(copy, file);
  syncFolder(dirname(file));
}
