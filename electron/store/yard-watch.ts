import { type BigIntStats, closeSync, fstatSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
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

type Found = Pick<BigIntStats, 'dev' | 'ino' | 'size' | 'mtimeNs'>;

/**
 * Watches an open yard file and its WAL. By their paths alone: see `makePrivateFile`. As long as a file is open, no other
 * gets its number. Only our own checkpoints write to the file, and only they make the WAL smaller: `settle` follows each.
 */
export function watchYard(file: string, db: Db) {
  const walFile = `${file}-wal`;
  let main: Found = statSync(file, { bigint: true });
  let wal = statOf(walFile);
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
    wal = found;
    return null;
  }

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
      if (isOther) spoiled = { what: 'file', how: found.size < main.size ? 'cut' : 'overwritten' };
      else spoiled = { what: 'changes', how: 'cut' };
      return 'spoiled';
    }
    main = found;
    return lossOfWal;
  }

  /** What happened, where there is a loss. A file that is not at its path was deleted or moved. */
  function happened(): Happened {
    if (spoiled) return spoiled;
    const found = statOf(file);
    const isAtPath = found !== null && found !== 'unreachable' && isSame(found, main);
    const there = isAtPath ? statOf(walFile) : found;
    return { what: isAtPath ? 'changes' : 'file', how: there === null ? 'deleted' : 'replaced' };
  }

  /** Whether file and WAL hold, page by page, what SQLite has. */
  function isAsHeld(found: Found): boolean {
    if (found.size < main.size) return false;
    try {
      return isHeldIn(file);
    } catch {
      return false;
    }
  }

  function isHeldIn(path: string): boolean {
    const pageSize = Number(db.pragma('page_size', { simple: true }));
    const held = db.serialize();
    const inFile = Buffer.alloc(held.length);
    opened ??= openSync(path, 'r');
    if (fstatSync(opened, { bigint: true }).ino !== main.ino) return false;
    readSync(opened, inFile, 0, inFile.length, 0);
    const read = statOf(walFile) === null ? null : readWal(readFileSync(walFile));
    const inWal = new Set(read?.frames.slice(0, read.committed).map(({ pageNumber }) => pageNumber));
    for (let at = 0; at < held.length; at += pageSize) {
      if (inWal.has(at / pageSize + 1)) continue;
      if (!held.subarray(at, at + pageSize).equals(inFile.subarray(at, at + pageSize))) return false;
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
      walLoss();
      return wal === null || wal === 'unreachable' ? 0 : Number(wal.size);
    },
    /** After a checkpoint of ours. */
    settle: (): void => {
      const found = statOf(file);
      if (found !== null && found !== 'unreachable' && isSame(found, main)) main = found;
      wal = statOf(walFile);
    },
    /** How long the file was when it was last as it should be, bytes. */
    size: (): number => Number(main.size),
    /** Once SQLite has closed the file. */
    end: (): void => {
      if (opened !== null) closeSync(opened);
      opened = null;
    },
  };
}

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
