/**
 * Runs every bench that names a goal, and prints what it says of goals: each beside its figure. Run it with
 *
 *     npm run bench
 *
 * It takes some minutes on a quiet machine. What a bench prints of a goal is one paragraph with the word in it.
 */
import { spawnSync } from 'node:child_process';
import { globSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';

const HERE = import.meta.dirname;
const NAMES_A_GOAL = /\bgoals?\b/i;

const benches = globSync('*.bench.ts', { cwd: HERE })
  .filter((file) => NAMES_A_GOAL.test(readFileSync(resolve(HERE, file), 'utf8')))
  .toSorted();

for (const file of benches) {
  const begun = performance.now();
  const { stdout, status } = spawnSync(process.execPath, [resolve(HERE, file)], {
    encoding: 'utf8',
    maxBuffer: 1e8,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const seconds = ((performance.now() - begun) / 1000).toFixed(0);
  const goals = stdout.split(/\n\s*\n/).filter((paragraph) => NAMES_A_GOAL.test(paragraph));
  console.log(`== ${file} (${seconds} s)\n${goals.join('\n\n')}\n`);
  if (status !== 0) process.exitCode = 1;
}
