import type { Condition, Layout, Letters, TextLayout } from './layout.ts';
import { movementOf, type WatchedPacket } from './movement.ts';
import { bytesOfLayout } from './possible-layouts.ts';
import { numbersInText, wordsOf } from './text-value.ts';
import { decodeLayout } from './value.ts';

/**
 * What a packet may hold beside the value. None of it can be sure from bytes alone, so a person says which it is by
 * the number that the meter shows.
 */
export interface ProposedField {
  layout: Layout;
  /** What it reads now. */
  now: number;
}

/** Where the reading is, and then other things that were found. */
export type Taken = readonly [Layout, ...(Layout | Letters)[]];

/** What wood is probed at, °C, and how far that moves while a meter is set up; common practice, no source. */
const COLDEST_C = -30;
const HOTTEST_C = 60;
const MOST_CHANGE_C = 8;
const MOST_CHANGE_BATTERY = 3;
const MOST_PROPOSALS = 8;
const MOST_LOOKED_AT = 120;
/** All of the newest packets are read too: every fifth or tenth of a one-digit count may be the same. */
const LOOKED_AT_ON_END = 20;

const plain = { exponent: 0, scale: 1, offset: 0 } as const;
const number = (format: number, byteOffset: number, exponent = 0, byteOrder?: 'high-first'): Layout => ({
  kind: 'number',
  format,
  byteOffset,
  byteOrder,
  ...plain,
  exponent,
});

/**
 * Temperatures in °C that the packets may hold, the likeliest first.
 * @param taken  where the reading and other things are
 */
export const proposeTemperature = (packets: readonly WatchedPacket[], taken: Taken): ProposedField[] =>
  slowNumbers(packets, taken, { least: COLDEST_C, most: HOTTEST_C, change: MOST_CHANGE_C }, (length) => {
    const at = Array.from({ length }, (_, byteOffset) => byteOffset);
    return [
      ...at.flatMap((byteOffset) => [-1, -2].map((exponent) => number(14, byteOffset, exponent))),
      ...at.map((byteOffset) => number(12, byteOffset)),
      ...at.flatMap((byteOffset) =>
        [-1, -2].map((exponent) => number(14, byteOffset, exponent, 'high-first')),
      ),
      ...at.flatMap((byteOffset) => [22, 20].map((format) => number(format, byteOffset))),
    ];
  });

/** Charges of a battery in % that the packets may hold. @param taken  where the reading and other things are */
export const proposeBattery = (packets: readonly WatchedPacket[], taken: Taken): ProposedField[] =>
  slowNumbers(packets, taken, { least: 1, most: 100, change: MOST_CHANGE_BATTERY }, (length) =>
    Array.from({ length }, (_, at) => number(4, at)),
  );

/** Between which numbers it is, and how much it may change meanwhile. */
interface Bounds {
  least: number;
  most: number;
  change: number;
}

/** Numbers beside the value that could be read in every packet, one for each that it reads now. */
function slowNumbers(
  packets: readonly WatchedPacket[],
  taken: Taken,
  bounds: Bounds,
  ofBytes: (length: number) => Layout[],
): ProposedField[] {
  const newest = packets.at(-1)?.bytes;
  if (newest === undefined) return [];
  const [value] = taken;
  const { motions } = movementOf(packets);
  const isBeside = (layout: Layout) => {
    const own = bytesOf(layout, newest.length);
    return (
      taken.every((each) => !overlap(own, bytesOf(each, newest.length))) &&
      !motions.slice(own.from, own.to).includes('counts')
    );
  };
  const layouts =
    value.kind === 'text' ? otherNumbers(newest, value, taken) : ofBytes(newest.length).filter(isBeside);
  // They change so slowly that a part of the packets shows it.
  const every = Math.ceil(packets.length / MOST_LOOKED_AT);
  const some = packets.filter((_, at) => {
    const newer = packets.length - 1 - at;
    return newer < LOOKED_AT_ON_END || newer % every === 0;
  });
  const found = new Map<number, Layout>();
  for (const layout of layouts) {
    const decoded = decodeLayout(newest, layout);
    // Zeros are everywhere.
    if (!decoded.ok || decoded.value === 0 || found.has(decoded.value)) continue;
    if (isSlow(some, layout, bounds)) found.set(decoded.value, layout);
  }
  return [...found].slice(0, MOST_PROPOSALS).map(([now, layout]) => ({ layout, now }));
}

