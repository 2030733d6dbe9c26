import { join } from 'node:path';

/** npm's package with Node's binary, headers and license for this system. */
export const nodePackage = `node-${process.platform}-${process.arch}`;

/** Where `headersOf` brings it to. npm leaves it out of `node_modules/node` again where it installs another package later. */
export const nodeCache = (root: string, version: string): string =>
  join(root, 'node_modules', '.cache', `node-headers-${version}`);

/** Where Node's package may be in a project. */
export const nodePackageFolders = (root: string, version: string): string[] => [
  join(root, 'node_modules', 'node', 'node_modules', nodePackage),
  join(nodeCache(root, version), 'node_modules', nodePackage),
];
