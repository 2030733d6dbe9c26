import { EventEmitter } from 'node:events';
import { createClient, type ManagedObjects, type MessageBus } from 'dbus-native';
import { textOfError } from './errors.ts';

/** The interfaces of an object and their properties, as BlueZ last told them; of no type until checked (`values.ts`). */
export type Interfaces = Record<string, Record<string, unknown>>;

export const adapterInterface = 'org.bluez.Adapter1';
export const deviceInterface = 'org.bluez.Device1';
export const serviceInterface = 'org.bluez.GattService1';
export const characteristicInterface = 'org.bluez.GattCharacteristic1';
export const descriptorInterface = 'org.bluez.GattDescriptor1';
export const batteryInterface = 'org.bluez.Battery1';

const serviceName = 'org.bluez';
const usualAddress = 'unix:path=/var/run/dbus/system_bus_socket';
const busAnswersWithinMs = 3000;
const serviceStartsWithinMs = 8000;
/** A call to the service that waits for nothing on the air. */
export const serviceAnswersWithinMs = 5000;
/** More than every message of BlueZ's with all the devices in a crowded hall. */
const longestMessageBytes = 8 * 1024 * 1024;

export interface BluezEvents {
  /** An object is there, or has more interfaces now. */
  added: [path: string];
  removed: [path: string, interfaceNames: string[]];
  changed: [path: string, interfaceName: string, changed: Record<string, unknown>];
  /** The service stopped, and every object with it. */
  stopped: [];
  /** The service is there again, with its objects. */
  started: [];
  /** The system bus is gone, and this with it. */
  lost: [];
}

/**
 * BlueZ, the Bluetooth service of Linux, over the system bus: the tree of its objects and calls to them. What others
 * have it remember is in the tree too; it forgets a device that was not heard for half a minute, and so does this.
 *
 * Source: BlueZ's own API documents, doc/org.bluez.*.rst of its repository.
 */
export class Bluez extends EventEmitter<BluezEvents> {
  readonly bus: MessageBus;
  #tree: ManagedObjects | null = null;

  private constructor(bus: MessageBus) {
    super();
    this.bus = bus;
  }

  /**
   * Connects to the system bus and finds the service, starting it where the system does that.
   * @throws where there is no bus, no such service, or one that does not let this user ask it
   */
  static async open(): Promise<Bluez> {
    const bus = createClient({
      busAddress: process.env.DBUS_SYSTEM_BUS_ADDRESS || usualAddress,
      authMethods: ['EXTERNAL'],
      maxMessageSize: longestMessageBytes,
    });
    const bluez = new Bluez(bus);
    await bluez.#reachBus();
    try {
      await bluez.#findService();
      await bluez.#readTree();
    } catch (error) {
      void bus.close();
      throw error;
    }
    return bluez;
  }

  #reachBus(): Promise<void> {
    const { connection } = this.bus;
    return new Promise((resolve, reject) => {
      const tooLate = setTimeout(() => {
        reject(new Error('the system bus does not answer'));
        connection.stream.destroy();
      }, busAnswersWithinMs);
      connection.on('connect', () => {
        clearTimeout(tooLate);
        resolve();
      });
      connection.on('error', (error) => {
        clearTimeout(tooLate);
        console.error(`system bus: ${error.message}`);
        reject(error);
      });
      connection.on('close', () => this.emit('lost'));
    });
  }

  async #findService(): Promise<void> {
    if (await this.bus.nameHasOwner(serviceName)) return;
    await this.bus.invokeDbus(
      { member: 'StartServiceByName', signature: 'su', body: [serviceName, 0] },
      { timeout: serviceStartsWithinMs },
    );
  }

  async #readTree(): Promise<void> {
    const tree = await this.bus.objects(serviceName, '/');
    this.#tree = tree;
    tree.on('added', (path: string) => this.emit('added', path));
    tree.on('removed', (path: string, names: string[]) => this.emit('removed', path, names));
    tree.on('changed', (path: string, name: string, changed: Record<string, unknown>) =>
      this.emit('changed', path, name, changed),
    );
    tree.on('stale', (newOwner: string) => void this.#replaced(tree, newOwner));
  }

  async #replaced(old: ManagedObjects, newOwner: string): Promise<void> {
    if (this.#tree === old) {
      this.#tree = null;
      this.emit('stopped');
    }
    // The old tree goes on listening until the service is back, for that news.
    if (newOwner === '') return;
    try {
      await old.close();
      await this.#readTree();
      this.emit('started');
    } catch (error) {
      console.error(`BlueZ started again and does not answer: ${textOfError(error)}`);
      this.emit('lost');
    }
  }

  get isRunning(): boolean {
    return this.#tree !== null;
  }

  /** The objects with an interface, by path. */
  having(interfaceName: string): [path: string, properties: Record<string, unknown>][] {
    return Object.entries(this.#tree?.filter(interfaceName) ?? {}).toSorted(([a], [b]) => (a < b ? -1 : 1));
  }

  /** One property as it is known; undefined where there is none. */
  property(path: string, interfaceName: string, name: string): unknown {
    return this.#tree?.get(path)?.[interfaceName]?.[name];
  }

  /** @throws what the service or the bus answers; `errors.ts` reads it */
  async call(
    path: string,
    interfaceName: string,
    member: string,
    { signature, body, timeoutMs = serviceAnswersWithinMs }: Partial<CallDetails> = {},
  ): Promise<unknown> {
    return await this.bus.invoke(
      {
        destination: serviceName,
        path,
        interface: interfaceName,
        member,
        ...(signature !== undefined && { signature, body }),
      },
      { timeout: timeoutMs },
    );
  }
}

interface CallDetails {
  signature: string;
  body: unknown[];
  timeoutMs: number;
}
