import { chmodSync, closeSync, existsSync, mkdirSync, openSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

// On Windows these lie in the user's profile, which other users cannot read; modes mean nothing there.
const FOLDER_MODE = 0o700;
const FILE_MODE = 0o600;
const OWNERS = 0o700;
const OTHERS = 0o077;

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;

/**
 * Makes a folder, and those above it, that no other user can enter. One that is there already stays as it is. Node's own
 * recursive way never ends where the system says of a folder that is there that it is not, as in `/proc`.
 */
export function makePrivateFolder(folder: string): void {
  if (isFolder(folder)) return;
  if (dirname(folder) !== folder) makePrivateFolder(dirname(folder));
  try {
    mkdirSync(folder, { mode: FOLDER_MODE });
  } catch (error) {
    // Another process may have made it meanwhile.
    if (isFolder(folder)) return;
    throw error;
  }
  // The umask may have taken away too much.
  chmodSync(folder, FOLDER_MODE);
}

/**
 * Lets no other user read a file; where there is none, an empty one is made. By its path alone: to close a second
 * descriptor of a file would drop the locks that SQLite has on it.
 */
export function makePrivateFile(file: string): void {
  if (!existsSync(file)) {
    closeSync(openSync(file, 'wx', FILE_MODE));
    chmodSync(file, FILE_MODE);
  }
  keepPrivate(file);
}

/**
 * Takes from other users what they may do with a file or in a folder of this user's, if it is there. What this user may not
 * do stays so: who made a yard read-only meant it.
 */
export function keepPrivate(path: string): void {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found && found.uid === process.getuid?.() && (found.mode & OTHERS) !== 0) {
    chmodSync(path, found.mode & OWNERS);
  }
}

/**
 * SQLite gives the files beside a yard the mode that this has. Those that a kill left keep it, also where the yard's is
 * another by now: it could then not be opened.
 */
export function giveModeOf(file: string, beside: string): void {
  const found = statSync(beside, { throwIfNoEntry: false });
  if (found && found.uid === process.getuid?.()) chmodSync(beside, statSync(file).mode & OWNERS);
}
