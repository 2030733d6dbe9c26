import { closeSync, copyFileSync, existsSync, fsyncSync, openSync, readFileSync, writeSync } from 'node:fs';
import { readWal } from './wal-frames.ts';

/** What was found in the WAL of a yard file that was not closed. */
export type WalState =
  /** As it was written, empty, or not there. */
  | { kind: 'sound' }
  /** Single bits were wrong, and are right again. `commits`: those that SQLite would have dropped without a word. */
  | { kind: 'repaired'; commits: number; copy: string }
  /** Commits that follow a bad place cannot be read by SQLite, which would overwrite them. The WAL is as it was. */
  | { kind: 'cut'; laterCommits: number };

/**
 * Checks a yard file's WAL before SQLite opens it. Single flipped bits are repaired, in the WAL itself; a copy of the WAL
 * as it was found is beside it. To be called while nothing in this process has the yard file open.
 */
export function repairWal(file: string): WalState {
  const walFile = `${file}-wal`;
  if (!existsSync(walFile)) return { kind: 'sound' };
  const bytes = readFileSync(walFile);
  const wal = readWal(bytes);
  if (wal === null) return { kind: 'sound' };
  if (wal.laterCommits > 0) return { kind: 'cut', laterCommits: wal.laterCommits };
  const first = Math.min(...wal.flipped.map(({ offset }) => offset));
  const isUsed = ({ offset }: { offset: number }) => offset + wal.pageSize > first;
  const commits = wal.frames
    .slice(0, wal.committed)
    .filter((frame) => frame.pagesAfterCommit > 0 && isUsed(frame)).length;
  if (wal.flipped.length === 0 || commits === 0) return { kind: 'sound' };
  const copy = freeName(`${walFile}.as-found`);
  copyFileSync(walFile, copy);
  const fd = openSync(walFile, 'r+');
  try {
    for (const { offset } of wal.flipped) writeSync(fd, wal.bytes, offset, 1, offset);
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
  return { kind: 'repaired', commits, copy };
}

function freeName(wished: string): string {
  let name = wished;
  for (let n = 2; existsSync(name); n++) name = `${wished}-${n}`;
  return name;
}
