import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LicensedPackage } from '../../shared-core/licensed-package.ts';
import { nodePackageFolders } from '../node-package.ts';
import { nodeOf, type Package, readPackage, shippedPackages } from './packages.ts';
import { isLicense } from './runtime-files.ts';

/** Every package that people get and Node, each with the text of its license, by name. Throws where one has none. */
export function licensedPackages(root: string): LicensedPackage[] {
  return [...shippedPackages(root).map((each) => licensed(root, each)), licensedNode(root)].sort((a, b) =>
    a.name.localeCompare(b.name, 'en'),
  );
}

/** A package with the text that came with it. Where none did, and it is under MIT, with the standard text. */
export function licensed(root: string, { name, version, license, folder }: Package): LicensedPackage {
  const files = readdirSync(join(root, folder)).filter((file) => isLicense.test(file));
  const texts = files.sort().map((file) => readFileSync(join(root, folder, file), 'utf8').trim());
  const named = {
    name,
    version,
    license: license === '' || license.startsWith('SEE LICENSE') ? null : license,
  };
  if (texts.length > 0) return { ...named, text: texts.join('\n\n'), isTextOwn: true };
  if (license !== 'MIT') throw new Error(`${name} ${version} (${license}) has no text of its license.`);
  const { author } = readPackage(join(root, folder));
  const holder = (typeof author === 'string' ? author : author?.name)?.replace(/ <.*/, '');
  return { ...named, text: mit(holder ?? `The authors of ${name}`), isTextOwn: false };
}

/** Its text names the licenses of all that Node contains. */
function licensedNode(root: string): LicensedPackage {
  const node = nodeOf(root);
  const file = nodePackageFolders(root, node.version)
    .map((folder) => join(folder, 'LICENSE'))
    .find(existsSync);
  const text = file ? readFileSync(file, 'utf8').trim() : mit('Node.js contributors');
  return { ...node, license: 'MIT', text, isTextOwn: file !== undefined };
}

/** https://spdx.org/licenses/MIT.html */
function mit(holder: string): string {
  const text = readFileSync(new URL('mit-license.txt', import.meta.url), 'utf8');
  return text.trim().replace('<copyright holders>', holder);
}
