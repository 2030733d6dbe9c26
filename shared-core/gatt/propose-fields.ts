import type { Condition, Layout } from './layout.ts';
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

/** What wood is probed at, °C, and how far that moves while a meter is set up; common practice, no source. */
const COLDEST_C = -30;
const HOTTEST_C = 60;
const MOST_CHANGE_C = 8;
const MOST_CHANGE_BATTERY = 3;
const MOST_PROPOSALS = 8;

const plain = { exponent: 0, scale: 1, offset: 0 } as const;
const number = (format: number, byteOffset: number, exponent = 0, byteOrder?: 'high-first'): Layout => ({
  kind: 'number',
  format,
  byteOffset,
  byteOrder,
  ...plain,
  exponent,
});

/** Temperatures in °C that the packets may hold, the likeliest first. @param value  where the reading is */
export const proposeTemperature = (packets: readonly WatchedPacket[], value: Layout): ProposedField[] =>
  slowNumbers(packets, value, (length) => {
    const at = Array.from({ length }, (_, byteOffset) => byteOffset);
    return [
      ...at.flatMap((byteOffset) => [-1, -2].map((exponent) => number(14, byteOffset, exponent))),
      ...at.map((byteOffset) => number(12, byteOffset)),
      ...at.flatMap((byteOffset) =>
        [-1, -2].map((exponent) => number(14, byteOffset, exponent, 'high-first')),
      ),
      ...at.flatMap((byteOffset) => [22, 20].map((format) => number(format, byteOffset))),
    ];
  }).filter(({ least, most }) => least >= COLDEST_C && most <= HOTTEST_C && most - least <= MOST_CHANGE_C);

/** Charges of a battery in % that the packets may hold. @param value  where the reading is */
export const proposeBattery = (packets: readonly WatchedPacket[], value: Layout): ProposedField[] =>
  slowNumbers(packets, value, (length) => Array.from({ length }, (_, at) => number(4, at))).filter(
    ({ least, most }) => least > 0 && most <= 100 && most - least <= MOST_CHANGE_BATTERY,
  );

interface SlowNumber extends ProposedField {
  least: number;
  most: number;
}

/** Numbers beside the value that could be read in every packet, one for each that it reads now. */
function slowNumbers(
  packets: readonly WatchedPacket[],
  value: Layout,
  ofBytes: (length: number) => Layout[],
): SlowNumber[] {
  const newest = packets.at(-1)?.bytes;
  if (newest === undefined) return [];
  const { from, to } = bytesOfLayout(value, newest.length);
  const { motions } = movementOf(packets);
  const isBeside = (layout: Layout) => {
    const own = bytesOfLayout(layout, newest.length);
    return (own.to <= from || own.from >= to) && !motions.slice(own.from, own.to).includes('counts');
  };
  const layouts =
    value.kind === 'text' ? otherNumbers(newest, value) : ofBytes(newest.length).filter(isBeside);
  const found = new Map<number, SlowNumber>();
  for (const layout of layouts) {
    const numbers = packets.map(({ bytes }) => decodeLayout(bytes, layout));
    if (!numbers.every((each) => each.ok)) continue;
    const values = numbers.map((each) => each.value);
    const now = values.at(-1)!;
    // Zeros are everywhere.
    if (now === 0 || found.has(now)) continue;
    found.set(now, { layout, now, least: Math.min(...values), most: Math.max(...values) });
  }
  return [...found.values()].slice(0, MOST_PROPOSALS);
}

/** The other numbers of the text that the value is in. */
const otherNumbers = (newest: Uint8Array, value: Extract<Layout, { kind: 'text' }>): Layout[] =>
  Array.from(
    { length: numbersInText(newest.slice(value.byteOffset)) },
    (_, index): Layout => ({
      ...value,
      ...plain,
      nth: index + 1,
    }),
  ).filter((layout) => layout.kind === 'text' && layout.nth !== value.nth);

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
