/** A meter of the tests on bleno. */
import { createRequire } from 'node:module';
import type {
  Advert,
  AttHow,
  GattServerNews,
  Serve,
  Served,
  ServedCharacteristic,
  ServedService,
} from './gatt-server.ts';
import { attPackets } from './h4-framing.ts';

type Bleno = import('events').EventEmitter & {
  // biome-ignore lint/suspicious/noExplicitAny: bleno's types describe another version of it
  PrimaryService: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  Characteristic: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  Descriptor: any;
  startAdvertisingWithEIRData(data: Buffer, scanResponse: Buffer): void;
  stopAdvertising(): void;
  setServices(services: unknown[]): void;
  disconnect(): void;
  /** What bleno does not export: the link, and the controller. */
  _bindings: {
    _handle: number;
    _hci: { setAdvertiseEnable(on: boolean): void; _socket: { write(packet: Buffer): void } };
  };
};

const advertiseEveryMs = 200;
const unlikelyError = 0x0e;

export const serveWithBleno: Serve = (served, news) => {
  // It opens the controller as soon as it is loaded.
  process.env.BLENO_DEVICE_NAME = served.name;
  const bleno = createRequire(import.meta.url)('@abandonware/bleno') as Bleno;
  return new Promise((resolve) => {
    bleno.on('stateChange', (state) => {
      if (state === 'poweredOn') resolve(start(bleno, served, news));
    });
  });
};

function start(bleno: Bleno, served: Served, news: GattServerNews) {
  if (!served.isConnectable || served.address !== null)
    throw new Error('bleno can only be connected to, under the address of its controller');
  let linked = false;
  let advertised = false;
  bleno.setServices(blenoServices(bleno, served.services));
  // A real meter advertises several times a second; btvirt passes it on only when it is switched on.
  setInterval(() => {
    if (linked || !advertised) return;
    bleno._bindings._hci.setAdvertiseEnable(false);
    bleno._bindings._hci.setAdvertiseEnable(true);
  }, advertiseEveryMs);
  bleno.on('advertisingStart', news.advertising);
  bleno.on('accept', () => {
    linked = true;
    news.link(true);
  });
  bleno.on('disconnect', () => {
    linked = false;
    news.link(false);
  });
  return {
    advertise({ data, scanResponse }: Advert) {
      advertised = true;
      bleno.startAdvertisingWithEIRData(data, scanResponse);
    },
    stopAdvertising() {
      advertised = false;
      bleno.stopAdvertising();
    },
    dropLink: () => bleno.disconnect(),
    sendAtt: (bytes: Buffer, how: AttHow) => {
      const { _handle, _hci } = bleno._bindings;
      for (const packet of attPackets(_handle, bytes, how)) _hci._socket.write(packet);
    },
    setServices: (services: ServedService[]) => bleno.setServices(blenoServices(bleno, services)),
  };
}

const blenoServices = ({ PrimaryService, Characteristic, Descriptor }: Bleno, services: ServedService[]) =>
  services.map(
    ({ uuid, characteristics }) =>
      new PrimaryService({
        uuid,
        characteristics: characteristics.map(
          (each) =>
            new Characteristic({
              uuid: each.uuid,
              properties: each.properties,
              secure: each.isLocked ? each.properties : [],
              descriptors: each.descriptors.map((descriptor) => new Descriptor(descriptor)),
              ...handlersOf(each),
            }),
        ),
      }),
  );

const handlersOf = (served: ServedCharacteristic) => ({
  onReadRequest: (_offset: number, answer: (result: number, bytes: Buffer) => void) =>
    answer(0, served.read()),
  onWriteRequest: (bytes: Buffer, _offset: number, _silent: boolean, answer: (result: number) => void) =>
    answer(served.write(bytes) ? 0 : unlikelyError),
  onSubscribe: (_longest: number, send: (bytes: Buffer) => void) => served.subscribe(send),
  onUnsubscribe: () => served.subscribe(null),
});
