import { lstatSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { readBackupName } from './backup-name.ts';
import { typedPath } from './typed-path.ts';
import { isWithin } from './within-folder.ts';

/** SQLite's and Pintally's own files beside a yard: never a copy's name. */
const BESIDE_A_YARD = /(-(wal|shm|journal|lock|owner\.json|newest)|\.part)$/;

/**
 * Where a copy of the yard goes.
 * @param dataDir  where Pintally has its own files
 * @returns its path without links in it, and whether another file is there
 * @throws Refusal where it would take the place of something that is no copy
 */
export function copyTarget(typed: string, dataDir: string): { target: string; isTaken: boolean } {
  const path = typedPath(typed);
  const folder = realFolder(dirname(path));
  const target = join(folder, basename(path));
  const found = lstatSync(target, { throwIfNoEntry: false });
  if (/[\\/]$/.test(typed) || dirname(path) === path || found?.isDirectory()) {
    throw new Refusal(message('refusal.copy-is-folder'));
  }
  if (isWithin(folder, dataDir)) throw new Refusal(message('refusal.copy-in-data'));
  if (readBackupName(basename(target)) || BESIDE_A_YARD.test(target)) {
    throw new Refusal(message('refusal.copy-name-reserved'));
  }
  if (found && !found.isFile()) throw new Refusal(message('refusal.copy-no-plain-file'));
  if (isInUse(target)) throw new Refusal(message('refusal.copy-in-use'));
  return { target, isTaken: found !== undefined };
}

function realFolder(folder: string): string {
  try {
    const real = realpathSync(folder);
    if (statSync(real).isDirectory()) return real;
  } catch {
    // Said below.
  }
  throw new Refusal(message('refusal.copy-no-folder', { folder }));
}

/** Whether it is, or would become, a database that a program has open, or whose last changes lie beside it. */
function isInUse(target: string): boolean {
  const sizeOf = (suffix: string) => lstatSync(target + suffix, { throwIfNoEntry: false })?.size;
  return sizeOf('-lock') !== undefined || Boolean(sizeOf('-wal') || sizeOf('-journal'));
}
