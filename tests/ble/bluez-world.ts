/**
 * BlueZ without a radio, for tests: a system bus of this world's own (Debian's dbus), and on it the BlueZ of
 * python3-dbusmock with the meters of `bluez_meter.py`.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { createClient, type MessageBus } from 'dbus-native';

const template = fileURLToPath(new URL('bluez_meter.py', import.meta.url));
/** Debian's own Python has the mock; another one that is first on the path has not. */
const python = '/usr/bin/python3';

export const meterServiceUuid = '7d0a1f00-b2c9-4a6e-8f53-17c2a4e9d010';
export const meterValueUuid = '7d0a1f01-b2c9-4a6e-8f53-17c2a4e9d010';

/** What a meter of these tests offers; UUIDs as BlueZ writes them, bytes as hex. */
export interface MeterServices {
  uuid: string;
  characteristics: { uuid: string; flags: string[]; value?: string; descriptors?: Record<string, string> }[];
}

/** How a meter behaves, and what was done to it; `bluez_meter.py` knows what each means. */
export interface MeterBehavior {
  advertises: boolean;
  refusals: number;
  resolves: boolean;
  pairing: 'none' | 'just-works' | 'code';
  batteryPct: number | null;
  services: MeterServices[];
  manufacturerData: Record<string, string>;
  serviceData: Record<string, string>;
  links: number;
  written: string[];
}

const standardUuid = (short: string) => `0000${short}-0000-1000-8000-00805f9b34fb`;

/** uint16, 10^-2, percentage (0x27AD), namespace SIG. */
const presentationFormat = '06fead27010000';

export const selfDescribed: MeterServices[] = [
  {
    uuid: meterServiceUuid,
    characteristics: [
      {
        uuid: meterValueUuid,
        flags: ['read', 'notify'],
        value: '0000',
        descriptors: {
          [standardUuid('2904')]: presentationFormat,
          [standardUuid('2901')]: Buffer.from('Moisture content').toString('hex'),
        },
      },
    ],
  },
];

const busConfig = (folder: string, rules: string) => `<!DOCTYPE busconfig PUBLIC
 "-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN"
 "http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd">
<busconfig>
  <listen>unix:path=${folder}/bus</listen>
  <auth>EXTERNAL</auth>
  <policy context="default">
    <allow user="*"/>
    <allow own="*"/>
    <allow send_type="method_call"/>
    <allow send_type="signal"/>
    <allow send_requested_reply="true" send_type="method_return"/>
    <allow send_requested_reply="true" send_type="error"/>
    <allow receive_type="method_call"/>
    <allow receive_type="method_return"/>
    <allow receive_type="error"/>
    <allow receive_type="signal"/>
    ${rules}
  </policy>
</busconfig>`;

export class BluezWorld {
  readonly #folder = mkdtempSync(join(tmpdir(), 'pintally-bluez-'));
  readonly address = `unix:path=${this.#folder}/bus`;
  /** What a process needs in its environment to find this BlueZ. */
  readonly env = { DBUS_SYSTEM_BUS_ADDRESS: this.address };
  #daemon: ChildProcess | null = null;
  #service: ChildProcess | null = null;
  #bus: MessageBus | null = null;

