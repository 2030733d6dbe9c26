import { type Message, message } from '../words/message.ts';
import { type DecodedValue, type NoValue, none, refused } from './decoded.ts';
import type { BitsLayout, Layout, NumberLayout } from './layout.ts';
import type { MeterDescription } from './meter-description.ts';
import { readText } from './text-value.ts';

/**
 * How a format code stores its value. `takesExponent` is the table's column "Exponent Value"; `octets` is the room it
 * takes: what is not a whole number of octets sits in the least significant bits of the next whole one.
 * Source: Bluetooth SIG, Assigned Numbers, Format Types (looked at).
 */
export interface Storage {
  kind: 'unsigned' | 'signed' | 'float' | 'medfloat';
  bits: number;
  octets: number;
  takesExponent: boolean;
}

const integer = (kind: 'unsigned' | 'signed', bits: number, takesExponent = true): Storage => ({
  kind,
  bits,
  octets: Math.ceil(bits / 8),
  takesExponent,
});
const float = (kind: 'float' | 'medfloat', bits: number): Storage => ({
  kind,
  bits,
  octets: bits / 8,
  takesExponent: false,
});

const storageByFormat: ReadonlyMap<number, Storage> = new Map([
  [2, integer('unsigned', 2, false)],
  [3, integer('unsigned', 4, false)],
  [4, integer('unsigned', 8)],
  [5, integer('unsigned', 12)],
  [6, integer('unsigned', 16)],
  [7, integer('unsigned', 24)],
  [8, integer('unsigned', 32)],
  [9, integer('unsigned', 48)],
  [10, integer('unsigned', 64)],
  [12, integer('signed', 8)],
  [13, integer('signed', 12)],
  [14, integer('signed', 16)],
  [15, integer('signed', 24)],
  [16, integer('signed', 32)],
  [17, integer('signed', 48)],
  [18, integer('signed', 64)],
  [20, float('float', 32)],
  [21, float('float', 64)],
  [22, float('medfloat', 16)],
  [23, float('medfloat', 32)],
]);

/** The format codes of numbers that can be read here; text is a layout by itself. */
export const readableFormats: readonly number[] = [...storageByFormat.keys()];

/** How a format code stores its value; undefined where it cannot be read as a number here. */
export const storageOfFormat = (format: number): Storage | undefined => storageByFormat.get(format);

/** Whether the exponent of a description applies to this format code. */
export const formatTakesExponent = (format: number): boolean =>
  storageByFormat.get(format)?.takesExponent ?? false;

/** Octets that one value of this format code fills; null for formats that cannot be read here. */
export const octetsOfFormat = (format: number): number | null => storageByFormat.get(format)?.octets ?? null;

/**
 * The smallest and largest number that a layout can hold, in its unit; null where it sets no useful limit (floats,
 * text).
 */
export function representableRange(layout: Layout): { min: number; max: number } | null {
  const integer = integerOf(layout);
  if (integer === null) return null;
  const span = 2 ** integer.bits;
  const ends = integer.signed ? [-span / 2, span / 2 - 1] : [0, span - 1];
  const [a, b] = ends.map((end) => inUnit(end, layout));
  return { min: Math.min(a!, b!), max: Math.max(a!, b!) };
}

function integerOf(layout: Layout): { bits: number; signed: boolean } | null {
  if (layout.kind === 'bits') return layout;
  const storage = layout.kind === 'number' ? storageByFormat.get(layout.format) : undefined;
  if (storage?.kind !== 'unsigned' && storage?.kind !== 'signed') return null;
  return { bits: storage.bits, signed: storage.kind === 'signed' };
}

/** Where in a packet a layout finds its number: the first byte, and how many; null to the end. */
export function placeOf(layout: Layout): { from: number; count: number | null } {
  switch (layout.kind) {
    case 'number':
      return { from: layout.byteOffset, count: octetsOfFormat(layout.format) };
    case 'bits': {
      const from = Math.floor(layout.firstBit / 8);
      return { from, count: Math.ceil((layout.firstBit + layout.bits) / 8) - from };
    }
    case 'text':
      return { from: layout.byteOffset, count: null };
  }
}

/** What is known of bytes beside their layout. */
interface ReadAs {
  /** A text with another unit than this behind the number is refused. */
  unit?: MeterDescription['unit'];
  /** There is nothing but the value: anything more is refused. */
  isWhole?: boolean;
}

/**
 * The number that a meter sent, in the unit of its description. A characteristic that describes itself holds nothing
 * but the value; a packet set up by hand may go on after it. Whether the packet is of the kind that has the value is
 * for `decodePacket`.
 * @returns as `decodeLayout`
 */
export const decodeValue = (
  bytes: Uint8Array,
  { value, unit, origin }: Pick<MeterDescription, 'value' | 'unit' | 'origin'>,
): DecodedValue => decodeLayout(bytes, value, { unit, isWhole: origin === 'self-described' });

/**
 * The number that a layout finds: what is stored × 10^exponent × scale + offset.
 * Never throws, whatever the bytes: they come from the air. An integer of more than 53 bits is rounded to the nearest
 * double. The range of the meter is not checked: that is for those who judge the reading.
 * @returns the value, or why these bytes are none
 */
export function decodeLayout(bytes: Uint8Array, layout: Layout, as: ReadAs = {}): DecodedValue {
  const stored = readStored(bytes, layout, as);
  if (!stored.ok) return stored;
  const value = inUnit(stored.value, layout);
  return Number.isFinite(value) ? { ok: true, value } : refused(message('meter.value.too-large'));
}

