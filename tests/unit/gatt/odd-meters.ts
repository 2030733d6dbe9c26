import type { Layout } from '../../../shared-core/gatt/layout.ts';
import { plainDescription } from '../../../shared-core/gatt/meter-description.ts';
import type { WatchedPacket } from '../../../shared-core/gatt/movement.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import type { WatchedSource } from '../../../shared-core/gatt/packet-kinds.ts';
import type { Proposal } from '../../../shared-core/gatt/propose.ts';
import type { ShownNumber } from '../../../shared-core/gatt/shown-number.ts';
import { octetsOfFormat, storageOfFormat } from '../../../shared-core/gatt/value.ts';
import { oneOf, type Random, wholeBetween } from '../../faults/random.ts';

/*
 * Meters that nobody described, made up: a packet of some layout with other things around the number, pushed into
 * several boards, and what a person types off the display. They stand for no particular meter. What meters put into their
 * packets is our judgment; the formats are those of the Bluetooth SIG (Assigned Numbers, Format Types).
 */

export const KINDS = ['whole bytes', 'floating point', 'bits', 'text', 'scaled'] as const;
export type Kind = (typeof KINDS)[number];

export interface OddMeter {
  kind: Kind;
  truth: Layout;
  /** What the last digit on its display counts, %. */
  stepPct: number;
  /** What was watched, all boards. */
  places: WatchedSource[];
  /** One for each board. */
  numbers: ShownNumber[];
  /** What it sends later, of other boards, beside what its display shows then. */
  later: { bytes: Uint8Array; shownPct: number }[];
}

const plain = { exponent: 0, scale: 1, offset: 0 } as const;
const BOARDS = 3;
const source = { kind: 'sent', serviceUuid: 'fff0', characteristicUuid: 'fff1' } as const;

/** Something in a packet beside the value: its bytes at a moment. */
type Part = (at: { index: number; ms: number }) => number[];

const lowFirst = (value: number, octets: number): number[] =>
  Array.from({ length: octets }, (_, at) => Number((BigInt(Math.round(value)) >> BigInt(8 * at)) & 255n));

/** How a value is stored: the bytes of a number in %, or of none. */
interface Stored {
  layout: Layout;
  /** The largest value that it holds, %. */
  mostPct: number;
  octets: number;
  /** The number that is stored for it, %. */
  held(pct: number): number;
  pack(pct: number | null): number[];
}

function ordered(bytes: number[], isHighFirst: boolean): number[] {
  return isHighFirst ? bytes.toReversed() : bytes;
}

function wholeBytes(random: Random, stepPct: number): Stored {
  const format = oneOf(random, [4, 5, 6, 6, 6, 7, 8, 9, 10, 13, 14, 14, 15, 16, 17, 18]);
  const { bits, octets, kind } = storageOfFormat(format)!;
  const usable = 2 ** Math.min(50, kind === 'signed' ? bits - 1 : bits) - 1;
  const usual = Math.round(Math.log10(stepPct));
  const exponents = [usual, usual, usual - 1].filter((each) => usable * 10 ** each >= 60);
  const exponent = exponents.length === 0 ? 0 : oneOf(random, exponents);
  return integer(random, { kind: 'number', format, byteOffset: 0, ...plain, exponent }, octets, usable);
}

function scaled(random: Random, stepPct: number): Stored {
  const format = oneOf(random, [4, 6, 14]);
  const scale = oneOf(
    random,
    format === 4
      ? stepPct === 0.5
        ? [0.5, 0.25]
        : [0.5, 0.25, 0.2, 0.4]
      : [0.5, 0.25, 0.05, 0.02, 1 / 16, 1 / 128, 1 / 256],
  );
  const offset = oneOf(random, [0, 0, 0, 5, -5, 2.5]);
  const octets = octetsOfFormat(format)!;
  const usable = format === 4 ? 255 : format === 6 ? 65_535 : 32_767;
  return integer(random, { kind: 'number', format, byteOffset: 0, ...plain, scale, offset }, octets, usable);
}

