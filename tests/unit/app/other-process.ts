import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

export interface OtherPintally {
  pid: number;
  /** The yard that it opened; null where it opened none. */
  uuid: string | null;
  /** What a person reads there. */
  says: string | null;
  kill(): Promise<void>;
}

let running: ChildProcess[] = [];

/** Starts Pintally in its own process (`another-pintally.ts`). */
export async function startAnother(dataDir: string, which: 'own' | 'demo' = 'own'): Promise<OtherPintally> {
  const script = join(import.meta.dirname, 'another-pintally.ts');
  const child = spawn(process.execPath, [script, dataDir, which], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  running.push(child);
  const [line] = await once(createInterface(child.stdout), 'line');
  return {
    ...JSON.parse(line),
    pid: child.pid,
    kill: async () => {
      child.kill('SIGKILL');
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
    },
  };
}

/** Ends those that a test started. */
export function endOthers(): void {
  for (const child of running) child.kill('SIGKILL');
  running = [];
}
