/**
 * A Bluetooth LE world without a radio, for tests: BlueZ's emulator (`btvirt`, Debian's bluez-test-tools) with any
 * number of emulated controllers that hear each other, and meters on it.
 *
 * btvirt opens /tmp/bt-server-le; the shim that is loaded into it moves that into a folder of this world's own, so
 * worlds can exist side by side and need no lock.
 */
import { type ChildProcess, execFileSync, fork, spawn } from 'node:child_process';
import { EventEmitter, once } from 'node:events';
import { existsSync, mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { RadioControl } from './h4-socket.ts';
import type { MeterNews, MeterOrder, MeterServerOptions } from './meter-server.ts';

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));

/** The radio process as it is in the sources, for `BluetoothLink` in tests. */
export const radioScript = here('../../electron/meter/radio-process.ts');

const usualMeter: MeterServerOptions = {
  name: 'Test pin meter',
  library: 'bleno',
  gives: 'notify',
  startHex: null,
  isLocked: false,
  isConnectable: true,
  address: null,
  selfDescribed: true,
  air: null,
  batteryPct: 76,
  packet: 'hundredths',
};

export class EmulatedRadio {
  readonly #btvirt: ChildProcess;
  readonly #folder: string;
  readonly #meters: EmulatedMeter[] = [];
  /** Whoever connects to it has a controller. */
  readonly controllerPath: string;
  readonly #adapter: ChildProcess;

  /**
   * What a process needs in its environment to reach this world through noble. Node 24 only: the preload is TypeScript.
   */
  readonly env: {
    NODE_OPTIONS: string;
    H4_PATH: string;
    RADIO_CONTROL: string;
    DBUS_SYSTEM_BUS_ADDRESS: string;
  };

  private constructor(btvirt: ChildProcess, folder: string) {
    this.#btvirt = btvirt;
    this.#folder = folder;
    this.controllerPath = join(folder, 'bt-server-le');
    const adapterPath = join(folder, 'adapter');
    this.#adapter = fork(here('adapter.ts'), [adapterPath, this.controllerPath], { execArgv: [] });
    this.env = {
      NODE_OPTIONS: `--import ${new URL('./swap-hci-socket.ts', import.meta.url).href}`,
      H4_PATH: adapterPath,
      RADIO_CONTROL: join(folder, 'control.json'),
      // The computer's own Bluetooth service must not be asked.
      DBUS_SYSTEM_BUS_ADDRESS: `unix:path=${join(folder, 'no-bus')}`,
    };
    this.setAdapter({});
  }

  static async start(): Promise<EmulatedRadio> {
    const shim = compileShim();
    const folder = mkdtempSync(join(tmpdir(), 'pintally-air-'));
    const btvirt = spawn('btvirt', ['-s'], {
      env: { ...process.env, LD_PRELOAD: shim, BTVIRT_FOLDER: folder, NODE_OPTIONS: '' },
      stdio: 'ignore',
    });
    btvirt.on('error', (error) => {
      throw new Error(`btvirt does not start (apt-get install bluez-test-tools): ${error.message}`);
    });
    const radio = new EmulatedRadio(btvirt, folder);
    await radio.#opened();
    return radio;
  }

  async #opened(): Promise<void> {
    for (let tries = 0; tries < 100; tries++) {
      if (this.#btvirt.exitCode !== null) throw new Error(`btvirt ended with ${this.#btvirt.exitCode}`);
      if ((await answers(this.controllerPath)) && (await answers(this.env.H4_PATH))) return;
      await pause(50);
    }
    throw new Error(`btvirt or the adapter did not open a socket in ${this.#folder}`);
  }

  /** How the adapter on the app's side behaves from now on. */
  setAdapter(control: Partial<RadioControl>): void {
    writeFileSync(this.env.RADIO_CONTROL, JSON.stringify({ rssiDbm: -58, ...control }));
  }