function integer(
  random: Random,
  layout: Layout & { kind: 'number' },
  octets: number,
  usable: number,
): Stored {
  const isHighFirst = octets > 1 && random() < 0.4;
  const factor = 10 ** layout.exponent * layout.scale;
  const none = oneOf(random, [0, usable]);
  return {
    layout: { ...layout, ...(isHighFirst && { byteOrder: 'high-first' }) },
    mostPct: Math.min(60, usable * factor + layout.offset),
    octets,
    held: (pct) => Math.max(0, Math.round((pct - layout.offset) / factor)) * factor + layout.offset,
    pack: (pct) =>
      ordered(
        lowFirst(pct === null ? none : Math.max(0, (pct - layout.offset) / factor), octets),
        isHighFirst,
      ),
  };
}

function floatingPoint(random: Random): Stored {
  const format = oneOf(random, [20, 20, 21, 22, 22, 23]);
  const octets = octetsOfFormat(format)!;
  const isHighFirst = random() < 0.3;
  const isZero = random() < 0.5;
  const exponent = format === 22 ? -1 : oneOf(random, [-1, -2, -3]);
  const pack = (pct: number | null): number[] => {
    const bytes = new DataView(new ArrayBuffer(octets));
    const value = pct ?? (isZero ? 0 : Number.NaN);
    if (format === 20) bytes.setFloat32(0, value, true);
    else if (format === 21) bytes.setFloat64(0, value, true);
    // IEEE 11073: NaN is the largest mantissa, with exponent 0.
    else if (Number.isNaN(value)) return lowFirst(format === 22 ? 0x07ff : 0x7fffff, octets);
    else {
      const mantissaBits = format === 22 ? 12 : 24;
      const power = 2 ** (octets * 8 - mantissaBits) + exponent;
      return lowFirst(Math.round(value / 10 ** exponent) + power * 2 ** mantissaBits, octets);
    }
    return Array.from(new Uint8Array(bytes.buffer));
  };
  return {
    layout: {
      kind: 'number',
      format,
      byteOffset: 0,
      ...plain,
      ...(isHighFirst && { byteOrder: 'high-first' }),
    },
    mostPct: 60,
    octets,
    held: (pct) => (format < 22 ? pct : Math.round(pct / 10 ** exponent) * 10 ** exponent),
    pack: (pct) => ordered(pack(pct), isHighFirst),
  };
}

function bitField(random: Random, stepPct: number): Stored {
  const exponent = Math.round(Math.log10(stepPct));
  const bits = wholeBetween(random, stepPct === 1 ? 7 : 10, 15);
  const free = wholeBetween(random, 1, 8);
  const octets = Math.ceil((bits + free) / 8);
  const isHighFirst = random() < 0.4;
  const around = wholeBetween(random, 0, 2 ** free);
  const none = oneOf(random, [0, 2 ** bits - 1]);
  const pack = (pct: number | null): number[] => {
    const value = pct === null ? none : Math.round(pct / 10 ** exponent);
    const whole = value * 2 ** free + around;
    // Bits above stay 0.
    return isHighFirst
      ? lowFirst(whole * 2 ** (8 * octets - bits - free), octets).toReversed()
      : lowFirst(whole, octets);
  };
  const firstBit = isHighFirst ? 0 : free;
  return {
    layout: {
      kind: 'bits',
      firstBit,
      bits,
      signed: false,
      ...plain,
      exponent,
      ...(isHighFirst && { byteOrder: 'high-first' }),
    },
    mostPct: Math.min(60, (2 ** bits - 2) * 10 ** exponent),
    octets,
    held: (pct) => Math.round(pct / 10 ** exponent) * 10 ** exponent,
    pack,
  };
}

