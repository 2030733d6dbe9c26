import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Arch, build, type CliOptions, Platform } from 'electron-builder';
import { drawIcons } from './app-icon.ts';
import { copyAppTree } from './app-tree.ts';
import { billOfMaterials } from './bill-of-materials.ts';
import { APP_FOLDER, builderConfigFor, RESOURCES_FOLDER } from './builder-config.ts';
import { readPackage } from './packages.ts';

/**
 * Packs the built app with Electron for the system that it is made on.
 *
 * @param options  `electronDist`: a folder with Electron's files, where they are not fetched; `onlyFolder`: no installers;
 *                 `homepage`: an address of the project, which a deb must name: without it, none is made
 * @returns        what was made
 */
export async function packElectron(
  root: string,
  {
    electronDist,
    onlyFolder = false,
    homepage,
  }: { electronDist?: string; onlyFolder?: boolean; homepage?: string } = {},
): Promise<string[]> {
  for (const folder of [APP_FOLDER, RESOURCES_FOLDER]) {
    rmSync(join(root, folder), { recursive: true, force: true });
  }
  copyAppTree(root, process, join(root, APP_FOLDER));
  const { version } = readPackage(join(root, 'node_modules/electron'));
  const electron = { name: 'Electron', version };
  writeFileSync(join(root, APP_FOLDER, 'sbom.cdx.json'), JSON.stringify(billOfMaterials(root, electron)));
  await drawIcons(root, join(root, RESOURCES_FOLDER));
  const options: CliOptions = {
    projectDir: root,
    config: { ...builderConfigFor(homepage), ...(electronDist && { electronDist }) },
    publish: 'never',
    targets: Platform.current().createTarget(
      onlyFolder ? 'dir' : null,
      Arch[process.arch as keyof typeof Arch],
    ),
  };
  return build(options);
}
