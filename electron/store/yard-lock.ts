import { existsSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import Database from 'better-sqlite3';
import { z } from 'zod';
import { type Message, message } from '../../shared-core/words/message.ts';
import { makePrivateFile } from './private-files.ts';
import { YardFileProblem } from './yard-file.ts';

/** Which Pintally has a yard file open: the window of the desktop app, or the host that a browser shows. */
const ownerSchema = z.object({
  program: z.enum(['window', 'host']),
  processId: z.number().int().positive(),
  computerName: z.string().min(1).max(255),
  openedAt: z.iso.datetime(),
});

export interface YardLock {
  release(): void;
}

/** A database that nothing refers to is closed at some time, and its lock is gone. */
const held = new Set<Database.Database>();

/** A Pintally that is just closing is given so long. */
const WAIT_MS = 500;

/**
 * Takes a yard file for this process, until `release` or until the process ends, however it ends: the lock is one of
 * SQLite's on an empty file beside. The yard file itself can still be read by others.
 * @throws YardFileProblem  where another process has it: which one
 */
export function lockYard(file: string, now: string): YardLock {
  // By whatever name it is opened, it has one lock.
  const named = existsSync(file) ? realpathSync(file) : file;
  const lockFile = `${named}-lock`;
  const ownerFile = `${named}-owner.json`;
  let db: Database.Database | undefined;
  try {
    makePrivateFile(lockFile);
    db = new Database(lockFile, { timeout: WAIT_MS });
    // Nothing is ever written to the lock file, so that no kill can leave a journal of it.
    db.pragma('journal_mode = MEMORY');
    db.exec('BEGIN EXCLUSIVE');
    writeOwner(ownerFile, now);
  } catch (error) {
    db?.close();
    if (String((error as { code?: unknown }).code ?? '').startsWith('SQLITE_BUSY')) {
      throw new YardFileProblem(ownedBy(ownerFile, file), false);
    }
    throw new YardFileProblem(message('refusal.yard-unreadable', { file }), false);
  }
  const locked = db;
  held.add(locked);
  return {
    release: () => {
      held.delete(locked);
      try {
        rmSync(ownerFile, { force: true });
      } catch {
        // Its folder may be gone.
      }
      locked.close();
    },
  };
}

function writeOwner(ownerFile: string, now: string): void {
  const owner: z.infer<typeof ownerSchema> = {
    program: process.versions.electron === undefined ? 'host' : 'window',
    processId: process.pid,
    computerName: hostname(),
    openedAt: now,
  };
  rmSync(ownerFile, { force: true });
  makePrivateFile(ownerFile);
  writeFileSync(ownerFile, JSON.stringify(owner));
}

function ownedBy(ownerFile: string, file: string): Message {
  try {
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
