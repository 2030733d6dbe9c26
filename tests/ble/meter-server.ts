/**
 * A pin meter as a real GATT server (bleno over an emulated controller), run as a separate process by
 * `emulated-radio.ts`, which sends it orders over Node's channel. It describes itself by 0x2904 and 0x2901 unless it is
 * started without. Its values are our own invention.
 */
import { createRequire } from 'node:module';

export interface MeterServerOptions {
  name: string;
  /** Without 0x2904 and 0x2901 a person has to set it up. */
  selfDescribed: boolean;
  /** Null for a meter without a battery service. */
  batteryPct: number | null;
}

export type MeterOrder =
  /** Pins into wood where the scale comes to rest at `pct`, or out into the air (sends 0). */
  | { type: 'pins'; pct: number | null }
  /** Values a second while subscribed; 0 sends none but goes on answering reads. */
  | { type: 'rate'; hz: number }
  /** `count` values, each the number of its place in hundredths from 0: every one can be accounted for. */
  | { type: 'stream'; count: number; hz: number }
  /** One notification with these very bytes. */
  | { type: 'notify'; bytes: Uint8Array }
  /** Bytes straight onto the ATT channel, valid or not. */
  | { type: 'att'; bytes: Uint8Array }
  /** From now on it says that its number counts in this power of ten, as after new firmware. */
  | { type: 'exponent'; exponent: number }
  | { type: 'drop-link' }
  | { type: 'advertise'; on: boolean };

export type MeterNews =
  | { type: 'advertising' }
  | { type: 'link'; up: boolean }
  | { type: 'subscribed'; on: boolean }
  | { type: 'streamed'; count: number };

/** Service and characteristic of our own, made up for these tests. */
export const meterServiceUuid = '7d0a1f00b2c94a6e8f5317c2a4e9d010';
export const meterValueUuid = '7d0a1f01b2c94a6e8f5317c2a4e9d010';

/** What bleno does not export: the L2CAP side of the link, and the controller. */
interface Inside {
  _bindings: {
    _aclStream: { write(channel: number, bytes: Buffer): void } | null;
    _hci: { setAdvertiseEnable(on: boolean): void };
  };
}
const advertiseEveryMs = 200;
const attChannel = 4;

