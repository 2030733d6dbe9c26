/** A meter of the tests on ble-host, which shares no code with bleno. */
import { EventEmitter } from 'node:events';
import { createRequire } from 'node:module';
import { connect, type Socket } from 'node:net';
import type { Advert, Serve, ServedCharacteristic, ServedService } from './gatt-server.ts';
import { attPackets, H4Framing, handleOfLink } from './h4-framing.ts';

interface Connection extends EventEmitter {
  disconnect(): void;
  smp: EventEmitter & { sendPairingFailed(reason: number): void };
}
interface HostCharacteristic {
  notify?(connection: Connection, value: Buffer): void;
  indicate?(connection: Connection, value: Buffer): void;
}
interface Manager extends EventEmitter {
  gattDb: {
    setDeviceName(name: string): void;
    addServices(services: unknown[]): void;
    removeService(service: unknown): void;
  };
  setAdvertisingData(data: Buffer): void;
  setScanResponseData(data: Buffer): void;
  startAdvertising(
    parameters: { advertisingType: string },
    onLink: (status: number, connection: Connection) => void,
  ): void;
  stopAdvertising(done?: () => void): void;
}
interface BleHost {
  BleManager: {
    create(
      transport: EventEmitter,
      options: { staticRandomAddress?: string },
      done: (error: Error | null, manager: Manager) => void,
    ): void;
  };
  AttErrors: { SUCCESS: number; UNLIKELY_ERROR: number };
  SmpErrors: { PAIRING_NOT_SUPPORTED: number };
}

const advertiseEveryMs = 200;

/** The controller's line; ble-host gets whole packets. */
class Controller extends EventEmitter {
  readonly #socket: Socket;
  #handle = 0;

  constructor(path: string) {
    super();
    const framing = new H4Framing();
    this.#socket = connect(path).on('data', (bytes) => {
      for (const packet of framing.packetsIn(bytes)) {
        this.#handle = handleOfLink(packet) ?? this.#handle;
        this.emit('data', packet);
      }
    });
  }

  write(packet: Buffer): void {
    this.#socket.write(packet);
  }

  get handle(): number {
    return this.#handle;
  }
}

export const serveWithBleHost: Serve = async (served, news) => {
  const { BleManager, AttErrors, SmpErrors } = createRequire(import.meta.url)('ble-host') as BleHost;
  const controller = new Controller(process.env.H4_PATH!);
  const manager = await new Promise<Manager>((resolve, reject) => {
    const options = served.address === null ? {} : { staticRandomAddress: served.address };
    BleManager.create(controller, options, (error, made) => (error ? reject(error) : resolve(made)));
  });
  let link: Connection | null = null;
  let advertised = false;
  /** Whether the controller is advertising, which a link ends. */
  let isOn = false;
  let offered = hostServices(served.services);

  function hostServices(services: ServedService[]) {
    return services.map(({ uuid, characteristics }) => ({
      uuid: hostUuid(uuid),
      characteristics: characteristics.map(hostCharacteristic),
    }));
  }
  function hostCharacteristic(each: ServedCharacteristic) {
    const isLockedTo = (what: 'read' | 'write') => each.isLocked && each.properties.includes(what);
    const made: HostCharacteristic = {};
    return Object.assign(made, {
      uuid: hostUuid(each.uuid),
      properties: each.properties,
      ...(isLockedTo('read') && { readPerm: 'encrypted' }),
      ...(isLockedTo('write') && { writePerm: 'encrypted' }),
      descriptors: [
        ...each.descriptors.map(({ uuid, value }) => ({ uuid: hostUuid(uuid), value })),
        ...(each.isLocked && each.properties.includes('notify')
          ? [{ uuid: 0x2902, writePerm: 'encrypted' }]
          : []),
      ],
      onRead: (_: Connection, answer: (result: number, bytes: Buffer) => void) =>
        answer(AttErrors.SUCCESS, each.read()),
      onWrite: (_: Connection, _needsAnswer: boolean, bytes: Buffer, answer: (result: number) => void) =>
        answer(each.write(bytes) ? AttErrors.SUCCESS : AttErrors.UNLIKELY_ERROR),
      onSubscriptionChange: (connection: Connection, notifies: boolean, indicates: boolean) => {
        if (notifies) each.subscribe((bytes) => made.notify!(connection, bytes));
        else if (indicates) each.subscribe((bytes) => made.indicate!(connection, bytes));
        else each.subscribe(null);
      },
    });
  }
  manager.gattDb.setDeviceName(served.name);
  manager.gattDb.addServices(offered);

  function advertiseAgain(): void {
    if (link !== null || !advertised || isOn) return;
    isOn = true;
    manager.startAdvertising(
      { advertisingType: served.isConnectable ? 'ADV_IND' : 'ADV_NONCONN_IND' },
      (status, connection) => {
        isOn = false;
        if (status === 0) follow(connection);
      },
    );
  }
  function follow(connection: Connection): void {
    link = connection;
    news.link(true);
    connection.smp.on('pairingRequest', () =>
      connection.smp.sendPairingFailed(SmpErrors.PAIRING_NOT_SUPPORTED),
    );
    connection.on('disconnect', () => {
      link = null;
      news.link(false);
      advertiseAgain();
    });
  }
  // As with bleno: btvirt passes an advert on only when advertising is switched on.
  setInterval(() => {
    if (advertised) stop(advertiseAgain);
  }, advertiseEveryMs);
  function stop(done?: () => void): void {
    if (!isOn) return;
    isOn = false;
    manager.stopAdvertising(done);
  }

  return {
    advertise({ data, scanResponse }: Advert) {
      manager.setAdvertisingData(data);
      manager.setScanResponseData(scanResponse);
      advertised = true;
      advertiseAgain();
      news.advertising();
    },
    stopAdvertising() {
      advertised = false;
      stop();
    },
    dropLink: () => link?.disconnect(),
    sendAtt: (bytes: Buffer, how) => {
      for (const packet of attPackets(controller.handle, bytes, how)) controller.write(packet);
    },
    setServices(services: ServedService[]) {
      for (const each of offered) manager.gattDb.removeService(each);
      offered = hostServices(services);
      manager.gattDb.addServices(offered);
    },
  };
};

/** As ble-host takes it: the SIG's as a number, others with hyphens. */
const hostUuid = (plain: string): string | number =>
  plain.length === 4
    ? Number.parseInt(plain, 16)
    : plain.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
