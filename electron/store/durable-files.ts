import { closeSync, fsyncSync, openSync } from 'node:fs';

/** Puts on disk what a file holds. Not for a file that SQLite has open: closing it here would drop SQLite's locks. */
export function syncFile(file: string): void {
  sync(file, 'r+');
}

/** Puts on disk which files a folder has, under which names. Windows does so by itself, and opens no folder. */
export function syncFolder(folder: string): void {
  if (process.platform !== 'win32') sync(folder, 'r');
}

function sync(path: string, flags: 'r' | 'r+'): void {
  const opened = openSync(path, flags);
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}
