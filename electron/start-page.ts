import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { frame } from '../shared-core/words/en/frame.ts';

const PREFIX = 'pintally-start-';

/**
 * Writes a page that leads to the start link, for the browser to open: the arguments of a process can be read by every
 * user of the computer, this file only by its owner.
 *
 * @param folder  in which the page gets its own folder
 * @returns       the page, and how it is removed
 * @throws        where it cannot be written
 */
export function writeStartPage(address: string, folder: string) {
  removeOrphans(folder);
  const own = join(folder, `${PREFIX}${process.pid}`);
  const remove = (): void => rmSync(own, { recursive: true, force: true });
  remove();
  mkdirSync(own, { mode: 0o700 });
  const file = join(own, 'start.html');
  const { 'frame.app-name': name, 'start-page.open': open } = frame;
  writeFileSync(
    file,
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>${name}</title><meta name="referrer" content="no-referrer"><meta http-equiv="refresh" content="0; url=${address}"><a href="${address}">${open}</a></html>`,
    { mode: 0o600 },
  );
  return { file, remove };
}

/**
 * Where a browser can read it. On Linux many browsers are confined, and of all that is a person's own they may only
 * read what is in sight in the home folder, where no name begins with a dot. Elsewhere the data folder will do.
 */
export const startPageFolder = (dataDir: string): string =>
  process.platform === 'linux' ? homedir() : dataDir;

/** What processes left that were killed. Their links open nothing. */
function removeOrphans(folder: string): void {
  for (const name of readdirSync(folder)) {
    const pid = Number(new RegExp(`^${PREFIX}(\\d+)$`).exec(name)?.[1]);
    if (pid > 0 && !isRunning(pid)) rmSync(join(folder, name), { recursive: true, force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
