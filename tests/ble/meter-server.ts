/**
 * A pin meter as a real GATT server over an emulated controller, run as a separate process by `emulated-radio.ts`, which
 * sends it orders over Node's channel. It describes itself by 0x2904 and 0x2901 unless it is started without. Its values
 * are our own invention.
 */
import { environmentUuid, humidityUuid, temperatureUuid } from '../../shared-core/gatt/assigned-numbers.ts';
import { openSensorUuid } from '../../shared-core/gatt/environment.ts';
import { serveWithBleHost } from './ble-host-server.ts';
import { serveWithBleno } from './bleno-server.ts';
import { type AttHow, advertOf, type ServedCharacteristic, type ServedService } from './gatt-server.ts';

export type GattLibrary = 'bleno' | 'ble-host';

export interface MeterServerOptions {
  name: string;
  library: GattLibrary;
  /** How its value is had: it sends it, with or without wanting an answer, or it is read; or it is advertised. */
  gives: 'notify' | 'indicate' | 'read' | 'service-data' | 'manufacturer-data';
  /** What is to be written before it sends anything, hex; null for nothing. */
  startHex: string | null;
  /** Only to a link that is paired, and it refuses to pair. */
  isLocked: boolean;
  /** One that only advertises. */
  isConnectable: boolean;
  /** Its address, as of 6 octets with colons from C0 on; null for the address of its controller. */
  address: string | null;
  /** Without 0x2904 and 0x2901 a person has to set it up. */
  selfDescribed: boolean;
  /** Of a hygrometer instead of a meter: °C, and humidity as a fraction; null for a meter. */
  air: { tempC: number; rh: number } | null;
  /** Null for a meter without a battery service. */
  batteryPct: number | null;
  /**
   * `hundredths`: the number alone. `text`: a count, the number with its unit, a letter while the button is pressed and a
   * temperature, as "7 MC= 13,4 % H T21". No standard has it: it is made up for these tests.
   */
  packet: 'hundredths' | 'text';
}

export type MeterOrder =
  /** Pins into wood where the scale comes to rest at `pct`, or out into the air (sends 0). */
  | { type: 'pins'; pct: number | null }
  /** The button on the meter. */
  | { type: 'button'; isPressed: boolean }
  /** Values a second while subscribed; 0 sends none but goes on answering reads. */
  | { type: 'rate'; hz: number }
  /** `count` values, each the number of its place in hundredths from 0: every one can be accounted for. */
  | { type: 'stream'; count: number; hz: number }
  /** One notification with these very bytes. */
  | { type: 'notify'; bytes: Uint8Array }
  /** Bytes straight onto the ATT channel, valid or not; `whole` unless said otherwise. */
  | { type: 'att'; bytes: Uint8Array; how?: AttHow }
  /** From now on it says that its number counts in this power of ten, as after new firmware. */
  | { type: 'exponent'; exponent: number }
  /** From the next link on it offers this service beside the others. */
  | { type: 'more-services'; uuid: string }
  | { type: 'drop-link' }
  | { type: 'advertise'; on: boolean };

export type MeterNews =
  | { type: 'advertising' }
  | { type: 'link'; up: boolean }
  | { type: 'subscribed'; on: boolean }
  | { type: 'streamed'; count: number }
  | { type: 'started'; bytes: Uint8Array };

/** Service and characteristics of our own, made up for these tests. */
export const meterServiceUuid = '7d0a1f00b2c94a6e8f5317c2a4e9d010';
export const meterValueUuid = '7d0a1f01b2c94a6e8f5317c2a4e9d010';
export const meterStartUuid = '7d0a1f02b2c94a6e8f5317c2a4e9d010';
/** For adverts: 16 bits that the SIG has not assigned, and its company id for tests (both from memory). */
export const advertServiceUuid = 'fdff';
export const advertCompanyId = 0xffff;

