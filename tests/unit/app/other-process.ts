import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, openSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface OtherPintally {
  pid: number;
  /** The yard that it opened; null where it opened none. */
  uuid: string | null;
  /** What a person reads there. */
  says: string | null;
  kill(): Promise<void>;
  /** Changes a setting of the yard that it opened, and closes it. Nothing happens here meanwhile. */
  changeAndClose(): void;
}

const MOST_MS = 40_000;
let running: ChildProcess[] = [];

/** Starts Pintally in its own process (`another-pintally.ts`). Nothing happens in this one until it has said what it opened. */
export function startAnother(dataDir: string, which: 'own' | 'demo' = 'own'): OtherPintally {
  const script = join(import.meta.dirname, 'another-pintally.ts');
  const said = join(mkdtempSync(join(tmpdir(), 'pintally-other-')), 'said');
  const child = spawn(process.execPath, [script, dataDir, which], {
    stdio: ['ignore', openSync(said, 'w'), 'inherit'],
  });
  running.push(child);
  const [opened = ''] = linesOf(said, 1);
  return {
    ...JSON.parse(opened),
    pid: child.pid,
    kill: async () => {
      child.kill('SIGKILL');
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
    },
    changeAndClose: () => {
      child.kill('SIGTERM');
      linesOf(said, 2);
    },
  };
}

/** Waits for so many lines, and lets nothing else happen. */
function linesOf(path: string, howMany: number): string[] {
  const sleeping = new Int32Array(new SharedArrayBuffer(4));
  for (let waitedMs = 0; waitedMs < MOST_MS; waitedMs += 20) {
    const lines = readFileSync(path, 'utf8').split('\n').slice(0, -1);
    if (lines.length >= howMany) return lines;
    Atomics.wait(sleeping, 0, 0, 20);
  }
  throw new Error('The other Pintally says nothing.');
}

/** Ends those that a test started. */
export function endOthers(): void {
  for (const child of running) child.kill('SIGKILL');
  running = [];
}
