import { randomUUID } from 'node:crypto';
import { copyFileSync, existsSync, mkdtempSync, renameSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openYard } from '../../../electron/store/yard.ts';

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'pintally-app-'));

/**
 * A new data folder with a yard file as the app makes it. All migrations take a tenth of a second: the first test of a run
 * makes the file, and all others have copies of it, each with a UUID of its own.
 */
export function folderWithNewYard(): string {
  const dataDir = newFolder();
  const file = join(dataDir, 'yard.sqlite');
  const shared = process.env.PINTALLY_NEW_YARD;
  if (shared === undefined) return dataDir;
  if (!existsSync(shared)) {
    openYard(file).close();
    // Another test may do the same: whichever is last, its file is whole.
    copyFileSync(file, `${file}-copy`);
    renameSync(`${file}-copy`, shared);
    return dataDir;
  }
  copyFileSync(shared, file);
  const db = new Database(file);
  db.pragma('synchronous = OFF');
  db.prepare('UPDATE yard SET uuid = ?').run(randomUUID());
  db.close();
  return dataDir;
}
