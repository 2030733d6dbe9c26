import { EventEmitter } from 'node:events';
import type { BluetoothTiming } from './bluetooth-timing.ts';
import { type FromRadio, fromRadioSchema, type ToRadio } from './radio-messages.ts';
import { forkRadio, type RadioPort, type RadioRuntime } from './radio-port.ts';

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
  #port: RadioPort | null = null;
  /** Those still ending, with what waits for that. */
  readonly #ending = new Map<RadioPort, () => void>();
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
    return this.#port !== null;
  }

  /** Null while there is none. */
  get pid(): number | null {
    return this.#port?.pid() ?? null;
  }

  start(): void {
    const start = this.#runtime.startPort ?? forkRadio;
    const port = start(this.#runtime, {
      message: (raw) => {
        if (port === this.#port) this.#hear(raw);
      },
      note: (text) => this.#note(text),
      exit: () => {
        this.#ending.get(port)?.();
        if (port === this.#port) this.#gone();
      },
    });
    this.#port = port;
    this.#expectLifeWithin(this.#timing.startMs);
  }

  order(order: ToRadio): void {
    this.#port?.send(order);
  }

  /** Asks it to go, so that it can hang up, and ends it if it does not. Whoever starts the next waits for `free`. */
  end(graceMs = this.#timing.quitMs): void {
    const port = this.#port;
    this.#port = null;
    clearTimeout(this.#hangTimer);
    if (port === null || port.isOver()) return;
    this.free = new Promise((resolve) => {
      const timer = setTimeout(port.kill, graceMs);
      this.#ending.set(port, () => {
        clearTimeout(timer);
        this.#ending.delete(port);
        resolve();
      });
      port.send({ type: 'quit' });
    });
  }

  #hear(raw: unknown): void {
    const parsed = fromRadioSchema.safeParse(raw);
    if (!parsed.success) {
      this.#note(`\nunreadable: ${parsed.error.message}`);
      return;
    }
    this.#expectLifeWithin(this.#timing.hangMs);
    this.emit('message', parsed.data);
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
