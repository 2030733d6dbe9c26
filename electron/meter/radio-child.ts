import { type ChildProcess, fork } from 'node:child_process';
import { EventEmitter } from 'node:events';
import type { BluetoothTiming } from './bluetooth-timing.ts';
import { type FromRadio, fromRadioSchema, type ToRadio } from './radio-messages.ts';

/** How the radio process is run. */
export interface RadioRuntime {
  /** `radio-process` as this runtime can run it: the bundled .js, or the .ts under Node 24. */
  radioScript: string;
  /** The runtime for it; `process.execPath` unless given. Electron's own binary is made to act as Node. */
  execPath?: string;
  /** Arguments for that runtime, before the script. */
  execArgv?: readonly string[];
  env?: NodeJS.ProcessEnv;
}

export interface RadioChildEvents {
  message: [FromRadio];
  /** It ended without being asked to, or hung and was ended. */
  gone: [];
}

const longestLog = 4000;

/**
 * The radio process (`radio-process.ts`) as the app's side holds it: started, checked for signs of life, ended. There
 * is at most one, and only it is heard.
 */
export class RadioChild extends EventEmitter<RadioChildEvents> {
  readonly #runtime: RadioRuntime;
  readonly #timing: Pick<BluetoothTiming, 'startMs' | 'hangMs' | 'quitMs'>;
  #child: ChildProcess | null = null;
  #hangTimer: NodeJS.Timeout | undefined;
  /** Resolves when no earlier process holds the adapter any more: two must not share one. */
  free: Promise<void> = Promise.resolve();
  /** What it last wrote to its error output. */
  log = '';

  constructor(runtime: RadioRuntime, timing: Pick<BluetoothTiming, 'startMs' | 'hangMs' | 'quitMs'>) {
    super();
    this.#runtime = runtime;
    this.#timing = timing;
  }

  get running(): boolean {
    return this.#child !== null;
  }

  /** Null while there is none. */
  get pid(): number | null {
    return this.#child?.pid ?? null;
  }

  start(): void {
    const execPath = this.#runtime.execPath ?? process.execPath;
    const child = fork(this.#runtime.radioScript, [], {
      execPath,
      execArgv: [...(this.#runtime.execArgv ?? [])],
      env: {
        ...process.env,
        ...this.#runtime.env,
        ...(process.versions.electron !== undefined &&
          execPath === process.execPath && { ELECTRON_RUN_AS_NODE: '1' }),
      },
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
      serialization: 'advanced',
    });
    this.#child = child;
    child.stderr!.on('data', (text: Buffer) => this.#note(text.toString('utf8')));
    child.on('message', (raw) => {
      if (child !== this.#child) return;
      const parsed = fromRadioSchema.safeParse(raw);
      if (!parsed.success) {
        this.#note(`\nunreadable: ${parsed.error.message}`);
        return;
      }
      this.#expectLifeWithin(this.#timing.hangMs);
      this.emit('message', parsed.data);
    });
    child.on('error', (error) => {
      this.#note(`\n${error.message}`);
      if (child === this.#child && child.pid === undefined) this.#gone();
    });
    child.on('exit', () => {
      if (child === this.#child) this.#gone();
    });
    this.#expectLifeWithin(this.#timing.startMs);
  }

  order(order: ToRadio): void {
    // Where the channel has just closed, the exit event follows.
    if (this.#child?.connected) this.#child.send(order, () => undefined);
  }

  /** Asks it to go, so that it can hang up, and ends it if it does not. Whoever starts the next waits for `free`. */
  end(graceMs = this.#timing.quitMs): void {
    const child = this.#child;
    this.#child = null;
    clearTimeout(this.#hangTimer);
    if (child === null || child.pid === undefined || child.exitCode !== null || child.signalCode !== null) {
      return;
    }
    this.free = new Promise((resolve) => {
      const timer = setTimeout(() => child.kill('SIGKILL'), graceMs);
      child.once('exit', () => {
        clearTimeout(timer);
        resolve();
      });
      if (child.connected) child.send({ type: 'quit' } satisfies ToRadio, () => undefined);
    });
  }

  #gone(): void {
    this.end(0);
    this.emit('gone');
  }

  #expectLifeWithin(limitMs: number): void {
    clearTimeout(this.#hangTimer);
    this.#hangTimer = setTimeout(() => this.#gone(), limitMs);
  }

  #note(text: string): void {
    this.log = (this.log + text).slice(-longestLog);
  }
}