const courseOf = (random: Random, mostPct: number) => {
  const rests = Array.from({ length: BOARDS }, () => 0);
  for (let at = 0; at < BOARDS; at++) {
    do rests[at] = 6 + (Math.min(45, mostPct - 3) - 6) * random();
    while (rests.slice(0, at).some((other) => Math.abs(other - rests[at]!) < 2));
  }
  const away = rests.map(() => -3 + 5 * random());
  const tauMs = 150 + 650 * random();
  const noise = 0.01 + 0.03 * random();
  const inMs = 1000 + 1500 * random();
  const outMs = 7500 + 1500 * random();
  const everyMs = outMs + 1000;
  return {
    everyMs,
    inMs,
    outMs,
    /** What the scale is at, before it is rounded; null with the pins out. */
    at: (ms: number): number | null => {
      const rest = rests[Math.floor(ms / everyMs)];
      const since = (ms % everyMs) - inMs;
      if (rest === undefined || since < 0 || ms % everyMs > outMs) return null;
      return rest + away[Math.floor(ms / everyMs)]! * Math.exp(-since / tauMs) + noise * Math.sin(ms * 1.7);
    },
  };
};

/** Things of other kinds that packets hold. */
function partsAround(random: Random): Part[] {
  const byte = () => wholeBetween(random, 0, 256);
  const [first, tempTenths, battery, clockFrom] = [
    byte(),
    wholeBetween(random, 80, 300),
    wholeBetween(random, 20, 100),
    byte(),
  ];
  const pool: Part[] = [
    () => [first],
    () => [0xa5, first],
    ({ index }) => [(first + index) & 255],
    ({ index }) => lowFirst(1000 * clockFrom + index, 2),
    ({ ms }) => lowFirst(100_000 * clockFrom + ms, 4),
    () => [byte()],
    () => [battery],
    ({ ms }) => lowFirst(tempTenths + Math.floor(ms / 9000), 2),
    () => [0],
    () => [0, 0],
  ];
  return Array.from({ length: wholeBetween(random, 0, 5) }, () => oneOf(random, pool));
}

/** @param random  the same numbers make the same meter */
export function makeOddMeter(kind: Kind, random: Random): OddMeter {
  const stepPct = kind === 'scaled' ? oneOf(random, [0.1, 0.1, 0.5]) : oneOf(random, [0.1, 0.1, 0.1, 1]);
  const hz = oneOf(random, [2, 4, 10]);
  if (kind === 'text') return textMeter(random, stepPct, hz);
  const stored =
    kind === 'whole bytes'
      ? wholeBytes(random, stepPct)
      : kind === 'floating point'
        ? floatingPoint(random)
        : kind === 'bits'
          ? bitField(random, stepPct)
          : scaled(random, stepPct);
  const around = partsAround(random);
  const own = wholeBetween(random, 0, around.length + 1);
  const hasChecksum = random() < 0.3;
  const keepsLast = random() < 0.2;
  // What it sends may be finer than what it shows.
  const isFiner = kind === 'scaled' ? stepPct !== 0.5 : random() < 0.3;
  let last: number | null = null;
  const pack = (pct: number | null, at: { index: number; ms: number }): Uint8Array => {
    const sent = pct === null ? (keepsLast ? last : null) : isFiner ? pct : rounded(pct, stepPct);
    last = sent;
    const parts = around.map((part) => part(at));
    const bytes = [...parts.slice(0, own).flat(), ...stored.pack(sent), ...parts.slice(own).flat()];
    if (hasChecksum) bytes.push(bytes.reduce((sum, byte) => (sum + byte) & 255, 0x5a));
    return Uint8Array.from(bytes);
  };
  const before = around.slice(0, own).flatMap((part) => part({ index: 0, ms: 0 })).length;
  const truth: Layout =
    stored.layout.kind === 'bits'
      ? { ...stored.layout, firstBit: stored.layout.firstBit + 8 * before }
      : { ...stored.layout, byteOffset: before };
  const shown = (pct: number) => rounded(stored.held(isFiner ? pct : rounded(pct, stepPct)), stepPct);
  return watch({ kind, truth, stepPct, hz, mostPct: stored.mostPct, random, pack, shown });
}

