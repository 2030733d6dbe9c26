import { resolve } from 'node:path';
import locales from '@react-aria/optimize-locales-plugin';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';
import type { Plugin } from 'vite';
import { languages } from '../shared-core/words/languages.ts';
import { buildBegins, buildEnded, stampOfSources } from './built-from.ts';
import { guideMarkdown } from './guide/markdown-plugin.ts';
import { licenses } from './packing/licenses-plugin.ts';

const root = resolve(import.meta.dirname, '..');

/** The modules that the window loads before it shows anything. */
const ofFirstScreen = new Set<string>();

function findFirstScreen(): Plugin {
  return {
    name: 'first-screen',
    buildEnd() {
      const add = (id: string): void => {
        if (ofFirstScreen.has(id)) return;
        ofFirstScreen.add(id);
        this.getModuleInfo(id)?.importedIds.forEach(add);
      };
      for (const id of this.getModuleIds()) if (this.getModuleInfo(id)?.isEntry) add(id);
    },
  };
}

let stamp = '';
/** The main part is built first, the renderer last. */
const beginning: Plugin = {
  name: 'build-begins',
  buildStart: () => {
    buildBegins(root);
    stamp = stampOfSources(root);
  },
};
const ending: Plugin = { name: 'build-ended', closeBundle: () => buildEnded(root, stamp) };

export default defineConfig({
  main: {
    plugins: [beginning],
    define: { BUILT_AT: JSON.stringify(new Date().toISOString()) },
    build: {
      outDir: resolve(root, 'out/main'),
      // Bundled, only what is used of them is loaded: zod alone has a file for each of its languages.
      externalizeDeps: { exclude: ['zod', 'ws', 'intl-messageformat', 'qrcode-generator'] },
      rollupOptions: {
        input: {
          main: resolve(root, 'electron/main.ts'),
          loopback: resolve(root, 'electron/loopback.ts'),
          'packed-start': resolve(root, 'electron/packed-start.ts'),
          'backup-worker': resolve(root, 'electron/app/yard/backup-worker.ts'),
          'check-worker': resolve(root, 'electron/app/yard/check-worker.ts'),
          'exchange-worker': resolve(root, 'electron/exchange/exchange-worker.ts'),
          'forecast-worker': resolve(root, 'electron/app/forecast/forecast-worker.ts'),
          'import-worker': resolve(root, 'electron/app/importing/import-worker.ts'),
          'labels-worker': resolve(root, 'electron/app/stock/labels-worker.ts'),
          'shapes-worker': resolve(root, 'electron/app/stock/shapes-worker.ts'),
          'reports-worker': resolve(root, 'electron/app/reports/reports-worker.ts'),
          'pictures-worker': resolve(root, 'electron/app/pictures/pictures-worker.ts'),
          'round-worker': resolve(root, 'electron/app/judging/round-worker.ts'),
          'salvage-worker': resolve(root, 'electron/app/yard/salvage-worker.ts'),
          'radio-process': resolve(root, 'electron/meter/radio-process.ts'),
        },
        // By one name in every build, so that the compile cache holds one of each.
        output: { chunkFileNames: 'chunks/[name].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: resolve(root, 'out/preload'),
      rollupOptions: {
        input: { preload: resolve(root, 'electron/preload.ts') },
        // A sandboxed preload script cannot be an ES module.
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: resolve(root, 'renderer'),
    base: './',
    plugins: [
      react(),
      // The library of fields has words in 34 languages: only those of `shared-core/words/languages.ts` are bundled.
      locales.vite({ locales: [...languages] }),
      guideMarkdown(),
      licenses(root),
      findFirstScreen(),
      ending,
    ],
    build: {
      outDir: resolve(root, 'out/renderer'),
      minify: true,
      // One file of styles, whose order does not depend on which screen was seen first.
      cssCodeSplit: false,
      chunkSizeWarningLimit: 1500,
      rollupOptions: {
        input: resolve(root, 'renderer/index.html'),
        // In one file, what the first screen needs comes sooner than in fifty.
        output: { codeSplitting: { groups: [{ name: 'first', test: (id) => ofFirstScreen.has(id) }] } },
      },
    },
  },
});
