import type { Outcome } from '../outcome.ts';
import { type Message, message } from '../words/message.ts';
import {
  batteryLevelUuid,
  humidityUuid,
  ohmUnit,
  percentageUnit,
  serviceChangedUuid,
} from './assigned-numbers.ts';
import { type Layout, TEXT_FORMAT } from './layout.ts';
import { type MeterDescription, meterRangeSchema, plainDescription } from './meter-description.ts';
import { parsePresentationFormat } from './presentation-format.ts';
import {
  decodeValue,
  formatTakesExponent,
  octetsOfFormat,
  representableRange,
  storageOfFormat,
} from './value.ts';

/** A characteristic as it was found on a connected meter, with what its descriptors hold. UUIDs are plain (`plainUuid`). */
export interface DiscoveredCharacteristic {
  serviceUuid: string;
  characteristicUuid: string;
  /** It can send values by itself, as notifications or indications. */
  canNotify: boolean;
  canRead: boolean;
  canWrite: boolean;
  /** The bytes of descriptor 0x2904; null when there is none. */
  presentationFormat: Uint8Array | null;
  /** The text of descriptor 0x2901; null when there is none. */
  userDescription: string | null;
  /** The bytes of descriptor 0x2906; null when there is none. */
  validRange: Uint8Array | null;
}

export interface SelfDescription {
  /** Null when the meter does not describe enough: a person must set it up. */
  description: MeterDescription | null;
  /** What was passed over, and why. */
  remarks: Message[];
}

/**
 * Where a self-described value sets no limit. 200% is about the most that wood of basic specific gravity
 * 0.38 can hold (Wood Handbook, eq. 4-3), far above what pins can tell; a resistance over 10^15 ohm is beyond any pin
 * meter (common practice, no source).
 */
const widestRange = { pct: { min: 0, max: 200 }, ohm: { min: 0, max: 1e15 } } as const;

const exponentLimit = 10;

interface Candidate {
  description: MeterDescription;
  rank: number;
}

/**
 * Finds the value that is moisture content (%) or resistance (ohm) by the meter's own Presentation Format, and
 * builds the description to read it by.
 *
 * A percentage is not yet moisture content: batteries and air humidity are percentages too. So
 * - the battery level never counts;
 * - 0x2A6F (humidity of air) counts only where its user description names moisture or wood, because every hygrometer
 *   sends it with a percent sign too; otherwise a person has to confirm it by setting the meter up;
 * - any other percentage counts unless its user description names battery, humidity or air;
 * - without 0x2904 nothing is guessed.
 * Among several: a percentage named moisture or wood, then ohms, then an unnamed percentage. Two of the same rank are
 * one too many: a person chooses.
 */
export function describeMeter(found: readonly DiscoveredCharacteristic[]): SelfDescription {
  const remarks: Message[] = [];
  const candidates: Candidate[] = [];
  for (const characteristic of found) {
    if (!characteristic.canNotify || characteristic.presentationFormat === null) continue;
    if (characteristic.characteristicUuid === serviceChangedUuid) continue;
    const candidate = candidateOf(characteristic);
    if (candidate === null) continue;
    if (candidate.ok) candidates.push(candidate.value);
    else remarks.push(candidate.problem);
  }
  const best = Math.min(...candidates.map((candidate) => candidate.rank));
  const chosen = candidates.filter((candidate) => candidate.rank === best);
  if (chosen.length > 1) {
    remarks.push(message('meter.self.several', { values: chosen.length }));
    return { description: null, remarks };
  }
  return { description: chosen[0]?.description ?? null, remarks };
}

/** @returns a candidate, why it is none though it looked like one, or null when it is something else */
function candidateOf(characteristic: DiscoveredCharacteristic): Outcome<Candidate> | null {
  const parsed = parsePresentationFormat(characteristic.presentationFormat!);
  if (!parsed.ok) return parsed;
  const { format, exponent, unit: unitNumber } = parsed.value;
  const unit = unitNumber === percentageUnit ? 'pct' : unitNumber === ohmUnit ? 'ohm' : null;
  if (unit === null || characteristic.characteristicUuid === batteryLevelUuid) return null;

  const named = characteristic.userDescription?.toLowerCase() ?? '';
  const namesMoisture = /moist|wood|timber|lumber/.test(named);
  if (unit === 'pct' && !namesMoisture) {
    if (/batter|humid|\brh\b|\bair\b/.test(named)) return null;
    if (characteristic.characteristicUuid === humidityUuid) {
      return { ok: false, problem: message('meter.self.humidity-unconfirmed') };
    }
  }
  if (format !== TEXT_FORMAT && storageOfFormat(format) === undefined)
    return { ok: false, problem: message('meter.self.format-unreadable', { format }) };
  const takesExponent = formatTakesExponent(format);
  if (takesExponent && Math.abs(exponent) > exponentLimit) {
    return { ok: false, problem: message('meter.self.exponent-absurd', { exponent }) };
  }
  const inside = { byteOffset: 0, exponent: takesExponent ? exponent : 0, scale: 1, offset: 0 };
  const value: Layout =
    format === TEXT_FORMAT ? { kind: 'text', nth: 1, ...inside } : { kind: 'number', format, ...inside };
  const { serviceUuid, characteristicUuid } = characteristic;
  const description = plainDescription({
    source: { kind: 'sent', serviceUuid, characteristicUuid },
    value,
    unit,
    range: widestRange[unit],
    origin: 'self-described',
  });
  description.range = rangeOf(description, characteristic.validRange);
  return { ok: true, value: { description, rank: unit === 'ohm' ? 1 : namesMoisture ? 0 : 2 } };
}

/**
 * The Valid Range descriptor (0x2906): lowest and highest value, each in the characteristic's own format, one after
 * the other. Source: Bluetooth SIG, Valid Range (looked at in a rendering of the SIG's XML).
 */
function rangeOf(description: MeterDescription, validRange: Uint8Array | null): MeterDescription['range'] {
  const { value } = description;
  const octets = value.kind === 'number' ? octetsOfFormat(value.format) : null;
  if (validRange !== null && octets !== null && validRange.length === 2 * octets) {
    const low = decodeValue(validRange.subarray(0, octets), description);
    const high = decodeValue(validRange.subarray(octets), description);
    // A float may hold what no meter shows.
    const given = meterRangeSchema.safeParse(low.ok && high.ok ? { min: low.value, max: high.value } : null);
    if (given.success) return given.data;
  }
  const widest = widestRange[description.unit];
  const holds = representableRange(value);
  return holds === null
    ? widest
    : { min: Math.max(widest.min, holds.min), max: Math.min(widest.max, holds.max) };
}
