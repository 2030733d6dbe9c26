import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** All that a build is made from, but for the libraries: of these the lock file tells. */
const SOURCES = ['electron', 'renderer', 'shared-core', 'seeds', 'package.json', 'package-lock.json'];

/**
 * What the sources are like now. By size and by when each file last changed in any way (ctime), which nobody can set: a
 * checkout, or a copy that keeps its dates, is a change too.
 */
export function stampOfSources(root: string): string {
  const hash = createHash('sha256');
  for (const file of SOURCES.flatMap((name) => filesIn(root, name))) {
    const { size, ctimeMs } = statSync(join(root, file));
    hash.update(`${file} ${size} ${ctimeMs}\n`);
  }
  return hash.digest('hex');
}

function filesIn(root: string, name: string): string[] {
  if (!statSync(join(root, name)).isDirectory()) return [name];
  return readdirSync(join(root, name))
    .toSorted()
    .flatMap((each) => filesIn(root, join(name, each)));
}

const stampFile = (root: string): string => join(root, 'out', 'built-from');

/** From now on, until it has ended, there is no whole build. */
export const buildBegins = (root: string): void => rmSync(stampFile(root), { force: true });

/** @param stamp  of the sources when it began: what changed since is not in it for sure */
export function buildEnded(root: string, stamp: string): void {
  mkdirSync(dirname(stampFile(root)), { recursive: true });
  writeFileSync(stampFile(root), stamp);
}

/** Whether the build is whole, and of the sources as they are. */
export function isBuilt(root: string): boolean {
  try {
    return readFileSync(stampFile(root), 'utf8') === stampOfSources(root);
  } catch {
    return false;
  }
}