async function serve(options: MeterServerOptions): Promise<void> {
  const tell = (news: MeterNews) => process.send?.(news);

  let send: ((bytes: Buffer) => void) | null = null;
  let isStarted = options.startHex === null;
  let pins: { pct: number; sinceMs: number } | null = null;
  let isPressed = false;
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
    if (options.packet === 'text') {
      const number = hundredths === 0 ? '--,-' : (hundredths / 100).toFixed(1).replace('.', ',');
      return Buffer.from(`${ticks % 10} MC=${number.padStart(5)} % ${isPressed ? 'H' : ' '} T21`);
    }
    const bytes = Buffer.alloc(2);
    bytes.writeUInt16LE(hundredths);
    return bytes;
  };
  const isAdvertised = options.gives === 'service-data' || options.gives === 'manufacturer-data';
  let isAdvertising = true;
  const give = (bytes: Buffer) => {
    if (isAdvertised && isAdvertising) server.advertise(advert(bytes));
    else if (isStarted) send?.(bytes);
  };
  const setRate = (hz: number) => {
    clearInterval(ticking);
    if (hz > 0) ticking = setInterval(() => give(bytesOf(shown())), 1000 / hz);
  };

  // uint16, 10^-2, percentage (0x27AD), namespace SIG.
  const presentationFormat = Buffer.from([0x06, 0xfe, 0xad, 0x27, 1, 0, 0]);
  const value: ServedCharacteristic = {
    uuid: meterValueUuid,
    properties:
      options.gives === 'notify' || options.gives === 'indicate' ? ['read', options.gives] : ['read'],
    descriptors: options.selfDescribed
      ? [
          { uuid: '2904', value: presentationFormat },
          { uuid: '2901', value: Buffer.from('Moisture content') },
        ]
      : [],
    isLocked: options.isLocked,
    read: () => bytesOf(shown()),
    write: () => false,
    subscribe: (to) => {
      send = to;
      tell({ type: 'subscribed', on: to !== null });
    },
  };
  const start: ServedCharacteristic = {
    ...value,
    uuid: meterStartUuid,
    properties: ['write'],
    descriptors: [],
    write: (bytes) => {
      if (bytes.toString('hex') !== options.startHex) return false;
      isStarted = true;
      tell({ type: 'started', bytes });
      return true;
    },
  };
  const own: ServedService = {
    uuid: meterServiceUuid,
    characteristics: options.startHex === null ? [value] : [value, start],
  };
  const readOnly = (uuid: string, of: string, bytes: Buffer): ServedService => ({
    uuid,
    characteristics: [{ ...value, uuid: of, properties: ['read'], descriptors: [], read: () => bytes }],
  });
  const { air } = options;
  // As sint16 and as uint16, the numbers that occur are the same bytes.
  const hundredths = (number: number) => bytesOf(Math.round(100 * number) & 0xffff);
  const services: ServedService[] = [own];
  if (air !== null) {
    const [temp] = readOnly(environmentUuid, temperatureUuid, hundredths(air.tempC)).characteristics;
    const [humidity] = readOnly(environmentUuid, humidityUuid, hundredths(100 * air.rh)).characteristics;
    services.push({ uuid: environmentUuid, characteristics: [temp!, humidity!] });
  }
  const openAdvert = (of: { tempC: number; rh: number }) =>
    Buffer.from([0x40, 0x02, ...hundredths(of.tempC), 0x03, ...hundredths(100 * of.rh)]);
  if (options.batteryPct !== null) {
    services.push(readOnly('180f', '2a19', Buffer.from([options.batteryPct])));
  }

  const advert = (bytes: Buffer) =>
    advertOf(
      options.name,
      air === null ? meterServiceUuid : environmentUuid,
      options.gives === 'service-data'
        ? air === null
          ? { kind: options.gives, id: advertServiceUuid, bytes }
          : { kind: options.gives, id: openSensorUuid, bytes: openAdvert(air) }
        : options.gives === 'manufacturer-data'
          ? { kind: options.gives, id: advertCompanyId.toString(16).padStart(4, '0'), bytes }
          : null,
    );
  const { name, isConnectable, address } = options;
  const server = await (options.library === 'bleno' ? serveWithBleno : serveWithBleHost)(
    { name, services, isConnectable, address },
    {
      advertising: () => tell({ type: 'advertising' }),
      link: (up) => {
        if (!up) {
          send = null;
          isStarted = options.startHex === null;
        }
        tell({ type: 'link', up });
      },
    },
  );
  server.advertise(advert(bytesOf(0)));
  setRate(isAdvertised ? 4 : 10);

  process.on('message', (order: MeterOrder) => {
    switch (order.type) {
      case 'pins':
        pins = order.pct === null ? null : { pct: order.pct, sinceMs: Date.now() };
        return;
      case 'button':
        isPressed = order.isPressed;
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
          while (sent < due) give(bytesOf(sent++ % 0x10000));
          if (sent < order.count) return;
          clearInterval(streaming);
          tell({ type: 'streamed', count: sent });
        }, 5);
        return;
      }
      case 'notify':
        give(Buffer.from(order.bytes));
        return;
      case 'att':
        server.sendAtt(Buffer.from(order.bytes), order.how ?? 'whole');
        return;
      case 'exponent':
        presentationFormat.writeInt8(order.exponent, 1);
        return;
      case 'more-services':
        server.setServices([...services, readOnly(order.uuid, '2a6e', Buffer.from([0, 0]))]);
        return;
      case 'drop-link':
        server.dropLink();
        return;
      case 'advertise':
        isAdvertising = order.on;
        if (order.on) server.advertise(advert(bytesOf(shown())));
        else server.stopAdvertising();
        return;
    }
  });
  process.on('disconnect', () => process.exit(0));
}

if (import.meta.main) await serve(JSON.parse(process.argv[2]!) as MeterServerOptions);
