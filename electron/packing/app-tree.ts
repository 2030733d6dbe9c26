import { copyFileSync, globSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { packagesOfHost } from './packages.ts';
import { runtimeFiles, type Target } from './runtime-files.ts';

/** What the build and its runs on this computer leave beside the app. */
const isLeftOver = /^out\/(built-from|compile-cache\/.*)$|\.map$/;

/**
 * Copies the built app, with all that it loads while it runs and nothing else, to a folder: `out/`, `node_modules/` and
 * a `package.json`. Both the packed folder and Electron's archive are made of it.
 */
export function copyAppTree(root: string, target: Target, folder: string): void {
  const copy = (file: string): void => {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    copyFileSync(join(root, file), join(folder, file));
  };
  for (const entry of globSync('out/**/*', { cwd: root, withFileTypes: true })) {
    const file = join(entry.parentPath, entry.name).slice(root.length + 1);
    if (entry.isFile() && !isLeftOver.test(file)) copy(file);
  }
  for (const each of packagesOfHost(root)) {
    for (const file of runtimeFiles(root, each, target)) copy(join(each.folder, file));
  }
  const { name, version, description, author, license, type, main } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  );
  const packed = {
    name,
    productName: 'Pintally',
    version,
    description,
    author,
    license,
    private: true,
    type,
    main,
  };
  writeFileSync(join(folder, 'package.json'), `${JSON.stringify(packed, null, 2)}\n`);
}
