import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { guideMarkdown } from '../electron/guide/markdown-plugin.ts';
import { endOnOldNode } from '../electron/node-version.mjs';
import { licenses } from '../electron/packing/licenses-plugin.ts';
import { WAIT_MS } from './unit/wait-ms.ts';

endOnOldNode();

const root = new URL('..', import.meta.url).pathname;
const globalSetup = new URL('own-temp-folder.ts', import.meta.url).pathname;

/** Tests of pure code: nothing is left behind in the modules that they load. */
const pure = [
  'calendar',
  'climate',
  'drawing',
  'drying',
  'gatt',
  'import',
  'labels',
  'methods',
  'probing',
  'reports',
  'tally',
  'units',
  'wood',
].map((folder) => `tests/unit/${folder}/**/*.test.{ts,tsx}`);
/** Tests of the window's parts. Before each, `forgetEverything` takes back what the last one left in a store. */
const ofWindow = ['tests/unit/renderer/*/**/*.test.{ts,tsx}'];
const ofYards = ['app', 'exchange', 'store'].map((folder) => `tests/unit/${folder}/**/*.test.ts`);
/**
 * Tests that mock a module or load one again: others would meet what they left, so each file is alone. So is the longest
 * of those with yards, which has the most to read and to keep in memory.
 */
const alone = readdirSync(`${root}tests/unit`, { recursive: true, encoding: 'utf8' })
  .map((file) => `tests/unit/${file}`)
  .filter(
    (file) =>
      file.endsWith('/importing.test.ts') ||
      (/\.test\.tsx?$/.test(file) &&
        /\bvi\.(mock|doMock|resetModules)\(/.test(readFileSync(`${root}${file}`, 'utf8'))),
  );

// On a busy computer some that take half a second alone take 5, and some that take 5 take 50.
const patient = {
  testTimeout: 90_000,
  hookTimeout: 90_000,
  expect: { poll: { timeout: WAIT_MS } },
  setupFiles: [new URL('unit/patience.ts', import.meta.url).pathname],
};

/** Of the app, with its yards and threads. */
const ofApp = {
  ...patient,
  globalSetup,
  setupFiles: [...patient.setupFiles, new URL('unit/kept-threads.ts', import.meta.url).pathname],
};

export default defineConfig({
  root,
  test: {
    // Many tests wait for hands, threads and files. Meanwhile one more has the core.
    maxWorkers: availableParallelism() + 1,
    tags: [
      {
        name: 'core',
        description: 'In a file that `npm test` leaves out as too long, and run by it all the same.',
      },
    ],
    projects: [
      // Modules are loaded once a worker and not for each file, which took half of the processor's time.
      {
        root,
        test: {
          ...ofApp,
          name: 'unit',
          include: ['tests/unit/**/*.test.{ts,tsx}'],
          exclude: [...pure, ...ofWindow, ...ofYards, ...alone],
          isolate: false,
        },
      },
      { root, test: { name: 'pure', include: pure, isolate: false, testTimeout: patient.testTimeout } },
      { root, test: { ...ofApp, name: 'yards', include: ofYards, exclude: alone, isolate: false } },
      { root, test: { ...ofApp, name: 'alone', include: alone } },
      {
        root,
        plugins: [guideMarkdown(), licenses(root)],
        test: { name: 'window', isolate: false, include: ofWindow, ...patient },
      },
      { root, test: { name: 'reference', include: ['tests/reference/**/*.test.ts'], isolate: false } },
      {
        root,
        // Each file has an emulated radio of its own, and mostly waits for it.
        test: {
          name: 'ble',
          include: ['tests/ble/**/*.test.ts'],
          globalSetup,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
