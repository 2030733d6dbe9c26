import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

/**
 * A yard file with its log, as a process left it that was killed (SIGKILL) after it had saved: 3 stacks, 60 boards, and
 * readings of 8.00, 8.01 …, each its own commit.
 * @param merged  how many readings the file itself holds; the rest are in its log only
 */
export async function killedYard({
  readings,
  merged,
}: {
  readings: number;
  merged: number;
}): Promise<string> {
  const file = join(mkdtempSync(join(tmpdir(), 'pintally-killed-')), 'yard.sqlite');
  const script = join(import.meta.dirname, 'saving-child.ts');
  const child = spawn(process.execPath, [script, file, `${readings}`, `${merged}`], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await Promise.race([once(child.stdout, 'data'), once(child, 'exit')]);
  if (child.exitCode !== null) throw new Error('The process ended by itself.');
  child.kill('SIGKILL');
  await once(child, 'exit');
  return file;
}

/** The same file in another folder, to be damaged. */
export function copyOf(file: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-copy-'));
  cpSync(dirname(file), folder, { recursive: true });
  return join(folder, 'yard.sqlite');
}

/** The same numbers at every run: 0 to below `n`. */
export function seeded(seed: number): (n: number) => number {
  let state = seed;
  return (n) => {
    // A linear congruential generator, Numerical Recipes (1992), p. 284.
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * n);
  };
}
