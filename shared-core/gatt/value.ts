import type { Failure, Ok } from '../outcome.ts';
import { type Message, message } from '../words/message.ts';
import type { MeterDescription, ValueLayout } from './meter-description.ts';

export interface NoValue extends Failure {
  /** Valid bytes that mean the meter has no reading now, as with its pins in the air. */
  noReading: boolean;
}
/** An `Outcome` that also tells bytes that mean "no reading" from bytes that cannot be read. */
export type DecodedValue = Ok<number> | NoValue;

const refused = (problem: Message): NoValue => ({ ok: false, noReading: false, problem });
const none = (problem: Message): NoValue => ({ ok: false, noReading: true, problem });

/**
 * How a format code stores its value. `takesExponent` is the table's column "Exponent Value"; `octets` is the room it
 * takes: what is not a whole number of octets sits in the least significant bits of the next whole one.
 * Source: Bluetooth SIG, Assigned Numbers, Format Types (looked at).
 */
export interface Storage {
  kind: 'unsigned' | 'signed' | 'float' | 'medfloat' | 'text';
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
  [25, { kind: 'text', bits: 0, octets: 1, takesExponent: false }],
]);

/** The format codes whose values can be read as a number here. */
export const readableFormats: readonly number[] = [...storageByFormat.keys()];

/** How a format code stores its value; undefined where it cannot be read as a number here. */
export const storageOfFormat = (format: number): Storage | undefined => storageByFormat.get(format);

/** Whether the exponent of a description applies to this format code. */
export const formatTakesExponent = (format: number): boolean =>
  storageByFormat.get(format)?.takesExponent ?? false;

/** Octets that one value of this format code fills; null for text and for formats that cannot be read here. */
export function octetsOfFormat(format: number): number | null {
  const storage = storageByFormat.get(format);
  return storage === undefined || storage.kind === 'text' ? null : storage.octets;
}

/**
 * The smallest and largest number that a layout can hold, in its unit; null where the format sets no useful limit
 * (floats, text).
 */
export function representableRange(layout: ValueLayout): { min: number; max: number } | null {
  const storage = storageByFormat.get(layout.format);
  if (storage === undefined || (storage.kind !== 'unsigned' && storage.kind !== 'signed')) return null;
  const span = 2 ** storage.bits;
  const ends = storage.kind === 'unsigned' ? [0, span - 1] : [-span / 2, span / 2 - 1];
  const [a, b] = ends.map((end) => inUnit(end, layout, storage));
  return { min: Math.min(a!, b!), max: Math.max(a!, b!) };
}

/**
 * The number that a meter sent, in the unit of its description: integer × 10^exponent × scale + offset.
 * Never throws, whatever the bytes: they come from the air. An integer of more than 53 bits is rounded to the nearest
 * double. The range of the meter is not checked: that is for those who judge the reading.
 * @returns the value, or why these bytes are none
 */
export function decodeValue(
  bytes: Uint8Array,
  description: Pick<MeterDescription, 'layout' | 'unit' | 'origin'>,
): DecodedValue {
  const { layout } = description;
  const storage = storageByFormat.get(layout.format);
  if (storage === undefined) {
    return refused(message('meter.value.format-unreadable', { format: layout.format }));
  }
  const needed = layout.byteOffset + storage.octets;
  if (bytes.length < needed) {
    return refused(message('meter.value.bytes-missing', { sent: bytes.length, needed }));
  }
  // A characteristic that describes itself holds nothing but the value. A frame set up by hand may go on after it.
  if (description.origin === 'self-described' && storage.kind !== 'text' && bytes.length !== needed) {
    return refused(message('meter.value.bytes-extra', { sent: bytes.length, needed }));
  }
  const own = bytes.slice(layout.byteOffset, storage.kind === 'text' ? undefined : needed);
  if (layout.byteOrder === 'high-first' && storage.kind !== 'text') own.reverse();
  const stored = readStored(own, storage, description);
  if (!stored.ok) return stored;
  const value = inUnit(stored.value, layout, storage);
  return Number.isFinite(value) ? { ok: true, value } : refused(message('meter.value.too-large'));
}

function readStored(
  own: Uint8Array,
  storage: Storage,
  description: Pick<MeterDescription, 'unit'>,
): DecodedValue {
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
    case 'text':
      return readText(own, description.unit);
  }
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

function inUnit(stored: number, layout: ValueLayout, storage: Storage): number {
  const exponent = storage.takesExponent ? layout.exponent : 0;
  const plain = timesPowerOfTen(stored, exponent);
  if (layout.scale === 1 && layout.offset === 0) return plain;
  // 137 times 0.1 is 13.7, not 13.700000000000001: any decimal of 15 digits comes through a double unchanged (IEEE 754).
  return Number((plain * layout.scale + layout.offset).toPrecision(15));
}

/** Number, then nothing or one unit: "12.6 %", "12,6%", "470 kΩ", "1.2e6 ohm". */
const textPattern =
  /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d{1,3})?)\s*(%|[kMG]?(?:\u03a9|\u2126|[oO]hms?))?(?:\s*(?:MC|mc))?$/u;
const ohmsOfPrefix: Readonly<Record<string, number>> = { k: 1e3, M: 1e6, G: 1e9 };

function readText(own: Uint8Array, unit: MeterDescription['unit']): DecodedValue {
  const text = utf8Text(own)?.replace(/\0+$/, '').trim();
  if (text === undefined) return refused(message('meter.value.not-text'));
  const shown = printable(text);
  const match = textPattern.exec(text);
  // Whatever a meter's own word for none is ("OL", dashes, nothing at all), it holds no digit.
  if (match === null) return (/\d/.test(text) ? refused : none)(message('meter.value.shows-none', { shown }));
  const [, number, unitText] = match;
  // "1,234" is a thousand to some and one and a bit to others.
  if (/^[+-]?\d{1,3},\d{3}$/.test(number!)) {
    return refused(message('meter.value.shows-ambiguous', { shown }));
  }
  if (unitText !== undefined && (unitText === '%') !== (unit === 'pct')) {
    return refused(message('meter.value.shows-other-unit', { shown, unit }));
  }
  const factor = (unitText !== undefined && ohmsOfPrefix[unitText[0]!]) || 1;
  return { ok: true, value: Number(number!.replace(',', '.')) * factor };
}

/** @returns undefined when the bytes are not UTF-8 */
function utf8Text(bytes: Uint8Array): string | undefined {
  let escaped = '';
  for (const byte of bytes) escaped += `%${byte.toString(16).padStart(2, '0')}`;
  try {
    // The language's own UTF-8 decoder: this core has no DOM to borrow one from.
    return decodeURIComponent(escaped);
  } catch {
    return undefined;
  }
}

/** Text from the air, made safe to put into a sentence: printable and short. */
function printable(text: string): string {
  const safe = text.replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, '·');
  return safe.length > 20 ? `${safe.slice(0, 20)}…` : safe;
}
