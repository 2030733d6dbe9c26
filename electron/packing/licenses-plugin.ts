import type { Plugin } from 'vite';
import { licensedPackages } from './licenses.ts';

/** Makes the module `virtual:licenses` when the window is built, from the packages that are installed. */
export const licenses = (root: string): Plugin => ({
  name: 'licenses',
  resolveId: (id) => (id === 'virtual:licenses' ? '\0licenses' : null),
  load: (id) => (id === '\0licenses' ? `export default ${JSON.stringify(licensedPackages(root))};` : null),
});
