import { existsSync, readFileSync, realpathSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { z } from 'zod';
import { type Message, message } from '../../shared-core/words/message.ts';
import { makePrivateFile } from './private-files.ts';
import { isFileOrFree, nameTaken, refuseTaken, YardFileProblem } from './yard-file.ts';

/** Which Pintally has a yard file open: the window of the desktop app, or the host that a browser shows. */
const ownerSchema = z.object({
  program: z.enum(['window', 'host']),
  processId: z.number().int().positive(),
  computerName: z.string().min(1).max(255),
  openedAt: z.iso.datetime(),
});

export interface YardLock {
  /**
   * Who has the yard by now; null as long as this process has. A lock whose file was deleted or replaced keeps nobody out:
   * it is taken back, unless another Pintally came first.
   */
  taken(): YardFileProblem | null;
  /** Whether it had to be taken back: another Pintally may have had the yard in between. */
  wasLost(): boolean;
  release(): void;
}

/** A database that nothing refers to is closed at some time, and its lock is gone. */
const held = new Set<Database.Database>();

/** A Pintally that is just closing is given so long. */
const WAIT_MS = 500;

/**
 * Takes a yard file for this process, until `release` or until the process ends, however it ends: the lock is one of
 * SQLite's on an empty file beside. The yard file itself can still be read by others.
 * @throws YardFileProblem  where another process has it: which one; where it cannot be locked: why
 */
export function lockYard(file: string, now: string): YardLock {
  // By whatever name it is opened, it has one lock.
  const named = realPathOf(file);
  refuseSecondName(named);
  const lockFile = `${named}-lock`;
  refuseTaken(lockFile, named);
  const ownerFile = `${named}-owner.json`;
  let locked = takeLock(lockFile, ownerFile, named);
  writeOwner(ownerFile, now);
  let wasLost = false;
  let taken: YardFileProblem | null = null;

  function takeBack(): void {
    try {
      const lost = locked;
      locked = takeLock(lockFile, ownerFile, named);
      close(lost);
      wasLost = true;
      writeOwner(ownerFile, now);
    } catch (error) {
      // Where it cannot be made, as in a folder that is gone, nobody else can make it either.
      if (error instanceof YardFileProblem && isOwned(error)) taken = error;
    }
  }

  return {
    taken: () => {
      if (taken === null && !isAtPath(lockFile, locked)) takeBack();
      return taken;
    },
    wasLost: () => wasLost,
    release: () => {
      // Another's says who that is.
      if (isAtPath(lockFile, locked)) removeOwner(ownerFile);
      close(locked);
    },
  };
}

interface Locked {
  db: Database.Database;
  /** Of the lock's file. */
  dev: bigint;
  ino: bigint;
}

function takeLock(lockFile: string, ownerFile: string, file: string): Locked {
  let db: Database.Database | undefined;
  try {
    makePrivateFile(lockFile);
    db = new Database(lockFile, { timeout: WAIT_MS });
    // Nothing is ever written to the lock file, so that no kill can leave a journal of it.
    db.pragma('journal_mode = MEMORY');
    db.exec('BEGIN EXCLUSIVE');
    held.add(db);
    const { dev, ino } = statSync(lockFile, { bigint: true });
    return { db, dev, ino };
  } catch (error) {
    db?.close();
    const code = String((error as { code?: unknown }).code ?? '');
    if (code.startsWith('SQLITE_BUSY')) throw new YardFileProblem(ownedBy(ownerFile, file), false);
    if (code.startsWith('SQLITE_NOTADB')) throw nameTaken(lockFile, file);
    throw new YardFileProblem(message('refusal.yard-unreadable', { file }), false);
  }
}

function close({ db }: Locked): void {
  held.delete(db);
  db.close();
}

/** A share that cannot be reached for a moment has not lost its files. */
function isAtPath(lockFile: string, { dev, ino }: Locked): boolean {
  try {
    const found = statSync(lockFile, { bigint: true });
    return found.dev === dev && found.ino === ino;
  } catch (error) {
    return !['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '');
  }
}

/** Also of a file that is not there yet. */
function realPathOf(file: string): string {
  if (existsSync(file)) return realpathSync(file);
  return existsSync(dirname(file)) ? join(realpathSync(dirname(file)), basename(file)) : file;
}

/** Under its other name it would have another lock. */
function refuseSecondName(file: string): void {
  const found = statSync(file, { throwIfNoEntry: false });
  if (found?.isFile() && found.nlink > 1) {
    throw new YardFileProblem(message('refusal.yard-two-names', { file }), false);
  }
}

/** Whether the problem of a yard is that another Pintally, or another program, has it. */
export const isOwned = ({ problem }: YardFileProblem): boolean =>
  problem.code === 'refusal.yard-owned' || problem.code === 'refusal.yard-in-use';

function writeOwner(ownerFile: string, now: string): void {
  const owner: z.infer<typeof ownerSchema> = {
    program: process.versions.electron === undefined ? 'host' : 'window',
    processId: process.pid,
    computerName: hostname(),
    openedAt: now,
  };
  try {
    removeOwner(ownerFile);
    makePrivateFile(ownerFile);
    writeFileSync(ownerFile, JSON.stringify(owner));
  } catch {
    // On a full disk, say: the yard is ours all the same, and another Pintally says that somebody has it.
  }
}

function removeOwner(ownerFile: string): void {
  try {
    rmSync(ownerFile, { force: true });
  } catch {
    // Its folder may be gone.
  }
}

function ownedBy(ownerFile: string, file: string): Message {
  try {
    if (!isFileOrFree(ownerFile)) return message('refusal.yard-in-use', { file });
    const { program, processId, computerName, openedAt } = ownerSchema.parse(
      JSON.parse(readFileSync(ownerFile, 'utf8')),
    );
    return message('refusal.yard-owned', {
      file,
      program,
      processId: String(processId),
      computerName,
      openedAt,
    });
  } catch {
    // Whoever has it could not write down who it is, or is about to.
    return message('refusal.yard-in-use', { file });
  }
}