  /** @param rules  further rules of the bus, in its own language */
  static async start({ rules = '', service = true } = {}): Promise<BluezWorld> {
    const world = new BluezWorld();
    const config = join(world.#folder, 'bus.conf');
    writeFileSync(config, busConfig(world.#folder, rules));
    world.#daemon = spawn('dbus-daemon', ['--nofork', `--config-file=${config}`], { stdio: 'ignore' });
    world.#bus = await world.#connected();
    if (service) await world.startService();
    return world;
  }

  async #connected(): Promise<MessageBus> {
    for (let tries = 0; ; tries++) {
      const bus = createClient({ busAddress: this.address, authMethods: ['EXTERNAL'] });
      try {
        await new Promise((resolve, reject) => {
          bus.connection.on('connect', () => resolve(null));
          bus.connection.on('error', reject);
        });
        return bus;
      } catch (error) {
        if (tries === 100) throw error;
        await pause(50);
      }
    }
  }

  async startService(): Promise<void> {
    this.#service = spawn(
      python,
      ['-m', 'dbusmock', '--system', '--template', template, '--logfile', join(this.#folder, 'calls.log')],
      { env: { ...process.env, ...this.env }, stdio: ['ignore', 'ignore', 'inherit'] },
    );
    for (let tries = 0; tries < 200; tries++) {
      if (await this.#bus!.nameHasOwner('org.bluez')) return;
      await pause(50);
    }
    throw new Error('The BlueZ of python3-dbusmock does not start (apt-get install python3-dbusmock).');
  }

  async stopService(): Promise<void> {
    await end(this.#service);
    this.#service = null;
  }

  /** The service is there and answers nothing; `wake` goes on where it stopped. */
  freeze(): void {
    this.#service!.kill('SIGSTOP');
  }

  wake(): void {
    this.#service!.kill('SIGCONT');
  }

  async stopBus(): Promise<void> {
    await end(this.#daemon);
    this.#daemon = null;
  }

  async stop(): Promise<void> {
    await this.stopService();
    await this.#bus?.close();
    await this.stopBus();
    rmSync(this.#folder, { recursive: true, force: true });
  }

  async call(path: string, interfaceName: string, member: string, signature = '', body: unknown[] = []) {
    return await this.#bus!.invoke<string>({
      destination: 'org.bluez',
      path,
      interface: interfaceName,
      member,
      ...(signature !== '' && { signature, body }),
    });
  }

  /** Calls another program on the bus, by its unique name. */
  async callOn(
    destination: string,
    path: string,
    interfaceName: string,
    member: string,
    signature: string,
    body: unknown[],
  ) {
    return await this.#bus!.invoke({ destination, path, interface: interfaceName, member, signature, body });
  }

  /** Unique names of the programs on the bus. */
  async programs(): Promise<string[]> {
    return (await this.#bus!.listNames()).filter((name) => name.startsWith(':') && name !== this.#bus!.name);
  }

  #mock(member: string, signature: string, ...body: unknown[]): Promise<string> {
    return this.call('/', 'org.bluez.Mock', member, signature, body);
  }

  /** @param name  such as "hci0" */
  addAdapter(name: string): Promise<string> {
    return this.#mock('AddAdapter', 'ss', name, 'Test computer');
  }

  async setPowered(adapter: string, isOn: boolean): Promise<void> {
    await this.call(`/org/bluez/${adapter}`, 'org.freedesktop.DBus.Mock', 'UpdateProperties', 'sa{sv}', [
      'org.bluez.Adapter1',
      [['Powered', ['b', isOn]]],
    ]);
  }

  /** With everything on it. */
  async removeAdapter(adapter: string): Promise<void> {
    await this.#mock('RemoveObjectsUnder', 's', `/org/bluez/${adapter}`);
  }

  async addMeter(
    { name = 'Test pin meter', adapter = 'hci0', address = 'AA:BB:CC:DD:EE:01' } = {},
    behavior: Partial<MeterBehavior> = {},
  ): Promise<BluezMeter> {
    const meter = JSON.stringify({ services: selfDescribed, ...behavior });
    const path = await this.#mock('AddMeter', 'ssss', adapter, address, name, meter);
    return new BluezMeter(name, path, (member, signature, ...body) => this.#mock(member, signature, ...body));
  }
}

type CallMock = (member: string, signature: string, ...body: unknown[]) => Promise<string>;

export class BluezMeter {
  readonly name: string;
  readonly path: string;
  readonly #mock: CallMock;

  constructor(name: string, path: string, mock: CallMock) {
    this.name = name;
    this.path = path;
    this.#mock = mock;
  }

  /** Path of a characteristic, by its place among those of its service. */
  at(service: number, characteristic: number): string {
    const four = (index: number) => index.toString(16).padStart(4, '0');
    return `${this.path}/service${four(service)}/char${four(characteristic)}`;
  }

  async set(behavior: Partial<MeterBehavior>): Promise<void> {
    await this.#mock('SetMeter', 'ss', this.path, JSON.stringify(behavior));
  }

  async now(): Promise<MeterBehavior & { connected: boolean; notifying: string[] }> {
    return JSON.parse(await this.#mock('GetMeter', 's', this.path));
  }

  async notify(bytes: number[], path = this.at(0, 0)): Promise<void> {
    await this.#mock('Notify', 'say', path, Buffer.from(bytes));
  }

  async stream(count: number, hz: number): Promise<void> {
    await this.#mock('Stream', 'sii', this.at(0, 0), count, hz);
  }

  async dropLink(): Promise<void> {
    await this.#mock('DropLink', 's', this.path);
  }

  /** BlueZ forgets it, or only a part of what it offers. */
  async remove(path = this.path): Promise<void> {
    await this.#mock('RemoveObjectsUnder', 's', path);
  }

  async distort(path: string, interfaceName: string, property: string, kind: 'number' | 'text' | 'texts') {
    await this.#mock('Distort', 'ssss', path, interfaceName, property, kind);
  }
}

async function end(child: ChildProcess | null): Promise<void> {
  if (child === null || child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
}
