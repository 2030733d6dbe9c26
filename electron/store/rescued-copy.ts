import {
  appendFileSync,
  existsSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { SalvageReport } from '../../shared-core/contract/salvage.ts';
import { syncFile, syncFolder } from './durable-files.ts';
import { makePrivateFile, makePrivateFolder } from './private-files.ts';
import { isEmpty } from './salvage/b-tree.ts';
import { salvage } from './salvage/salvage.ts';
import type { Db } from './yard-file.ts';

/**
 * Tells later what became of the file of a path: whether it is still the one that is there now. By its path alone: see
 * `makePrivateFile`. As long as a file is open, no other gets its number.
 */
export function watchFile(file: string) {
  const { dev, ino, size } = statSync(file, { bigint: true });
  let largest = Number(size);
  let isCut = false;

  /** A yard file never gets smaller by itself. One that was emptied holds no more than one that is gone. */
  function isThere(): boolean {
    try {
      const found = statSync(file, { bigint: true });
      if (found.dev !== dev || found.ino !== ino) return false;
      // Once it was cut it stays so: it may grow again.
      isCut ||= Number(found.size) < largest;
      largest = Math.max(largest, Number(found.size));
      return !isCut;
    } catch (error) {
      // A share that cannot be reached for a moment is not a file that is gone.
      return !['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '');
    }
  }
  return {
    isThere,
    /** How long it was before it was emptied or cut short, bytes; null where it was not. */
    sizeBeforeCut: (): number | null => (isCut ? largest : null),
  };
}

/** Where the content of a lost file is now. */
export interface Rescued {
  copy: string;
  /** What the copy has where part of the file could not be read any more; null where it has everything. */
  partial: SalvageReport | null;
}

/**
 * Copies all that was committed to an open yard file, which is no longer at its path, to a new file beside where it
 * was. The lost file gets what SQLite had not yet written into it, in case somebody puts it back.
 *
 * Of a file that was cut, SQLite still has its log and the pages that it read or wrote lately. Where these are all, the
 * copy is whole; else what they hold is saved row by row.
 * @param sizeBeforeCut  bytes; null where it was not cut
 * @throws where it could not be copied; `db` is then all there is
 */
export function rescue(db: Db, file: string, day: string, sizeBeforeCut: number | null): Rescued {
  makePrivateFolder(dirname(file));
  // What is half made has another name.
  const unfinished = `${file}-rescuing`;
  for (const suffix of ['', '-journal', '-wal', '-shm']) rmSync(unfinished + suffix, { force: true });
  makePrivateFile(unfinished);
  const pages = sizeBeforeCut === null ? null : pagesStillIn(db, file, sizeBeforeCut);
  let partial: SalvageReport | null = null;
  if (pages === null) db.prepare('VACUUM INTO ?').run(unfinished);
  else if (hasHoles(db, pages)) partial = salvagePages(pages, file, unfinished);
  else writeFileSync(unfinished, pages);
  syncFile(unfinished);
  const copy = freeName(file, day, partial === null ? '' : PART);
  renameSync(unfinished, copy);
  syncFolder(dirname(file));
  // What is left there would go into whatever file takes the lost one's place.
  if (pages === null) db.pragma('wal_checkpoint(TRUNCATE)');
  return { copy, partial };
}

/** How the name of a copy ends that has only part of its file. */
const PART = '-part';

function freeName(file: string, day: string, ending: string): string {
  const start = `${file}.rescued-${day}`;
  let copy = start + ending;
  for (let n = 2; existsSync(copy); n++) copy = `${start}-${n}${ending}`;
  return copy;
}

/** The pages that SQLite can still give of a file that was cut, with zeros in the place of the others. */
function pagesStillIn(db: Db, file: string, size: number): Buffer {
  // It gives none beyond the end of the file. Appended, zeros can never take the place of anything.
  appendFileSync(file, Buffer.alloc(Math.max(0, size - statSync(file).size)));
  return db.serialize();
}

function hasHoles(db: Db, pages: Buffer): boolean {
  const pageSize = Number(db.pragma('page_size', { simple: true }));
  for (let at = 0; at < pages.length; at += pageSize) {
    if (isEmpty(pages.subarray(at, at + pageSize))) return true;
  }
  return pages.length === 0;
}

function salvagePages(pages: Buffer, file: string, target: string): SalvageReport {
  const image = `${file}-pages`;
  rmSync(image, { force: true });
  makePrivateFile(image);
  try {
    writeFileSync(image, pages);
    return salvage(image, target);
  } finally {
    rmSync(image, { force: true });
  }
}

/** Whether a rescued copy has only part of its file. */
export const isPart = (copy: string): boolean => copy.endsWith(PART);

/** The newest rescued copy of a yard file whose path is empty; null where there is none, or a file is there. */
export function rescuedCopyOf(file: string): string | null {
  const start = `${basename(file)}.rescued-`;
  try {
    if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > 0) return null;
    const copies = readdirSync(dirname(file))
      // Not what SQLite may have made beside one.
      .filter((name) => name.startsWith(start) && /^[\d-]+(-part)?$/.test(name.slice(start.length)))
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
