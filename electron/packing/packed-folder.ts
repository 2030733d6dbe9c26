import { chmodSync, copyFileSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { headersOf } from '../meter/native-socket.ts';
import { copyAppTree } from './app-tree.ts';
import { billOfMaterials } from './bill-of-materials.ts';
import { nodeOf } from './packages.ts';
import { startScript } from './start-script.ts';

/**
 * The app as a folder with Node in it, for the system that it is made on: it starts without npm, a build or a network,
 * from wherever it is moved to.
 *
 * @param root    the project, built
 * @param folder  replaced if it is there
 */
export async function packFolder(root: string, folder: string): Promise<void> {
  const { platform, arch } = process;
  const binary = platform === 'win32' ? 'node.exe' : 'node';
  const node = join(root, 'node_modules/node/bin', binary);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(join(folder, 'node'), { recursive: true });
  copyFileSync(node, join(folder, 'node', binary));
  // They come in one package, which npm leaves out again where it installs another one later.
  const headers = await headersOf({ execPath: node, electronVersion: null });
  copyFileSync(join(headers, 'LICENSE'), join(folder, 'node/LICENSE'));
  copyAppTree(root, { platform, arch }, join(folder, 'app'));
  const beside = join(import.meta.dirname, 'beside');
  const { name, source } = startScript(platform);
  copyFileSync(join(beside, source), join(folder, name));
  chmodSync(join(folder, name), 0o755);
  copyFileSync(join(beside, 'README.txt'), join(folder, 'README.txt'));
  const bill = billOfMaterials(root, nodeOf(root));
  writeFileSync(join(folder, 'sbom.cdx.json'), `${JSON.stringify(bill, null, 2)}\n`);
}
