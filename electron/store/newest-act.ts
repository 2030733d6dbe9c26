import { closeSync, constants, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { z } from 'zod';
import { type Db, isFileOrFree } from './yard-file.ts';

const newestActSchema = z.object({
  /** Of the yard: another one, as a backup, may take the file's place. */
  yard: z.uuid(),
  uuid: z.uuid(),
  /** Its number in the file. */
  id: z.number().int(),
  /** UTC instant, ISO 8601. */
  at: z.iso.datetime(),
  /** The number of the newest reading in the file. */
  reading: z.number().int().default(0),
});

/** Changes that a yard file had when it was last used, and has no more. */
interface MissingActs {
  acts: number;
  /** When the newest of them was made, UTC, ISO 8601. */
  newestAt: string;
}

const besideOf = (file: string): string => `${file}-newest`;

/** Of the text beside the file, filled up with spaces; more than its fields ever take. */
const LENGTH = 256;

/**
 * Writes the newest act of a yard file beside it. SQLite keeps new commits in a WAL beside it; where that is lost, the
 * file alone looks sound. Not synced, and where it cannot be written nothing fails: it then remembers an earlier act.
 * Written over what is there, at one length: a file that is emptied first takes the disk as long as a commit.
 */
export function rememberingNewestAct(file: string, db: Db): () => void {
  const select = db.prepare<[], { uuid: string }>(
    `SELECT y.uuid AS yard, a.uuid, a.id, a.at, (SELECT coalesce(max(id), 0) FROM reading) AS reading
     FROM act a, yard y ORDER BY a.id DESC LIMIT 1`,
  );
  let uuid: string | undefined;
  return () => {
    const newest = select.get();
    // As after a further slice of a long one.
    if (newest === undefined || newest.uuid === uuid) return;
    try {
      if (!isFileOrFree(besideOf(file))) return;
      writeOver(besideOf(file), JSON.stringify(newest).padEnd(LENGTH));
      uuid = newest.uuid;
    } catch {
      // An act that is saved must not fail for this.
    }
  };
}

function writeOver(path: string, text: string): void {
  const beside = openSync(path, constants.O_WRONLY | constants.O_CREAT, 0o600);
  try {
    writeSync(beside, text, 0);
  } finally {
    closeSync(beside);
  }
}

/** Forgets it, as where an earlier state of the yard takes the file's place. */
export function forgetNewestAct(file: string): void {
  rmSync(besideOf(file), { force: true });
}

/** Which acts the file had and lost; null where none is missing, or none was remembered. */
export function missingActs(file: string, db: Db): MissingActs | null {
  const newest = remembered(file);
  if (newest === null) return null;
  if (db.prepare('SELECT uuid FROM yard').pluck().get() !== newest.yard) return null;
  if (db.prepare('SELECT 1 FROM act WHERE uuid = ?').get(newest.uuid) !== undefined) return null;
  const last = Number(db.prepare('SELECT coalesce(max(id), 0) FROM act').pluck().get());
  return { acts: Math.max(1, newest.id - last), newestAt: newest.at };
}

/**
 * How many of the newest readings that a damaged file had are not in what was saved of it. Those lost in between are not
 * counted.
 * @param saved  the new file
 */
export function missingNewestReadings(file: string, saved: Db): number {
  const last = Number(saved.prepare('SELECT coalesce(max(id), 0) FROM reading').pluck().get());
  return Math.max(0, (remembered(file)?.reading ?? 0) - last);
}

/** When the newest act of a file was made, as remembered beside it; null where none was. */
export const newestActAt = (file: string): string | null => remembered(file)?.at ?? null;

function remembered(file: string): z.infer<typeof newestActSchema> | null {
  try {
    if (!isFileOrFree(besideOf(file))) return null;
    return newestActSchema.parse(JSON.parse(readFileSync(besideOf(file), 'utf8')));
  } catch {
    return null;
  }
}
