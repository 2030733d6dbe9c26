/**
 * `npm run test:mutation -- FILE…`: changes a file of the core in many places, one at a time, and says which changes
 * no test notices. Without a file, all files that are kept at 90 %.
 */
import { globSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Stryker } from '@stryker-mutator/core';

const root = resolve(import.meta.dirname, '../..');
process.chdir(root);

const named = process.argv.slice(2);
const files =
  named.length > 0
    ? named
    : globSync(['shared-core/{probing,gatt}/**/*.ts', 'shared-core/wood/moisture/*.ts'], {
        cwd: root,
      }).sort();

/** How many of the changes the tests notice at least. */
const GOAL_PCT = 90;

let isBelow = false;
// A file at a time: its tests alone are loaded, and what was found so far is kept when it is stopped.
for (const file of files) {
  const results = await new Stryker({
    mutate: [file],
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutation/vitest.config.ts' },
    coverageAnalysis: 'perTest',
    concurrency: 1,
    // Stryker would rewrite the paths in it through TypeScript's JavaScript API, which TypeScript 7 has not.
    tsconfigFile: 'none.json',
    ignorePatterns: ['/artifacts', '/out', '/dist', '/renderer', '/tests/e2e'],
    tempDirName: 'artifacts/mutation/copy',
    incremental: true,
    incrementalFile: join('artifacts/mutation', `${file.replaceAll('/', '.')}.json`),
    reporters: ['clear-text'],
    clearTextReporter: { allowColor: false, reportTests: false, reportScoreTable: false },
    timeoutMS: 20_000,
    allowConsoleColors: false,
  }).runMutationTest();
  const counted = results.filter(({ status }) => status !== 'Ignored');
  const missed = counted.filter(({ status }) => status === 'Survived' || status === 'NoCoverage').length;
  const pct = counted.length === 0 ? 100 : (100 * (counted.length - missed)) / counted.length;
  console.log(`${file}: ${pct.toFixed(1)}%, ${missed} of ${counted.length} changes missed`);
  isBelow ||= pct < GOAL_PCT;
}
if (isBelow) process.exitCode = 1;