function serve(options: MeterServerOptions): void {
  type Bleno = import('events').EventEmitter &
    Inside & {
      // biome-ignore lint/suspicious/noExplicitAny: bleno's types describe another version of it
      PrimaryService: any;
      // biome-ignore lint/suspicious/noExplicitAny: as above
      Characteristic: any;
      // biome-ignore lint/suspicious/noExplicitAny: as above
      Descriptor: any;
      startAdvertising(name: string, serviceUuids: string[]): void;
      stopAdvertising(): void;
      setServices(services: unknown[]): void;
      disconnect(): void;
    };
  const bleno = createRequire(import.meta.url)('@abandonware/bleno') as Bleno;
  const tell = (news: MeterNews) => process.send?.(news);

  let notify: ((bytes: Buffer) => void) | null = null;
  let pins: { pct: number; sinceMs: number } | null = null;
  let ticks = 0;
  let ticking: NodeJS.Timeout | undefined;
  let streaming: NodeJS.Timeout | undefined;

  /** Hundredths of a percent, as the scale shows them: drifting from 1.2 % off to rest within two seconds. */
  const shown = () => {
    ticks++;
    if (pins === null) return 0;
    const off = 1.2 * Math.exp(-(Date.now() - pins.sinceMs) / 350) + 0.03 * Math.sin(ticks * 2.4);
    return Math.max(0, Math.round(100 * (pins.pct + off)));
  };
  const bytesOf = (hundredths: number) => {
    const bytes = Buffer.alloc(2);
    bytes.writeUInt16LE(hundredths);
    return bytes;
  };
  const setRate = (hz: number) => {
    clearInterval(ticking);
    if (hz > 0) ticking = setInterval(() => notify?.(bytesOf(shown())), 1000 / hz);
  };

  // uint16, 10^-2, percentage (0x27AD), namespace SIG.
  const presentationFormat = Buffer.from([0x06, 0xfe, 0xad, 0x27, 1, 0, 0]);
  const { PrimaryService, Characteristic, Descriptor } = bleno;
  const value = new Characteristic({
    uuid: meterValueUuid,
    properties: ['read', 'notify'],
    descriptors: options.selfDescribed
      ? [
          new Descriptor({ uuid: '2904', value: presentationFormat }),
          new Descriptor({ uuid: '2901', value: Buffer.from('Moisture content') }),
        ]
      : [],
    onReadRequest: (_offset: number, answer: (result: number, bytes: Buffer) => void) =>
      answer(0, bytesOf(shown())),
    onSubscribe: (_longest: number, update: (bytes: Buffer) => void) => {
      notify = update;
      tell({ type: 'subscribed', on: true });
    },
    onUnsubscribe: () => {
      notify = null;
      tell({ type: 'subscribed', on: false });
    },
  });
  const services = [new PrimaryService({ uuid: meterServiceUuid, characteristics: [value] })];
  if (options.batteryPct !== null) {
    const battery = new Characteristic({
      uuid: '2a19',
      properties: ['read'],
      value: Buffer.from([options.batteryPct]),
    });
    services.push(new PrimaryService({ uuid: '180f', characteristics: [battery] }));
  }

  let linked = false;
  let advertised = true;
  const advertise = () => bleno.startAdvertising(options.name, [meterServiceUuid]);
  // A real meter advertises several times a second; btvirt passes it on only when it is switched on.
  setInterval(() => {
    if (linked || !advertised) return;
    bleno._bindings._hci.setAdvertiseEnable(false);
    bleno._bindings._hci.setAdvertiseEnable(true);
  }, advertiseEveryMs);
  bleno.on('stateChange', (state) => {
    if (state === 'poweredOn') advertise();
  });
  bleno.once('advertisingStart', () => bleno.setServices(services));
  bleno.on('advertisingStart', () => tell({ type: 'advertising' }));
  bleno.on('accept', () => {
    linked = true;
    tell({ type: 'link', up: true });
  });
  bleno.on('disconnect', () => {
    linked = false;
    notify = null;
    tell({ type: 'link', up: false });
  });
  setRate(10);

  process.on('message', (order: MeterOrder) => {
    switch (order.type) {
      case 'pins':
        pins = order.pct === null ? null : { pct: order.pct, sinceMs: Date.now() };
        return;
      case 'rate':
        setRate(order.hz);
        return;
      case 'stream': {
        setRate(0);
        clearInterval(streaming);
        let sent = 0;
        const beganMs = Date.now();
        // By the clock and not by the tick, so that the rate holds on a busy machine.
        streaming = setInterval(() => {
          const due = Math.min(order.count, Math.floor(((Date.now() - beganMs) * order.hz) / 1000));
          while (sent < due) notify?.(bytesOf(sent++));
          if (sent < order.count) return;
          clearInterval(streaming);
          tell({ type: 'streamed', count: sent });
        }, 5);
        return;
      }
      case 'notify':
        notify?.(Buffer.from(order.bytes));
        return;
      case 'att':
        bleno._bindings._aclStream?.write(attChannel, Buffer.from(order.bytes));
        return;
      case 'exponent':
        presentationFormat.writeInt8(order.exponent, 1);
        return;
      case 'drop-link':
        bleno.disconnect();
        return;
      case 'advertise':
        advertised = order.on;
        if (order.on) advertise();
        else bleno.stopAdvertising();
        return;
    }
  });
  process.on('disconnect', () => process.exit(0));
}

if (import.meta.main) serve(JSON.parse(process.argv[2]!) as MeterServerOptions);