function textMeter(random: Random, stepPct: number, hz: number): OddMeter {
  const hasComma = random() < 0.3;
  const temp = wholeBetween(random, 5, 35);
  const made: ((number: string, index: number) => string)[] = [
    (number) => `${number} %`,
    (number) => `MC=${number}% T${temp}`,
    (number, index) => `${index % 10} ${number.padStart(5)} % B88`,
    (number, index) => `${index % 100};${number};${temp}`,
    (number) => `{"mc": ${number}, "t": ${temp}}`,
  ];
  const at = wholeBetween(random, 0, made.length);
  const none = oneOf(random, ['--.-', '0.0', 'OL']);
  const decimals = stepPct === 1 ? 0 : 1;
  const pack = (pct: number | null, { index }: { index: number }): Uint8Array => {
    const number = pct === null ? none : pct.toFixed(decimals);
    return new TextEncoder().encode(
      made[at]!(hasComma && at !== 4 ? number.replace('.', ',') : number, index),
    );
  };
  const nth = at === 2 || at === 3 ? 2 : 1;
  const truth: Layout = { kind: 'text', byteOffset: 0, nth, ...plain };
  const shown = (pct: number) => rounded(pct, stepPct);
  return watch({ kind: 'text', truth, stepPct, hz, mostPct: 60, random, pack, shown });
}

const rounded = (pct: number, stepPct: number): number =>
  Number((Math.round(pct / stepPct) * stepPct).toFixed(6));

interface Watching extends Pick<OddMeter, 'kind' | 'truth' | 'stepPct'> {
  hz: number;
  mostPct: number;
  random: Random;
  pack(pct: number | null, at: { index: number; ms: number }): Uint8Array;
  /** What the display shows. */
  shown(pct: number): number;
}

function watch({ kind, truth, stepPct, hz, mostPct, random, pack, shown }: Watching): OddMeter {
  const course = courseOf(random, mostPct);
  const between = (from: number, to: number): number => from + (to - from) * random();
  const packets: WatchedPacket[] = [];
  const everyMs = 1000 / hz;
  for (let index = 0; index * everyMs < BOARDS * course.everyMs; index++) {
    const ms = index * everyMs;
    packets.push({ atMs: ms + between(0, 20), bytes: pack(course.at(ms), { index, ms }) });
  }
  const decimals = stepPct === 1 ? 0 : 1;
  const numbers = Array.from({ length: BOARDS }, (_, board): ShownNumber => {
    const readMs = board * course.everyMs + course.outMs - between(1200, 2500);
    // The display shows what was sent last.
    const sentMs = Math.floor(readMs / everyMs) * everyMs;
    const fromMs = readMs + between(300, 1000);
    const value = Number(shown(course.at(sentMs)!).toFixed(decimals));
    return { value, resolution: 10 ** -decimals, fromMs, toMs: fromMs + between(500, 1500) };
  });
  const later = Array.from({ length: 60 }, (_, at) => {
    const index = packets.length + at;
    const pct = between(6, mostPct - 1);
    return { bytes: pack(pct, { index, ms: index * everyMs }), shownPct: shown(pct) };
  });
  const still = { ...source, characteristicUuid: 'fff2' };
  const places: WatchedSource[] = [
    { source: still, packets: packets.map(({ atMs }) => ({ atMs, bytes: Uint8Array.of(88) })) },
    { source, packets },
  ];
  return { kind, truth, stepPct, places, numbers, later };
}

/** What was watched before the last of these numbers was typed. */
export const until = (places: readonly WatchedSource[], numbers: readonly ShownNumber[]): WatchedSource[] =>
  places.map((place) => ({
    ...place,
    packets: place.packets.filter(({ atMs }) => atMs <= numbers.at(-1)!.toMs),
  }));

/** Whether a proposal shows what the display shows, on packets that it was not made from: within its last digit. */
export function isRight(proposal: Proposal | undefined, { later, stepPct }: OddMeter): boolean {
  if (proposal === undefined) return false;
  const range = { min: 0, max: 100 };
  const description = {
    ...plainDescription({ ...proposal, range, origin: 'mapped-by-hand' }),
    match: proposal.match,
  };
  const wrong = later.filter(({ bytes, shownPct }) => {
    const { value } = decodePacket(bytes, description);
    return !value?.ok || Math.abs(value.value - shownPct) > stepPct * 1.01;
  });
  return wrong.length === 0;
}