  /**
   * A meter that advertises and can be connected to when the promise resolves.
   * @param H4_PATH  the way to its controller
   */
  async startMeter(
    options: Partial<MeterServerOptions> = {},
    H4_PATH: string = this.controllerPath,
  ): Promise<EmulatedMeter> {
    const full: MeterServerOptions = { ...usualMeter, ...options };
    const server = fork(here('meter-server.ts'), [JSON.stringify(full)], {
      execArgv: [],
      // The control is of the app's adapter; its own is always on.
      env: {
        ...process.env,
        ...this.env,
        H4_PATH,
        RADIO_CONTROL: '',
      },
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
      serialization: 'advanced',
      // ble-host keeps what it knows of others in the folder that it runs in.
      cwd: this.#folder,
    });
    const meter = new EmulatedMeter(server, full.name);
    this.#meters.push(meter);
    await meter.until('advertising');
    return meter;
  }

  /** Everything ends with it: meters, controllers, sockets. */
  async stop(): Promise<void> {
    for (const meter of this.#meters) await meter.quit();
    await end(this.#adapter);
    await end(this.#btvirt);
    rmSync(this.#folder, { recursive: true, force: true });
  }
}

/** One meter in the emulated world, in a separate process. */
export class EmulatedMeter {
  readonly name: string;
  readonly #server: ChildProcess;
  readonly #news = new EventEmitter<{ news: [MeterNews] }>();
  /** How many links it has had, and whether one is up. */
  links = 0;
  linked = false;
  subscribed = false;

  constructor(server: ChildProcess, name: string) {
    this.name = name;
    this.#server = server;
    server.on('message', (news: MeterNews) => {
      if (news.type === 'link') {
        this.linked = news.up;
        if (news.up) this.links++;
        else this.subscribed = false;
      }
      if (news.type === 'subscribed') this.subscribed = news.on;
      this.#news.emit('news', news);
    });
  }

  /** Waits for the next news of a kind. */
  until<T extends MeterNews['type']>(type: T, limitMs = 10_000): Promise<Extract<MeterNews, { type: T }>> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error(`${this.name}: no ${type} in ${limitMs} ms`)), limitMs);
      const listen = (news: MeterNews) => {
        if (news.type !== type) return;
        clearTimeout(timer);
        this.#news.off('news', listen);
        resolve(news as Extract<MeterNews, { type: T }>);
      };
      this.#news.on('news', listen);
    });
  }

  tell(order: MeterOrder): void {
    this.#server.send(order);
  }

  /** Pins in where the scale comes to rest at this, after a second or two. */
  press(pct: number): void {
    this.tell({ type: 'pins', pct });
  }

  lift(): void {
    this.tell({ type: 'pins', pct: null });
  }

  hold(isPressed: boolean): void {
    this.tell({ type: 'button', isPressed });
  }

  /** Goes silent without a goodbye, as with an empty battery; `wake` goes on where it stopped. */
  freeze(): void {
    this.#server.kill('SIGSTOP');
  }

  wake(): void {
    this.#server.kill('SIGCONT');
  }

  quit(): Promise<void> {
    return end(this.#server);
  }
}

/** A world with one meter in it, for tests that need no more to begin with. */
export async function startMeterServer(
  options: Partial<MeterServerOptions> = {},
): Promise<{ radio: EmulatedRadio; meter: EmulatedMeter; stop: () => Promise<void> }> {
  const radio = await EmulatedRadio.start();
  const meter = await radio.startMeter(options);
  return { radio, meter, stop: () => radio.stop() };
}

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
}

function compileShim(): string {
  const source = here('btvirt-shim.c');
  const folder = here('../../artifacts');
  const shim = join(folder, 'btvirt-shim.so');
  if (!existsSync(shim) || statSync(shim).mtimeMs < statSync(source).mtimeMs) {
    mkdirSync(folder, { recursive: true });
    // Under another name first: another run may be doing the same.
    const half = `${shim}.${process.pid}`;
    execFileSync('gcc', ['-shared', '-fPIC', '-O1', '-o', half, source, '-ldl']);
    execFileSync('mv', [half, shim]);
  }
  return shim;
}

function answers(path: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(path)
      .on('connect', () => {
        socket.destroy();
        resolve(true);
      })
      .on('error', () => resolve(false));
  });
}
