import { globSync } from 'node:fs';
import { join } from 'node:path';
import type { Package } from './packages.ts';

/** What a package is packed for, as Node names it. */
export interface Target {
  platform: NodeJS.Platform;
  arch: string;
}

/** Code, data and native parts. Sources, their maps, types and documents are no part of it. */
const isRun = /\.(js|cjs|mjs|json|node|icc)$/;
/** Of a package, in its own folder. */
export const isLicense = /^(licen[cs]e|copying|copyright|notice|ofl)[^/]*$/i;
/** Of a package: its tests, what shows how it is used, and what it was made with. */
const isAside =
  /(^|\/)(tests?|__tests__|examples?|docs?|benchmarks?|tools|scripts)\/|(^|\/)test[^/]*\.js$|\.config\.m?js$/;
/** The same for browsers, for old ones, and for those who read every part of it in one file. */
const isForBrowsers = /(^dist\/|\.)(browser|standalone|old|bc)[\w.-]*js$|\.min\.m?js$/;
/** Intermediate files of compilers. */
const isLeftByCompiler = /(^|\/)obj(\.target)?\//;

/** Of some packages only these: fonts come in each weight and format, and native parts for each system. */
const onlyOf: Record<string, RegExp> = {
  'dejavu-fonts-ttf': /^ttf\/DejaVuSansCondensed(-Bold)?\.ttf$|^package\.json$/,
  '@abandonware/bluetooth-hci-socket':
    /^(index|lib\/[^/]+)\.js$|^build\/Release\/[^/]+\.node$|^package\.json$/,
};
const ofFontsource = /^files\/.*-400-normal\.woff2$|^(unicode|package)\.json$/;

/**
 * The files of a package that the app needs while it runs on a system, and its licenses.
 * @returns  paths within the package's folder, with slashes
 */
export function runtimeFiles(root: string, { name, folder }: Package, { platform, arch }: Target): string[] {
  const only = onlyOf[name] ?? (name.startsWith('@fontsource/') ? ofFontsource : null);
  const isHere = (file: string): boolean =>
    !file.startsWith('prebuilds/') || new RegExp(`^prebuilds/${platform}-${arch}[./]`).test(file);
  return globSync('**/*', { cwd: join(root, folder), withFileTypes: true, exclude: ['node_modules'] })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(join(root, folder).length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((file) => {
      if (isLicense.test(file)) return true;
      if (only !== null) return only.test(file);
      const isLeftOut = isAside.test(file) || isForBrowsers.test(file) || isLeftByCompiler.test(file);
      return isRun.test(file) && !isLeftOut && isHere(file);
    })
    .sort();
}
