import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openYard, type Yard } from '../../../electron/store/yard.ts';
import { yard } from '../app/yard-of-two.ts';
import { newFolder } from './a-filled-yard.ts';
import { downloaded } from './downloaded.ts';

/** A copy of the yard as it is now, in which somebody else goes on. */
export async function elsewhere(work: (theirs: Yard) => void): Promise<string> {
  const file = join(newFolder(), 'theirs.sqlite');
  writeFileSync(file, await downloaded(yard, await yard.command('backups.beginDownload', {})));
  const theirs = openYard(file);
  theirs.transaction(() => {
    theirs.acts.begin({
      id: crypto.randomUUID(),
      request: 'boards.edit',
      inputHash: '',
      at: yard.now(),
      who: 'elsewhere',
    });
    work(theirs);
    theirs.acts.finish(null);
  });
  theirs.close();
  return file;
}
