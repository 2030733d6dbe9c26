/** What thermometers and hygrometers say of the air, as bytes: read from their service, or heard in adverts. */

/** What a sensor measured; null where it did not say, or the value is impossible. */
export interface SensedAir {
  /** °C, -60 to 60: air that wood dries in. A probe in wood is within that, too. */
  tempC: number | null;
  /** Relative humidity, fraction, 0 to 1. */
  rh: number | null;
}

const [COLDEST_C, HOTTEST_C] = [-60, 60];
/** Sensors in fog show a little more than 100 %. Common practice, no source. */
const MOST_RH = 1.05;

const asTemp = (tempC: number): number | null => (tempC >= COLDEST_C && tempC <= HOTTEST_C ? tempC : null);
const asHumidity = (rh: number): number | null => (rh >= 0 && rh <= MOST_RH ? Math.min(1, rh) : null);

/** Integers of a packet, least significant octet first. */
const view = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/**
 * The characteristic Temperature (0x2A6E): sint16 in 0.01 °C; 0x8000 is not known.
 * Source: Bluetooth SIG, GATT Specification Supplement, Temperature (from memory).
 *
 * @returns °C; null where it is not known, out of range, or of another length
 * @example temperatureOf(new Uint8Array([0xca, 0x09])) // 25.06
 */
export function temperatureOf(bytes: Uint8Array): number | null {
  if (bytes.length !== 2) return null;
  // "Not known" is -327.68 °C, and out of range.
  return asTemp(view(bytes).getInt16(0, true) / 100);
}

/**
 * The characteristic Humidity (0x2A6F): uint16 in 0.01 %; 0xFFFF is not known.
 * Source: Bluetooth SIG, GATT Specification Supplement, Humidity (from memory).
 *
 * @returns fraction; null where it is not known, out of range, or of another length
 * @example humidityOf(new Uint8Array([0xbf, 0x13])) // 0.5055
 */
export function humidityOf(bytes: Uint8Array): number | null {
  if (bytes.length !== 2) return null;
  return asHumidity(view(bytes).getUint16(0, true) / 10_000);
}

/** Service data under this UUID has the format BTHome, an open standard for sensors (https://bthome.io/format, version 2). */
export const openSensorUuid = 'fcd2';

/** In the first octet: the data is encrypted, and the version in the highest three bits. */
const [ENCRYPTED, VERSION_SHIFT, VERSION] = [0x01, 5, 2];

/** A kind of value: how many octets it fills, and what it says. */
interface SensedValue {
  octets: number;
  read?: (at: DataView, offset: number) => Partial<SensedAir>;
}

/**
 * Values come in the order of their numbers, so those between must be skipped by their length. Lengths and factors: the
 * standard's tables, from memory; its own example is checked in the test.
 */
const sensedValues: ReadonlyMap<number, SensedValue> = new Map<number, SensedValue>([
  [0x00, { octets: 1 }],
  [0x01, { octets: 1 }],
  [0x02, { octets: 2, read: (at, i) => ({ tempC: asTemp(at.getInt16(i, true) / 100) }) }],
  [0x03, { octets: 2, read: (at, i) => ({ rh: asHumidity(at.getUint16(i, true) / 10_000) }) }],
  ...[0x04, 0x05, 0x0a, 0x0b].map((id): [number, SensedValue] => [id, { octets: 3 }]),
  ...[0x06, 0x07, 0x08, 0x0c, 0x0d, 0x0e, 0x12, 0x13, 0x14].map((id): [number, SensedValue] => [
    id,
    { octets: 2 },
  ]),
  // Yes or no, one octet each.
  ...[0x09, 0x0f, 0x10, 0x11, ...Array.from({ length: 0x2d - 0x15 + 1 }, (_, at) => 0x15 + at)].map(
    (id): [number, SensedValue] => [id, { octets: 1 }],
  ),
  [0x2e, { octets: 1, read: (at, i) => ({ rh: asHumidity(at.getUint8(i) / 100) }) }],
  [0x2f, { octets: 1 }],
  [0x45, { octets: 2, read: (at, i) => ({ tempC: asTemp(at.getInt16(i, true) / 10) }) }],
  [0x57, { octets: 1, read: (at, i) => ({ tempC: asTemp(at.getInt8(i)) }) }],
]);

/**
 * What service data under `openSensorUuid` says of the air. Reads up to the first value that it does not know.
 *
 * @param bytes  behind the UUID
 * @returns      null where it is encrypted, of another version, or says nothing of the air
 * @example sensedInAdvert(new Uint8Array([0x40, 0x02, 0xca, 0x09, 0x03, 0xbf, 0x13])) // { tempC: 25.06, rh: 0.5055 }
 */
export function sensedInAdvert(bytes: Uint8Array): SensedAir | null {
  const info = bytes[0];
  if (info === undefined || (info & ENCRYPTED) !== 0 || info >> VERSION_SHIFT !== VERSION) return null;
  const at = view(bytes);
  let sensed: SensedAir = { tempC: null, rh: null };
  for (let offset = 1; offset < bytes.length; ) {
    const known = sensedValues.get(at.getUint8(offset));
    if (known === undefined || offset + 1 + known.octets > bytes.length) break;
    sensed = { ...sensed, ...known.read?.(at, offset + 1) };
    offset += 1 + known.octets;
  }
  return sensed.tempC === null && sensed.rh === null ? null : sensed;
}
