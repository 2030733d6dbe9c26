import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Memory where there is such a folder: nothing here depends on a real disk, and most of it writes a lot. */
const room = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();

/** An empty folder, removed once `work` is done. */
export async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(room, 'pintally-fault-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
