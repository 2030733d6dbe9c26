import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A package as npm installed it. */
export interface Package {
  name: string;
  version: string;
  /** As its author names it, mostly by SPDX. */
  license: string;
  /** Within the project, with slashes: `node_modules/…`. */
  folder: string;
}

/** Only compile native parts, or are for a way to the adapter that no supported system takes. No code of ours loads them. */
const leftOut = new Set([
  '@mapbox/node-pre-gyp',
  'nan',
  'napi-thread-safe-callback',
  'node-addon-api',
  'node-gyp',
  'usb',
]);

/** The built app finds these by name at run time, where no import shows them. */
const foundByName = [
  '@abandonware/noble',
  '@fontsource/noto-sans-bengali',
  '@fontsource/noto-sans-devanagari',
  '@fontsource/noto-sans-kr',
  '@fontsource/noto-sans-sc',
  '@fontsource/noto-sans-tamil',
  '@fontsource/noto-sans-thai',
  'dejavu-fonts-ttf',
];

/** Everything that people get, the libraries in the window's bundle included: what package.json depends on, and so on. */
export function shippedPackages(root: string): Package[] {
  return withTheirs(root, Object.keys(readPackage(root).dependencies ?? {}));
}

/** What the built machine's side loads from `node_modules`, and what that depends on. */
export function packagesOfHost(root: string): Package[] {
  const built = globSync('out/{main,preload}/**/*.{js,cjs}', { cwd: root });
  if (built.length === 0) throw new Error('Nothing is built: run "npm run build" first.');
  const imported = built.flatMap((file) => bareImports(readFileSync(join(root, file), 'utf8')));
  return withTheirs(root, [...foundByName, ...imported]);
}

/** What runs the packed folder, beside its packages. */
export const nodeOf = (root: string): { name: string; version: string } => ({
  name: 'Node.js',
  version: readPackage(join(root, 'node_modules/node')).version,
});

/** As bundlers write them, one statement a line. */
function bareImports(script: string): string[] {
  const specifiers = [
    ...script.matchAll(/^(?:import|export)\b[^;]*?["']([^"'\n]+)["'];?$|\bimport\("([^"\n]+)"\)/gm),
  ];
  return specifiers
    .map(([, from, lazily]) => from ?? lazily ?? '')
    .filter(
      (name) => /^(@[\w.-]+\/)?[a-z][\w.-]*/.test(name) && !name.startsWith('node:') && name !== 'electron',
    )
    .map((name) =>
      name
        .split('/')
        .slice(0, name.startsWith('@') ? 2 : 1)
        .join('/'),
    );
}

function withTheirs(root: string, names: readonly string[]): Package[] {
  const found = new Map<string, Package>();
  const add = (name: string, from: string, isOptional: boolean): void => {
    if (leftOut.has(name) || name.startsWith('@types/')) return;
    const folder = folderOf(root, name, from);
    // Npm leaves out what is for other systems.
    if (folder === null && isOptional) return;
    if (folder === null)
      throw new Error(`${name} is not installed, which ${from || 'package.json'} depends on.`);
    if (found.has(folder)) return;
    const { version, license, dependencies, optionalDependencies } = readPackage(join(root, folder));
    found.set(folder, { name, version, license: license ?? '', folder });
    for (const each of Object.keys({ ...dependencies, ...optionalDependencies })) {
      add(each, folder, each in (optionalDependencies ?? {}));
    }
  };
  for (const name of names) add(name, '', false);
  return [...found.values()].sort((a, b) => (a.folder < b.folder ? -1 : 1));
}

/** Where a module in a folder finds a package: in the nearest `node_modules` above. */
function folderOf(root: string, name: string, from: string): string | null {
  for (let above = from; ; above = dirname(above) === '.' ? '' : dirname(above)) {
    const folder = `${above === '' ? '' : `${above}/`}node_modules/${name}`;
    if (existsSync(join(root, folder, 'package.json'))) return folder;
    if (above === '') return null;
  }
}

interface PackageJson {
  version: string;
  license?: string;
  author?: string | { name: string };
  dependencies?: Record<string, string>;
  optionalDependencies?: Record<string, string>;
}

export const readPackage = (folder: string): PackageJson =>
  JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
