import {
  appendFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { SalvageReport } from '../../shared-core/contract/salvage.ts';
import { syncFile, syncFolder } from './durable-files.ts';
import { makePrivateFile, makePrivateFolder } from './private-files.ts';
import { isEmpty } from './salvage/b-tree.ts';
import { openPages } from './salvage/page-image.ts';
import { salvage } from './salvage/salvage.ts';
import { type Db, damageIn, isFileOrFree } from './yard-file.ts';

/** Where the content of a lost file is now. */
export interface Rescued {
  copy: string;
  /** What the copy has where part of the file could not be read any more; null where it has everything. */
  partial: SalvageReport | null;
}

interface Spoiled {
  /** How long the file was, bytes. */
  sizeBefore: number;
  /** What the WAL had, by the number of the page. */
  walPages: ReadonlyMap<number, Buffer>;
}

/**
 * Copies all that was committed to an open yard file, which is no longer at its path, to a new file beside where it
 * was. The lost file gets what SQLite had not yet written into it, in case somebody puts it back.
 *
 * Of a spoiled file, SQLite still has its WAL and the pages that it read or wrote lately. Where these are all, the copy
 * is whole; else what they hold is saved row by row.
 * @param spoiled  what is known of a file that was emptied, cut short or overwritten; null for any other
 * @throws where it could not be copied; `db` is then all there is
 */
export function rescue(db: Db, file: string, day: string, spoiled: Spoiled | null): Rescued {
  makePrivateFolder(dirname(file));
  // What is half made has another name.
  const unfinished = `${file}-rescuing`;
  for (const suffix of ['', '-journal', '-wal', '-shm']) rmSync(unfinished + suffix, { force: true });
  makePrivateFile(unfinished);
  let partial: SalvageReport | null = null;
  if (spoiled === null) db.prepare('VACUUM INTO ?').run(unfinished);
  else {
    const pages = pagesStillIn(db, file, spoiled);
    writeFileSync(unfinished, pages);
    if (isIncomplete(unfinished)) {
      truncateSync(unfinished);
      partial = salvagePages(pages, file, unfinished);
    }
  }
  syncFile(unfinished);
  const copy = freeName(file, day, partial === null ? '' : PART);
  rememberUndismissed(file, copy);
  renameSync(unfinished, copy);
  syncFolder(dirname(file));
  // What is left there would go into whatever file takes the lost one's place.
  if (spoiled === null) db.pragma('wal_checkpoint(TRUNCATE)');
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

/** The pages that SQLite can still give of a spoiled file, with zeros in the place of those that are gone. */
function pagesStillIn(db: Db, file: string, { sizeBefore, walPages }: Spoiled): Buffer {
  const pages = serializedAt(db, file, sizeBefore);
  for (const [number, page] of walPages) {
    const at = (number - 1) * page.length;
    if (at < pages.length) page.copy(pages, at);
  }
  return pages;
}

function serializedAt(db: Db, file: string, size: number): Buffer {
  // It gives none beyond the end of the file. Appended, zeros can never take the place of anything.
  const { size: found } = statSync(file);
  if (found >= size) return db.serialize();
  appendFileSync(file, Buffer.alloc(size - found));
  try {
    return db.serialize();
  } finally {
    truncateSync(file, found);
  }
}

/** Whether a copy of pages lacks some, or has those of two files; leaves nothing of SQLite's beside it. */
function isIncomplete(copy: string): boolean {
  if (hasHoles(copy)) return true;
  const isDamaged = damageIn(copy) !== null;
  for (const suffix of ['-wal', '-shm']) rmSync(copy + suffix, { force: true });
  return isDamaged;
}

/** Whether pages that it needs are gone. SQLite never writes those that it freed at once. */
function hasHoles(image: string): boolean {
  const pages = openPages(image);
  try {
    const free = pages.free();
    for (let number = 1; number <= pages.count; number++) {
      if (!free.has(number) && isEmpty(pages.page(number))) return true;
    }
    return pages.count === 0;
  } finally {
    pages.close();
  }
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

const undismissedOf = (file: string): string => `${file}-rescued-copies`;

function rememberUndismissed(file: string, copy: string): void {
  try {
    if (!isFileOrFree(undismissedOf(file))) return;
    appendFileSync(undismissedOf(file), `${basename(copy)}\n`, { mode: 0o600 });
  } catch {
    // The copy matters more.
  }
}

/** The rescued copies of a yard file that are there, and that nobody has dismissed the note of: their names. */
export function undismissedCopies(file: string): string[] {
  try {
    if (!isFileOrFree(undismissedOf(file))) return [];
    return readFileSync(undismissedOf(file), 'utf8')
      .split('\n')
      .filter((name) => name !== '' && existsSync(join(dirname(file), name)));
  } catch {
    return [];
  }
}

/** A person dismissed the note that names the rescued copies. */
export function forgetUndismissedCopies(file: string): void {
  rmSync(undismissedOf(file), { force: true });
}

/** Puts a rescued copy where its yard file was. */
export function putBack(copy: string, file: string): void {
  renameSync(copy, file);
  syncFolder(dirname(file));
}
