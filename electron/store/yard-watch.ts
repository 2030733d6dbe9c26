import { type BigIntStats, closeSync, fstatSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import { copyWal } from './wal-copy.ts';
import { readWal } from './wal-frames.ts';
import type { Db } from './yard-file.ts';

/** What happened to an open yard file from outside. */
export type Loss =
  /** It was deleted, renamed or replaced: SQLite still has the whole file open. */
  | 'moved'
  /** Its WAL was. All is still there: SQLite has the WAL open. */
  | 'wal-moved'
  /** It or its WAL was emptied, cut short or overwritten: SQLite has what it read or wrote lately. */
  | 'spoiled';

/** What a person reads of a loss: to the yard file, or to the WAL with its last changes. */
export interface Happened {
  what: 'file' | 'changes';
  how: 'deleted' | 'replaced' | 'cut' | 'overwritten';
}

type Found = Pick<BigIntStats, 'dev' | 'ino' | 'size' | 'mtimeNs' | 'ctimeNs'>;

/**
 * Watches an open yard file and its WAL. By their paths alone: see `makePrivateFile`. As long as a file is open, no other
 * gets its number. Only our own checkpoints write to the file, and only they make the WAL smaller: `settle` follows each.
 */
export function watchYard(file: string, db: Db) {
  const walFile = `${file}-wal`;
  let main: Found = statSync(file, { bigint: true });
  let wal = statOf(walFile);
  const walCopy = copyWal(walFile);
  let spoiled: Happened | null = null;
  /** Stays open as long as SQLite has the file open: to close it would drop SQLite's locks. */
  let opened: number | null = null;

  function isSuspect(): boolean {
    if (spoiled) return true;
    const found = statOf(file);
    if (found === 'unreachable') return false;
    if (found === null || !isSame(found, main)) return true;
    if (found.size !== main.size || found.mtimeNs !== main.mtimeNs) return true;
    return walLoss() !== null;
  }

  function walLoss(): Loss | null {
    const found = statOf(walFile);
    if (wal === null || wal === 'unreachable') wal = found;
    if (wal === null || wal === 'unreachable' || found === 'unreachable') return null;
    if (found === null || !isSame(found, wal)) return 'wal-moved';
    if (found.size < wal.size) return 'spoiled';
    if (isChanged(found, wal)) {
      if (!walCopy.isThere()) return 'spoiled';
      follow(found);
    }
    return null;
  }

  /** The WAL has grown by commits of ours. */
  function follow(found: Found): void {
    wal = found;
    if (!walCopy.follow()) spoiled = { what: 'changes', how: 'overwritten' };
  }

  const isWalCut = (): boolean => {
    const found = statOf(walFile);
    return isKnown(found) && isKnown(wal) && found.size < wal.size;
  };

  /** Not to be called within a transaction, whose pages are in no file yet. */
  function loss(): Loss | null {
    if (!isSuspect()) return null;
    if (spoiled) return 'spoiled';
    const found = statOf(file);
    if (found === 'unreachable') return null;
    if (found === null || !isSame(found, main)) return 'moved';
    const lossOfWal = walLoss();
    const isOther = found.size !== main.size || found.mtimeNs !== main.mtimeNs;
    // The time alone may be another: a file system may write it down late.
    if (lossOfWal === 'spoiled' || (isOther && (lossOfWal !== null || !isAsHeld(found)))) {
      if (lossOfWal === 'spoiled' && isBroughtIn(found)) {
        settle();
        return null;
      }
      if (isOther) spoiled = { what: 'file', how: found.size < main.size ? 'cut' : 'overwritten' };
      else spoiled = { what: 'changes', how: isWalCut() ? 'cut' : 'overwritten' };
      return 'spoiled';
    }
    main = found;
    return lossOfWal;
  }

  /** Whether another program brought all of the WAL into the file, and emptied it: nothing is lost. */
  function isBroughtIn(found: Found): boolean {
    const pages = walCopy.pages();
    const wal = statOf(walFile);
    if (pages === null || !isKnown(wal) || wal.size > 0) return false;
    const isPageIn = ([number, page]: [number, Buffer]): boolean => {
      const inFile = Buffer.alloc(page.length);
      readSync(fileOpened(), inFile, 0, page.length, (number - 1) * page.length);
      return inFile.equals(page);
    };
    return [...pages].every(isPageIn) && isAsHeld(found);
  }

  function settle(): void {
    const found = statOf(file);
    if (isKnown(found) && isSame(found, main)) main = found;
    wal = statOf(walFile);
    walCopy.follow();
  }

  function fileOpened(): number {
    opened ??= openSync(file, 'r');
    return opened;
  }

  /** What happened, where there is a loss. A file that is not at its path was deleted or moved. */
  function happened(): Happened {
    if (spoiled) return spoiled;
    const found = statOf(file);
    const isAtPath = isKnown(found) && isSame(found, main);
    const there = isAtPath ? statOf(walFile) : found;
    return { what: isAtPath ? 'changes' : 'file', how: there === null ? 'deleted' : 'replaced' };
  }

  /** Whether file and WAL hold, page by page, what SQLite has. */
  function isAsHeld(found: Found): boolean {
    if (found.size < main.size) return false;
    try {
      return isHeld();
    } catch {
      return false;
    }
  }

  function isHeld(): boolean {
    const pageSize = Number(db.pragma('page_size', { simple: true }));
    const held = db.serialize();
    const inFile = Buffer.alloc(held.length);
    if (fstatSync(fileOpened(), { bigint: true }).ino !== main.ino) return false;
    readSync(fileOpened(), inFile, 0, inFile.length, 0);
    const read = statOf(walFile) === null ? null : readWal(readFileSync(walFile));
    const inWal = new Set(read?.frames.slice(0, read.committed).map(({ pageNumber }) => pageNumber));
    for (let at = 0; at < held.length; at += pageSize) {
      if (inWal.has(at / pageSize + 1)) continue;
      const page = inFile.subarray(at, at + pageSize);
      if (!held.subarray(at, at + pageSize).equals(page)) return false;
      // Of a large file, SQLite has only some pages: the others it reads from what is there now.
      if (walCopy.isOther(at / pageSize + 1, page)) return false;
    }
    return true;
  }

  return {
    /** Cheap, and asked before each commit: whether `loss` has to be. */
    isSuspect,
    loss,
    happened,
    /**
     * After each commit of ours, which makes the WAL longer: one that is emptied before the next is then shorter.
     * @returns its length, bytes
     */
    committed: (): number => {
      const found = statOf(walFile);
      if (!isKnown(found)) return 0;
      // Where it is another, or shorter, the next check finds that.
      if (!isKnown(wal) || (isSame(found, wal) && found.size >= wal.size)) follow(found);
      return Number(found.size);
    },
    /** After a checkpoint of ours. */
    settle,
    /** The pages of the WAL as they were written, also where it was overwritten since. */
    walPages: (): ReadonlyMap<number, Buffer> => walCopy.pages() ?? new Map(),
    /** How long the WAL was after our last commit or checkpoint, bytes. */
    walBytes: (): number => (isKnown(wal) ? Number(wal.size) : 0),
    /** How long the file was when it was last as it should be, bytes. */
    size: (): number => Number(main.size),
    /** Once SQLite has closed the file. */
    end: (): void => {
      if (opened !== null) closeSync(opened);
      opened = null;
    },
  };
}

const isKnown = (found: Found | null | 'unreachable'): found is Found =>
  found !== null && found !== 'unreachable';

const isChanged = (one: Found, other: Found): boolean =>
  one.size !== other.size || one.mtimeNs !== other.mtimeNs || one.ctimeNs !== other.ctimeNs;

const isSame = (one: Found, other: Found): boolean => one.dev === other.dev && one.ino === other.ino;

/** Null where nothing is there. A share that cannot be reached for a moment is not a file that is gone. */
function statOf(path: string): Found | null | 'unreachable' {
  try {
    return statSync(path, { bigint: true });
  } catch (error) {
    const { code = '' } = error as NodeJS.ErrnoException;
    return ['ENOENT', 'ENOTDIR'].includes(code) ? null : 'unreachable';
  }
}