function readStored(bytes: Uint8Array, layout: Layout, { unit, isWhole = false }: ReadAs): DecodedValue {
  switch (layout.kind) {
    case 'number':
      return readNumber(bytes, layout, isWhole);
    case 'bits':
      return readBits(bytes, layout);
    case 'text':
      return readText(bytes, layout, unit, isWhole);
  }
}

const tooShort = (bytes: Uint8Array, needed: number): NoValue =>
  refused(message('meter.value.bytes-missing', { sent: bytes.length, needed }));

function readNumber(bytes: Uint8Array, layout: NumberLayout, isWhole: boolean): DecodedValue {
  const storage = storageByFormat.get(layout.format);
  if (storage === undefined) {
    return refused(message('meter.value.format-unreadable', { format: layout.format }));
  }
  const needed = layout.byteOffset + storage.octets;
  if (bytes.length < needed) return tooShort(bytes, needed);
  if (isWhole && bytes.length !== needed) {
    return refused(message('meter.value.bytes-extra', { sent: bytes.length, needed }));
  }
  const own = bytes.slice(layout.byteOffset, needed);
  if (layout.byteOrder === 'high-first') own.reverse();
  switch (storage.kind) {
    case 'unsigned':
      return { ok: true, value: Number(BigInt.asUintN(storage.bits, littleEndian(own))) };
    case 'signed':
      return { ok: true, value: Number(BigInt.asIntN(storage.bits, littleEndian(own))) };
    case 'float': {
      const view = new DataView(own.buffer, own.byteOffset, own.byteLength);
      const value = storage.bits === 32 ? asWritten(view.getFloat32(0, true)) : view.getFloat64(0, true);
      if (Number.isNaN(value)) return none(message('meter.value.not-valid'));
      return Number.isFinite(value) ? { ok: true, value } : none(beyondScale(value));
    }
    case 'medfloat':
      return readMedicalFloat(own, storage.bits);
  }
}

function readBits(bytes: Uint8Array, { firstBit, bits, signed, byteOrder }: BitsLayout): DecodedValue {
  const end = firstBit + bits;
  const needed = Math.ceil(end / 8);
  if (bytes.length < needed) return tooShort(bytes, needed);
  const from = Math.floor(firstBit / 8);
  const own = bytes.slice(from, needed);
  let shift = firstBit - 8 * from;
  if (byteOrder === 'high-first') {
    own.reverse();
    shift = 8 * needed - end;
  }
  const whole = littleEndian(own) >> BigInt(shift);
  return { ok: true, value: Number(signed ? BigInt.asIntN(bits, whole) : BigInt.asUintN(bits, whole)) };
}

/**
 * The shortest decimal that a 32-bit float is the nearest one to, as its maker wrote it: 13.7 for what as a double is
 * 13.699999809265137. Nine digits tell any two of these floats apart (IEEE 754).
 */
function asWritten(float: number): number {
  for (let digits = 1; digits <= 9; digits++) {
    const decimal = Number(float.toPrecision(digits));
    if (Math.fround(decimal) === float) return decimal;
  }
  return float;
}

function littleEndian(bytes: Uint8Array): bigint {
  let value = 0n;
  for (let i = bytes.length - 1; i >= 0; i--) value = (value << 8n) | BigInt(bytes[i]!);
  return value;
}

const beyondScale = (value: number): Message =>
  message(value > 0 ? 'meter.value.above-scale' : 'meter.value.below-scale');

/**
 * IEEE 11073 SFLOAT (4-bit exponent, 12-bit mantissa) and FLOAT (8-bit exponent, 24-bit mantissa), both parts signed,
 * exponent in the high bits; five mantissas around the ends are reserved for special values.
 * Source: IEEE 11073-20601 as laid out in HL7's Personal Health Device guide, "MDER FLOATs and SFLOATs" (looked at).
 */
function readMedicalFloat(own: Uint8Array, bits: number): DecodedValue {
  const mantissaBits = bits === 16 ? 12 : 24;
  const whole = littleEndian(own);
  const mantissa = Number(BigInt.asIntN(mantissaBits, whole));
  const exponent = Number(BigInt.asIntN(bits - mantissaBits, whole >> BigInt(mantissaBits)));
  const top = 2 ** (mantissaBits - 1);
  // The special values have exponent 0; with another exponent the same mantissa is a number like any other.
  if (exponent === 0) {
    if (mantissa === top - 1) return none(message('meter.value.not-valid'));
    if (mantissa === top - 2) return none(beyondScale(Number.POSITIVE_INFINITY));
    if (mantissa === 2 - top) return none(beyondScale(Number.NEGATIVE_INFINITY));
    if (mantissa === -top) return none(message('meter.value.not-at-resolution'));
    if (mantissa === 1 - top) return refused(message('meter.value.reserved-code'));
  }
  return { ok: true, value: timesPowerOfTen(mantissa, exponent) };
}

/** Division by a positive power is exact to the last digit where multiplication by 0.01 is not. */
function timesPowerOfTen(value: number, exponent: number): number {
  return exponent < 0 ? value / 10 ** -exponent : value * 10 ** exponent;
}

function inUnit(stored: number, layout: Layout): number {
  const exponent = layout.kind === 'number' && !formatTakesExponent(layout.format) ? 0 : layout.exponent;
  const plain = timesPowerOfTen(stored, exponent);
  if (layout.scale === 1 && layout.offset === 0) return plain;
  // 137 times 0.1 is 13.7, not 13.700000000000001: any decimal of 15 digits comes through a double unchanged (IEEE 754).
  return Number((plain * layout.scale + layout.offset).toPrecision(15));
}
