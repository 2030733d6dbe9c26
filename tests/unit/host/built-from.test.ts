import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { buildBegins, buildEnded, isBuilt, stampOfSources } from '../../../electron/built-from.ts';

let root: string;
const source = () => join(root, 'renderer/ui/Button.tsx');
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'pintally-built-'));
  for (const folder of ['electron', 'renderer/ui', 'shared-core', 'seeds']) {
    mkdirSync(join(root, folder), { recursive: true });
  }
  for (const file of ['package.json', 'package-lock.json', 'seeds/species.json']) {
    writeFileSync(join(root, file), '{}');
  }
  writeFileSync(source(), 'one');
  build();
});

function build(): void {
  buildBegins(root);
  buildEnded(root, stampOfSources(root));
}

test('a start builds nothing where nothing changed since the build', () => {
  expect(isBuilt(root)).toBe(true);
});

test('it builds where there was no build, or it was deleted', () => {
  rmSync(join(root, 'out'), { recursive: true });
  expect(isBuilt(root)).toBe(false);
});

test('it builds again after a build that was interrupted', () => {
  buildBegins(root);
  expect(isBuilt(root)).toBe(false);
});

test('it builds where a source changed while the build was under way', () => {
  const stamp = stampOfSources(root);
  buildBegins(root);
  writeFileSync(source(), 'two');
  buildEnded(root, stamp);
  expect(isBuilt(root)).toBe(false);
});

const changes: Record<string, () => void> = {
  'a source was edited': () => writeFileSync(source(), 'other'),
  'a source was edited and is as long as before': () => writeFileSync(source(), 'two'),
  'a source is new': () => writeFileSync(join(root, 'renderer/ui/Menu.tsx'), ''),
  'a source was deleted': () => rmSync(source()),
  'a source was renamed': () => renameSync(source(), join(root, 'renderer/ui/Other.tsx')),
  'a library is another one': () => writeFileSync(join(root, 'package-lock.json'), '[]'),
  'the seeds are others': () => writeFileSync(join(root, 'seeds/species.json'), '[]'),
  // As a checkout or a pull writes it: another file takes its name.
  'another branch was checked out': () => {
    writeFileSync(`${source()}.new`, 'two');
    renameSync(`${source()}.new`, source());
  },
  // As some copies do; the file is older than the build then.
  'an older source was copied there with its date': () => {
    const { atime, mtime } = statSync(source());
    const other = join(root, 'other.tsx');
    writeFileSync(other, 'two');
    utimesSync(other, atime, mtime);
    cpSync(other, source(), { preserveTimestamps: true });
    expect(statSync(source()).mtimeMs).toBe(mtime.getTime());
  },
};
test.each(Object.entries(changes))('it builds where %s', (_, change) => {
  change();
  expect(isBuilt(root)).toBe(false);
  build();
  expect(isBuilt(root)).toBe(true);
});
