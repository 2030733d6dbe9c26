import { type ChildProcess, spawn } from 'node:child_process';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { TICKET_IN_ADDRESS } from '../../shared-core/contract/hello.ts';
import { addressOf } from '../address-of.ts';
import { compiledShim, DiskControl } from './disk-shim.ts';
import { connectWindow, HostGone, type SocketWindow } from './socket-window.ts';

const built = join(import.meta.dirname, '../../out/main/loopback.js');

/** The built host as a process, with the shim between it and its data folder. */
export class ShimmedHost {
  readonly folder: string;
  readonly disk: DiskControl;
  /** Everything that it wrote to the folder, where that is logged (`write-log.ts`). */
  readonly log: string;
  readonly #process: ChildProcess;
  readonly #address: Promise<string>;
  /** Done when the process has ended. */
  readonly ended: Promise<void>;
  /** Of the first window: the others show its key. */
  #key: Promise<string> | null = null;
  #printed = '';

  /** @param control  numbers that hold from its first moment on */
  constructor(
    folder: string,
    { logs = false, control = {} }: { logs?: boolean; control?: Parameters<DiskControl['set']>[0] } = {},
  ) {
    this.folder = folder;
    this.log = `${folder}.log`;
    this.disk = new DiskControl(`${folder}.control`);
    this.disk.set(control);
    this.#process = spawn(process.execPath, [built], {
      env: {
        ...process.env,
        PINTALLY_DATA: folder,
        PINTALLY_SIMULATED_METER: 'own-yard',
        LD_PRELOAD: compiledShim(),
        FAULT_FOLDER: folder,
        FAULT_CONTROL: this.disk.file,
        ...(logs ? { FAULT_LOG: this.log } : {}),
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.ended = new Promise((resolve) => this.#process.once('exit', () => resolve()));
    this.#process.stderr?.on('data', (data) => {
      this.#printed += data;
    });
    this.#address = addressOf(this.#process).catch(() => {
      throw new HostGone();
    });
    // Whoever waits for it hears of it.
    this.#address.catch(() => undefined);
  }

  /** @throws HostGone */
  async window(): Promise<SocketWindow> {
    const { origin, searchParams } = new URL(await this.#address);
    if (this.#key !== null) return (await connectWindow(origin, { key: await this.#key })).window;
    const first = connectWindow(origin, { ticket: searchParams.get(TICKET_IN_ADDRESS) });
    this.#key = first.then(({ key }) => key);
    // Whoever opens the next window hears of it.
    this.#key.catch(() => undefined);
    return (await first).window;
  }

  /** How much is in the write record so far, bytes: what is acknowledged by now was written before that. */
  logBytes(): number {
    return statSync(this.log).size;
  }

  hasEnded(): boolean {
    return this.#process.exitCode !== null || this.#process.signalCode !== null;
  }

  /** What it printed about faults. */
  printed(): string {
    return this.#printed;
  }

  /** Ends it without a chance to do anything more. */
  async kill(): Promise<void> {
    this.#process.kill('SIGKILL');
    await this.ended;
  }

  /** Ends it as Ctrl+C does. */
  async stop(): Promise<void> {
    this.#process.kill('SIGTERM');
    await this.ended;
  }
}
