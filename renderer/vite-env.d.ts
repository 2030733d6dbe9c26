/// <reference types="vite/client" />

/** A chapter of the guide: `electron/guide/markdown-plugin.ts` makes it a module. */
declare module '*.md' {
  export const chapter: import('../shared-core/guide/chapter.ts').Chapter;
  /** The address of each picture, by its name. */
  export const pictures: Record<string, string>;
}

/** The packages of others in Pintally: `electron/packing/licenses-plugin.ts` makes the module. */
declare module 'virtual:licenses' {
  const licenses: import('../shared-core/licensed-package.ts').LicensedPackage[];
  export default licenses;
}
