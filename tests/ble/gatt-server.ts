/** A meter of the tests as its GATT server sees it, whichever library that is built on. UUIDs are plain. */
export interface Served {
  name: string;
  services: ServedService[];
  /** Under another address than its controller's own; null for that. */
  address: string | null;
  /** Lets others connect. */
  isConnectable: boolean;
}

export interface ServedService {
  uuid: string;
  characteristics: ServedCharacteristic[];
}

export interface ServedCharacteristic {
  uuid: string;
  properties: ('read' | 'notify' | 'indicate' | 'write')[];
  descriptors: { uuid: string; value: Buffer }[];
  /** Only for a paired link. */
  isLocked: boolean;
  read(): Buffer;
  /** @returns whether it is taken */
  write(bytes: Buffer): boolean;
  /** @param send null when nobody is subscribed any more */
  subscribe(send: ((bytes: Buffer) => void) | null): void;
}

/** In how many packets of the controller ATT bytes are sent: in one, in two, or the first of two alone. */
export type AttHow = 'whole' | 'halves' | 'first-half';

export interface GattServer {
  /** Advertises from now on, or from the end of the link; with other bytes, those at once. */
  advertise(advert: Advert): void;
  stopAdvertising(): void;
  dropLink(): void;
  /** Bytes straight onto the ATT channel, valid or not. */
  sendAtt(bytes: Buffer, how: AttHow): void;
  /** Other services from now on, for the next link. */
  setServices(services: ServedService[]): void;
}

export interface GattServerNews {
  advertising(): void;
  link(isUp: boolean): void;
}

export type Serve = (served: Served, news: GattServerNews) => Promise<GattServer>;

/** At most 31 octets each. */
export interface Advert {
  data: Buffer;
  scanResponse: Buffer;
}

const flags = 0x01;
const all16BitServices = 0x03;
const all128BitServices = 0x07;
const completeName = 0x09;
const serviceData16 = 0x16;
const manufacturerData = 0xff;

/** One part of an advert: its length, its type, its bytes (Core Specification, Vol 3 Part C 11). */
const part = (type: number, bytes: Buffer) => Buffer.concat([Buffer.from([bytes.length + 1, type]), bytes]);
const backwards = (hex: string) => Buffer.from(hex, 'hex').reverse();

/** What it advertises: its service and, to whoever asks, its name; or a value with its name, which nobody can ask for. */
export function advertOf(
  name: string,
  serviceUuid: string,
  value: { kind: 'service-data' | 'manufacturer-data'; id: string; bytes: Buffer } | null,
): Advert {
  // LE General Discoverable, no BR/EDR (Supplement to the Core Specification, Part A 1.3).
  const how = part(flags, Buffer.from([0x06]));
  const named = part(completeName, Buffer.from(name));
  if (value === null) {
    const type = serviceUuid.length === 4 ? all16BitServices : all128BitServices;
    return { data: Buffer.concat([how, part(type, backwards(serviceUuid))]), scanResponse: named };
  }
  const type = value.kind === 'service-data' ? serviceData16 : manufacturerData;
  const held = part(type, Buffer.concat([backwards(value.id), value.bytes]));
  return { data: Buffer.concat([how, held, named]), scanResponse: Buffer.alloc(0) };
}
