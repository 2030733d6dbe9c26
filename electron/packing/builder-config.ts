import type { Configuration } from 'electron-builder';
import { english } from '../../shared-core/words/en/index.ts';

/** Within the project: what is packed, and the icon. */
export const APP_FOLDER = 'dist/electron-app';
export const RESOURCES_FOLDER = 'dist/electron-resources';

/** In electron-builder's own marks. */
const named = (more: string): string => `pintally-\${version}-\${os}-\${arch}${more}.\${ext}`;

/**
 * How electron-builder makes installers. Nothing in them looks for updates or sends anything.
 *
 * The app runs from one archive. `asar` gives its hash to the program, which on Windows and macOS ends where the archive
 * was changed. Native parts lie beside it, because systems load only files.
 */
const builderConfig: Configuration = {
  appId: 'app.pintally',
  productName: 'Pintally',
  directories: { app: APP_FOLDER, output: 'dist/electron', buildResources: RESOURCES_FOLDER },
  // It leaves out a folder of that name unless it is asked for. The tree holds only what is needed.
  files: ['**/*', { from: 'node_modules', to: 'node_modules', filter: ['**/*'] }],
  asar: true,
  asarUnpack: ['**/*.node'],
  // The tree has all packages that are needed, and native parts as they load in this Electron: it adds and builds none.
  beforeBuild: async () => false,
  publish: null,
  artifactName: named(''),
  electronFuses: {
    // Apple silicon starts no program whose signature is broken, and fuses break it. With a certificate it is signed again.
    resetAdHocDarwinSignature: true,
    // The radio is a utility process. It does not run Electron as Node.
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    grantFileProtocolExtraPrivileges: false,
  },
  win: { target: ['nsis', 'portable'] },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  // Both would have the name of the installer.
  portable: { artifactName: named('-portable') },
  mac: {
    target: ['dmg', 'zip'],
    category: 'public.app-category.utilities',
    hardenedRuntime: true,
    entitlements: 'electron/packing/entitlements.mac.plist',
    entitlementsInherit: 'electron/packing/entitlements.mac.plist',
    extendInfo: {
      NSBluetoothAlwaysUsageDescription: english['shell.why-bluetooth'],
      NSCameraUsageDescription: english['shell.why-camera'],
    },
  },
  linux: {
    target: ['AppImage'],
    executableName: 'pintally',
    category: 'Utility',
    synopsis: english['shell.synopsis'],
    // A package must name someone. The top level domain is one that nobody can have (RFC 2606).
    maintainer: 'Pintally <pintally@pintally.invalid>',
    desktop: { entry: { Keywords: 'lumber;wood;moisture;meter;drying;' } },
  },
  deb: {
    // electron-builder's own, and the service that Bluetooth goes by.
    depends: [
      'libgtk-3-0',
      'libnotify4',
      'libnss3',
      'libxss1',
      'libxtst6',
      'xdg-utils',
      'libatspi2.0-0',
      'libuuid1',
      'libsecret-1-0',
      'bluez',
    ],
  },
};

/** @param homepage  an address of the project, which a deb must name: without it, none is made */
export const builderConfigFor = (homepage: string | undefined): Configuration =>
  homepage === undefined
    ? builderConfig
    : {
        ...builderConfig,
        extraMetadata: { homepage },
        linux: { ...builderConfig.linux, target: ['AppImage', 'deb'] },
      };
