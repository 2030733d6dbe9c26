import type { DecodedValue } from './decoded.ts';
import type { Condition, Layout, Letters } from './layout.ts';
import type { MeterDescription } from './meter-description.ts';
import { hasWord, readLetters } from './text-value.ts';
import { decodeLayout, decodeValue } from './value.ts';

/** What one packet of a meter says. */
export interface DecodedPacket {
  /** Null for a packet of another kind, which has no value. */
  value: DecodedValue | null;
  /** Whether the meter holds its value; null where the packet does not say. */
  isHeld: boolean | null;
  /** Charge of its battery, %, 0 to 100. */
  batteryPct: number | null;
  /** Temperature of the wood or of its probe, °C. */
  tempC: number | null;
  /** What it is set to for the species, as it says it. */
  species: string | null;
}

/** What no wood is probed at, °C: a number beyond is not a temperature. */
const COLDEST_C = -60;
const HOTTEST_C = 150;

/**
 * All that a packet says by a description. Never throws, whatever the bytes. A field that cannot be read is null, and
 * takes nothing from the value.
 */
export function decodePacket(bytes: Uint8Array, description: MeterDescription): DecodedPacket {
  const { match, fields } = description;
  const isHeld = fields.hold && meets(bytes, fields.hold);
  // A meter may send a packet of another kind when its button is pressed.
  if (match && !meets(bytes, match)) {
    return { value: null, isHeld, batteryPct: null, tempC: null, species: null };
  }
  return {
    value: decodeValue(bytes, description),
    isHeld,
    batteryPct: within(bytes, fields.batteryPct, 0, 100),
    tempC: within(bytes, fields.tempC, COLDEST_C, HOTTEST_C),
    species: fields.species && settingIn(bytes, fields.species.at),
  };
}

/** @returns null where the packet does not say */
function meets(bytes: Uint8Array, condition: Condition): boolean | null {
  if ('word' in condition) return bytes.length === 0 ? null : hasWord(bytes, condition.word);
  const decoded = decodeLayout(bytes, condition.layout);
  return decoded.ok ? decoded.value === condition.equals : null;
}

function within(bytes: Uint8Array, layout: Layout | null, least: number, most: number): number | null {
  const decoded = layout && decodeLayout(bytes, layout);
  return decoded?.ok && decoded.value >= least && decoded.value <= most ? decoded.value : null;
}

function settingIn(bytes: Uint8Array, at: Layout | Letters): string | null {
  if (at.kind === 'letters') return readLetters(bytes, at);
  const decoded = decodeLayout(bytes, at);
  return decoded.ok ? String(decoded.value) : null;
}
