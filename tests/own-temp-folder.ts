import { accessSync, constants, mkdtempSync, rmSync, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Of Linux: a disk in memory, where nothing waits for a disk. */
const IN_MEMORY = '/dev/shm';
/** Less would be full of yards before the tests end. */
const ROOM_BYTES = 4e9;

/**
 * Gives a run of tests a folder of its own for temporary files, which goes with it: yards fill a disk in a day. In it is
 * the place of the new yard that its tests have copies of (`unit/app/new-yard.ts`).
 */
export default function ownTempFolder(): () => void {
  const folder = mkdtempSync(join(hasRoomInMemory() ? IN_MEMORY : tmpdir(), 'pintally-'));
  const PINTALLY_NEW_YARD = join(folder, 'new-yard.sqlite');
  Object.assign(process.env, { TMPDIR: folder, TEMP: folder, TMP: folder, PINTALLY_NEW_YARD });
  return () => rmSync(folder, { recursive: true, force: true });
}

function hasRoomInMemory(): boolean {
  try {
    accessSync(IN_MEMORY, constants.W_OK);
    const { bavail, bsize } = statfsSync(IN_MEMORY);
    return bavail * bsize > ROOM_BYTES;
  } catch {
    return false;
  }
}
