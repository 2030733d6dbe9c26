import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Gives a run of tests a folder of its own for temporary files, which goes with it: yards fill a disk in a day. */
export default function ownTempFolder(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-'));
  Object.assign(process.env, { TMPDIR: folder, TEMP: folder, TMP: folder });
  return () => rmSync(folder, { recursive: true, force: true });
}
