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
  /** Changes a setting of the yard that it opened, and closes it. */
  changeAndClose(): Promise<void>;
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
  const end = async (signal: 'SIGKILL' | 'SIGTERM') => {
    child.kill(signal);
    if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
  };
  return {
    ...JSON.parse(line),
    pid: child.pid,
    kill: () => end('SIGKILL'),
    changeAndClose: () => end('SIGTERM'),
  };
}

/** Ends those that a test started. */
export function endOthers(): void {
  for (const child of running) child.kill('SIGKILL');
  running = [];
}