function isSlow(packets: readonly WatchedPacket[], layout: Layout, { least, most, change }: Bounds): boolean {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { bytes } of packets) {
    const decoded = decodeLayout(bytes, layout);
    if (!decoded.ok) return false;
    low = Math.min(low, decoded.value);
    high = Math.max(high, decoded.value);
    if (low < least || high > most || high - low > change) return false;
  }
  return true;
}

interface Bytes {
  from: number;
  to: number;
}

const bytesOf = (layout: Layout | Letters, length: number): Bytes =>
  layout.kind === 'letters'
    ? { from: layout.byteOffset, to: layout.byteOffset + layout.octets }
    : bytesOfLayout(layout, length);

const overlap = (a: Bytes, b: Bytes): boolean => a.from < b.to && b.from < a.to;

/** The other numbers of the text that the value is in. */
const otherNumbers = (
  newest: Uint8Array,
  value: TextLayout,
  taken: readonly (Layout | Letters)[],
): TextLayout[] =>
  Array.from(
    { length: numbersInText(newest.slice(value.byteOffset)) },
    (_, index): TextLayout => ({
      ...value,
      ...plain,
      nth: index + 1,
    }),
  ).filter(({ nth }) => taken.every((each) => each.kind !== 'text' || each.nth !== nth));

/**
 * Where the packets say what the meter is set to for the species, where that was changed on the meter since a moment:
 * what never changed before, and is another one now.
 *
 * @param taken      where the reading and other things are
 * @param changedMs  on the packets' clock; it was changed after it
 */
export function proposeSpecies(
  packets: readonly WatchedPacket[],
  taken: Taken,
  changedMs: number,
): (Layout | Letters)[] {
  const before = packets.filter(({ atMs }) => atMs < changedMs);
  const after = packets.filter(({ atMs }) => atMs >= changedMs);
  const earlier = before.at(-1)?.bytes;
  const now = after.at(-1)?.bytes;
  if (earlier === undefined || now === undefined) return [];
  const [value] = taken;
  const isSwitched = (read: (bytes: Uint8Array) => number | undefined): boolean =>
    read(now) !== undefined &&
    read(now) !== read(earlier) &&
    before.every(({ bytes }) => read(bytes) === read(earlier)) &&
    // What has not come to rest is something else.
    after.slice(-AT_REST).every(({ bytes }) => read(bytes) === read(now));
  // Bits may share their byte with the setting.
  const own =
    value.kind === 'text'
      ? []
      : taken
          .filter((each) => each === value || each.kind !== 'bits')
          .map((each) => bytesOf(each, now.length));
  // In a text that is longer now, what is behind was shifted.
  const length = now.length === earlier.length ? now.length : 0;
  const switched = Array.from({ length }, (_, at) => at).filter(
    (at) => own.every(({ from, to }) => at < from || at >= to) && isSwitched((bytes) => bytes[at]),
  );
  const isWord = (at: number) => isLetter(now[at]!) || isLetter(earlier[at] ?? 0);
  const words = wordsOver(switched.filter(isWord), value.kind === 'text' ? isWord : () => false);
  const numbers =
    value.kind === 'text'
      ? otherNumbers(now, value, taken).filter((layout) =>
          isSwitched((bytes) => {
            const decoded = decodeLayout(bytes, layout);
            return decoded.ok ? decoded.value : undefined;
          }),
        )
      : switched
          .filter((at) => !isWord(at))
          .map((at) => besideBits(at, now[at]! ^ earlier[at]!, taken.slice(1)));
  return [...words, ...numbers];
}

