import { statSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Whether a folder is another one or in it: by device and number, so that neither links nor the case of letters hide it.
 * @param folder  its real path
 */
export function isWithin(folder: string, other: string): boolean {
  const outer = statSync(other, { bigint: true, throwIfNoEntry: false });
  for (let each = folder; outer; each = dirname(each)) {
    const { dev, ino } = statSync(each, { bigint: true });
    if (dev === outer.dev && ino === outer.ino) return true;
    if (dirname(each) === each) break;
  }
  return false;
}
