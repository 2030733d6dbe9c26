import { randomUUID } from 'node:crypto';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { bringBuiltInUpToDate } from '../../../electron/app/yard/built-in.ts';
import { openYard } from '../../../electron/store/yard.ts';

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'pintally-app-'));

/**
 * A new data folder with a yard file as the app makes it, with what is built in. All migrations take a tenth of a second:
 * the first test of a run makes the file, and all others have copies of it, each with a UUID of its own.
 */
export function folderWithNewYard(): string {
  const dataDir = newFolder();
  const file = join(dataDir, 'yard.sqlite');
  const shared = process.env.PINTALLY_NEW_YARD;
  if (shared === undefined || !existsSync(shared)) {
    makeNewYard(file);
    if (shared === undefined) return dataDir;
    // Another test may do the same: whichever is last, its file is whole.
    copyFileSync(file, `${file}-copy`);
    renameSync(`${file}-copy`, shared);
    return dataDir;
  }
  sharedYard ??= readShared(shared);
  // To open each copy takes as long as to read a small one whole.
  const bytes = Buffer.from(sharedYard.bytes);
  const own = randomUUID();
  for (let at = bytes.indexOf(sharedYard.uuid); at >= 0; at = bytes.indexOf(sharedYard.uuid, at)) {
    bytes.write(own, at, 'latin1');
  }
  writeFileSync(file, bytes);
  return dataDir;
}

let sharedYard: { bytes: Buffer; uuid: string } | undefined;

function readShared(file: string): { bytes: Buffer; uuid: string } {
  const db = new Database(file, { readonly: true });
  const uuid = db.prepare('SELECT uuid FROM yard').pluck().get() as string;
  db.close();
  return { bytes: readFileSync(file), uuid };
}

function makeNewYard(file: string): void {
  const yard = openYard(file);
  bringBuiltInUpToDate(yard);
  yard.close();
}
