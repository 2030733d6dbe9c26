import { defineConfig } from 'vitest/config';

/**
 * Of what can miss a mutant: the tests of the physics, the calls and the bytes, and the published sources. Left out is
 * what takes a minute by random boards: where only such a test finds a fault, no test says what is right.
 */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    include: [
      ...['gatt', 'probing', 'wood'].map((folder) => `tests/unit/${folder}/**/*.test.ts`),
      'tests/reference/{dry-kiln,james,resistance,pfaff,sanchez,sample-size,wood-handbook}*.test.ts',
    ],
    exclude: ['one-story', 'read-and-forecast', 'call-of-any-board'].map((file) => `**/${file}.test.ts`),
    isolate: false,
    // It runs beside other work, at the lowest priority.
    testTimeout: 600_000,
  },
});
