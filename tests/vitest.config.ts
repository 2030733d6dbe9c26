import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

const root = new URL('..', import.meta.url).pathname;
const globalSetup = new URL('own-temp-folder.ts', import.meta.url).pathname;

export default defineConfig({
  root,
  test: {
    // On two cores vitest alone takes one, which leaves the other idle.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      // On a busy computer some that take half a second alone take 5.
      {
        root,
        test: {
          name: 'unit',
          include: ['tests/unit/**/*.test.{ts,tsx}'],
          globalSetup,
          testTimeout: 20_000,
          hookTimeout: 20_000,
        },
      },
      { root, test: { name: 'reference', include: ['tests/reference/**/*.test.ts'] } },
      {
        root,
        // One emulated radio at a time: the files of this project take turns.
        test: {
          name: 'ble',
          include: ['tests/ble/**/*.test.ts'],
          globalSetup,
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
