import { fork } from 'node:child_process';
import type { ToRadio } from './radio-messages.ts';

/** How the radio process is run. */
export interface RadioRuntime {
  /** `radio-process` as this runtime can run it: the bundled .js, or the .ts under Node 24. */
  radioScript: string;
  env?: NodeJS.ProcessEnv;
  /** Starts it; as a child process of Node's unless given. */
  startPort?: StartRadio;
}

/** What the app's side hears of the radio process. */
interface RadioEars {
  /** As it came, unchecked. */
  message(raw: unknown): void;
  /** A part of its error output. */
  note(text: string): void;
  /** It ended, or could not be started. Heard once. */
  exit(): void;
}

/** The radio process, whichever runtime holds it. */
export interface RadioPort {
  /** Null while it is being started, where the runtime takes its time. */
  pid(): number | null;
  isOver(): boolean;
  /** Nothing where it has just ended: `exit` follows. */
  send(order: ToRadio): void;
  /** At once, without asking. */
  kill(): void;
}

export type StartRadio = (runtime: RadioRuntime, ears: RadioEars) => RadioPort;

/** As a child process of Node's. */
export const forkRadio: StartRadio = ({ radioScript, env }, ears) => {
  const child = fork(radioScript, [], {
    execArgv: [],
    env: { ...process.env, ...env },
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    serialization: 'advanced',
  });
  let isOver = false;
  const end = () => {
    if (isOver) return;
    isOver = true;
    ears.exit();
  };
  child.stderr!.on('data', (text: Buffer) => ears.note(text.toString('utf8')));
  child.on('message', ears.message);
  child.on('error', (error) => {
    ears.note(`\n${error.message}`);
    if (child.pid === undefined) end();
  });
  child.on('exit', end);
  return {
    pid: () => child.pid ?? null,
    isOver: () => isOver,
    send: (order) => {
      if (child.connected) child.send(order, () => undefined);
    },
    kill: () => child.kill('SIGKILL'),
  };
};
