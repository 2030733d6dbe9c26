import { createHash } from 'node:crypto';
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { committedEnd, pagesOf, WAL_HEADER_BYTES } from './wal-frames.ts';

/** A WAL that grew longer is not copied until it begins again. */
const MOST_BYTES = 64 * 1024 * 1024;

/**
 * What an open yard file's WAL has of commits, in memory. By it is noticed that somebody overwrote the WAL or
 * what it brought into the file, and whether all that it had is there. SQLite locks no WAL: it can be opened and closed beside it.
 */
export function copyWal(walFile: string) {
  /** Null where it is too long. */
  let copy: Buffer | null = Buffer.alloc(0);
  /** The copy and room after it, which stays when the WAL begins again: a commit is added without copying those before it. */
  let room = Buffer.alloc(0);
  /** The pages that were brought into the file since it was opened: a sum of each, by number. */
  const broughtIn = new Map<number, string>();
  follow();

  /** Reads what was committed since. False where there is something else in its place. */
  function follow(): boolean {
    return withFile((fd, size) => {
      if (size > MOST_BYTES) {
        copy = null;
        room = Buffer.alloc(0);
        broughtIn.clear();
        return true;
      }
      const goesOn = copy !== null && copy.length > 0 && isSame(fd, copy.subarray(0, WAL_HEADER_BYTES));
      // It only begins again once all of it is in the file.
      if (!goesOn && copy !== null)
        for (const [number, page] of pagesOf(copy)) broughtIn.set(number, sumOf(page));
      const known = goesOn && copy !== null ? copy.length : 0;
      const length = Math.max(known, size);
      if (length > room.length) {
        // What is read next fills it.
        const larger = Buffer.allocUnsafeSlow(Math.min(2 * length, MOST_BYTES));
        room.copy(larger, 0, 0, known);
        room = larger;
      }
      const read = readSync(fd, room, known, length - known, known);
      const end = committedEnd(room.subarray(0, known + read), known);
      copy = room.subarray(0, end);
      return end > 0 || size === 0;
    });
  }

  function withFile(work: (fd: number, size: number) => boolean): boolean {
    let fd: number;
    try {
      fd = openSync(walFile, 'r');
    } catch {
      // Where it is gone, `watchYard` finds that.
      return true;
    }
    try {
      return work(fd, fstatSync(fd).size);
    } finally {
      closeSync(fd);
    }
  }

  return {
    follow,
    /** Whether the WAL still begins with all of it. */
    isThere: (): boolean => {
      const held = copy;
      return held === null || held.length === 0 || withFile((fd) => isSame(fd, held));
    },
    /** Whether a page that the file should have is another than the one that was brought in. */
    isOther: (number: number, page: Buffer): boolean => {
      const sum = broughtIn.get(number);
      return sum !== undefined && sum !== sumOf(page);
    },
    /** The pages as its last commit left them, by number; null where that is not known. */
    pages: (): Map<number, Buffer> | null => (copy === null ? null : pagesOf(copy)),
  };
}

const sumOf = (page: Buffer): string => createHash('sha1').update(page).digest('base64');

function isSame(fd: number, bytes: Buffer): boolean {
  const found = Buffer.allocUnsafeSlow(bytes.length);
  return readSync(fd, found, 0, found.length, 0) === found.length && found.equals(bytes);
}
