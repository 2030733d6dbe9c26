import { copyFileSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A copy, in a new folder, of the made-up yard as that layout held it (`make-layouts.ts`). */
export function copyOfLayout(layout: number): string {
  const file = join(mkdtempSync(join(tmpdir(), 'pintally-layout-')), 'yard.sqlite');
  copyFileSync(join(import.meta.dirname, 'layouts', `layout-${layout}.sqlite`), file);
  return file;
}