/** The byte, or as much of it around the bits that changed as no other field has. */
function besideBits(at: number, changed: number, others: readonly (Layout | Letters)[]): Layout {
  const taken = others.flatMap((each) => (each.kind === 'bits' ? [each.firstBit - 8 * at] : []));
  const lowest = 31 - Math.clz32(changed & -changed);
  const from = Math.max(0, ...taken.filter((bit) => bit >= 0 && bit < lowest).map((bit) => bit + 1));
  const to = Math.min(8, ...taken.filter((bit) => bit > lowest));
  if (to - from === 8) return number(4, at);
  return { kind: 'bits', firstBit: 8 * at + from, bits: to - from, signed: false, ...plain };
}

const AT_REST = 3;
const MOST_LETTERS = 32;

/** The words of letters that changed. @param isAlso  whether a byte beside them belongs to them */
function wordsOver(changed: readonly number[], isAlso: (at: number) => boolean): Letters[] {
  const found: Letters[] = [];
  const isOwn = (at: number) => changed.includes(at) || isAlso(at);
  let until = 0;
  for (const at of changed) {
    if (at < until) continue;
    let from = at;
    while (from > until && isOwn(from - 1)) from--;
    let to = at + 1;
    while (isOwn(to) && to - from < MOST_LETTERS) to++;
    found.push({ kind: 'letters', byteOffset: from, octets: to - from });
    until = to;
  }
  return found;
}

/**
 * What in the packets says that the meter holds its value, where its button was pressed at a moment: a word of its text
 * that was never there before, or bits that never changed before, the one that changed with the fewest others first.
 *
 * @param value     where the reading is, whose bits do not count
 * @param pressedMs  on the packets' clock; the button was pressed after it
 */
export function proposeHold(
  packets: readonly WatchedPacket[],
  value: Layout,
  pressedMs: number,
): Condition[] {
  const before = packets.filter(({ atMs }) => atMs < pressedMs);
  const after = packets.filter(({ atMs }) => atMs >= pressedMs);
  const newest = after.at(-1)?.bytes;
  if (before.length === 0 || newest === undefined) return [];
  if (value.kind === 'text') {
    const known = new Set(before.flatMap(({ bytes }) => wordsOf(bytes)));
    const words = new Set(after.flatMap(({ bytes }) => wordsOf(bytes)).filter((word) => !known.has(word)));
    return [...words].map((word) => ({ word }));
  }
  const { motions } = movementOf(packets);
  const own = bytesOfLayout(value, newest.length);
  const found: { condition: Condition; bits: number }[] = [];
  for (let at = 0; at < newest.length; at++) {
    if ((at >= own.from && at < own.to) || motions[at] === 'counts') continue;
    const [earlier, later] = [before, after].map((each) => new Set(each.map(({ bytes }) => bytes[at])));
    const news = [...later!].filter((byte) => byte !== undefined && !earlier!.has(byte)) as number[];
    const usual = [...earlier!][0];
    if (news.length !== 1 || earlier!.size !== 1 || usual === undefined) continue;
    const changed = news[0]! ^ usual;
    const bits = Array.from({ length: 8 }, (_, bit) => bit).filter((bit) => (changed >> bit) & 1);
    found.push({ condition: heldWhere(at, bits, news[0]!, usual), bits: bits.length });
  }
  return found.toSorted((a, b) => a.bits - b.bits).map(({ condition }) => condition);
}

/** The lowest bit that changed; the byte where it is a letter. */
function heldWhere(at: number, bits: readonly number[], held: number, usual: number): Condition {
  if (isLetter(held) || isLetter(usual)) return { layout: number(4, at), equals: held };
  const firstBit = 8 * at + bits[0]!;
  return {
    layout: { kind: 'bits', firstBit, bits: 1, signed: false, ...plain },
    equals: (held >> bits[0]!) & 1,
  };
}

const isLetter = (byte: number): boolean => /[A-Za-z*]/.test(String.fromCharCode(byte));
