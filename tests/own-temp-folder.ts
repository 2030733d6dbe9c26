import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * Gives a run of tests a folder of its own for temporary files, which goes with it: yards fill a disk in a day. In it is
 * the place of the new yard that its tests have copies of (`unit/app/new-yard.ts`).
 */
export default function ownTempFolder(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-'));
  const PINTALLY_NEW_YARD = join(folder, 'new-yard.sqlite');
  Object.assign(process.env, { TMPDIR: folder, TEMP: folder, TMP: folder, PINTALLY_NEW_YARD });
  return () => rmSync(folder, { recursive: true, force: true });
}
