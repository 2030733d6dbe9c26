import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import type { Condition, Layout } from './layout.ts';
import { type Movement, movementOf, type WatchedPacket } from './movement.ts';
import { bytesOfLayout, isInteger, type PossibleLayout, possibleLayouts } from './possible-layouts.ts';
import { fitScales } from './scale-fit.ts';
import type { Source } from './source.ts';
import { decodeLayout, formatTakesExponent } from './value.ts';

/**
 * How a meter's bytes may hold the number on its display, from packets that were watched and numbers that a person
 * typed off the display. Scores are in bits: one more is twice as likely. What is likely beforehand is common practice,
 * no source.
 */

/** What was watched of one place, oldest first. */
export interface WatchedPlace {
  source: Source;
  packets: readonly WatchedPacket[];
}

/** A number that a person typed off the meter's display. */
export interface ShownNumber {
  /** In %, or in ohms. */
  value: number;
  /** What the last digit on the display counts, in the same unit. */
  resolution: number;
  /** From when to when it was typed, on the packets' clock. */
  fromMs: number;
  toMs: number;
}

export interface Proposal {
  source: Source;
  /** Where packets of several kinds come from one place, what those with the value say. */
  match: Condition | null;
  value: Layout;
  unit: ReadingUnit;
  /** Of each typed number, whether its packets agree. */
  follows: boolean[];
  /** It follows all numbers, and they are so different that no constant could. */
  isEnough: boolean;
  /** Nothing else follows them as well, too. */
  isSure: boolean;
}

/** A display is read a moment before it is typed. */
const BEFORE_TYPING_MS = 3000;
/** The pins may be out again by then. */
const LATE_MS = 20_000;

/** Whether what came then says something of a typed number, however long ago that was. */
export const isBeside = (atMs: number, { fromMs, toMs }: Pick<ShownNumber, 'fromMs' | 'toMs'>): boolean =>
  atMs >= fromMs - LATE_MS && atMs <= toMs;
const MOST_DISTINCT = 60;
const MOST_SCORED = 60;
const MOST_JUDGED_PACKETS = 300;
const MOST_PROPOSALS = 5;

/** Powers of ten of the number on a display. */
const EXPONENTS = { pct: [-1, -2, 0, -3, 1, 2], ohm: [0, 3, 6, 9, 5, 4, 2, 1, -1, -2, -3, 7, 8] } as const;
const MOST_VALUE = { pct: 200, ohm: 1e15 } as const;

/** Proposals this far behind in score could be chance. */
const CLEAR_LEAD = 3;
const MATCH_COST = 1.2;

interface Seen {
  bytes: Uint8Array;
  /** How many packets were these very bytes. */
  times: number;
}

interface Look {
  shown: ShownNumber;
  near: Seen[];
  late: Seen[];
}

/** One kind of packet of a place. */
interface Kind {
  source: Source;
  match: Condition | null;
  packets: readonly WatchedPacket[];
}

interface Candidate {
  kind: Kind;
  layout: Layout;
  follows: boolean[];
  followed: number;
  score: number;
  /** Numbers that it needed for a scale, so that they prove nothing. */
  fitted: number;
}

/** @returns those that moved, the likeliest first; those that mean the same number on every packet are one */
export function propose(
  places: readonly WatchedPlace[],
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
): Proposal[] {
  if (shown.length === 0) return [];
  const kinds = places.flatMap(kindsOf);
  const plain = kinds.flatMap((kind) => candidatesIn(kind, shown, unit, powersOfTen));
  // Almost any bytes that move can be scaled to two numbers: so only where nothing simpler follows them.
  const isFollowed = plain.some(({ followed }) => followed === shown.length);
  const isFittable = !isFollowed && differentNumbers(shown) > 1;
  const candidates = isFittable
    ? [...plain, ...kinds.flatMap((kind) => candidatesIn(kind, shown, unit, simpleScales))]
    : plain;
  const likely = candidates.toSorted(likelierFirst).slice(0, MOST_SCORED);
  const meanings = new Map<string, Candidate>();
  for (const candidate of likely) {
    const { meaning, bonus } = judge(candidate, unit);
    candidate.score += bonus;
    const known = meanings.get(meaning);
    if (known === undefined || likelierFirst(candidate, known) < 0) meanings.set(meaning, candidate);
  }
  const ranked = [...meanings.values()].toSorted(likelierFirst);
  const best = ranked.filter(({ followed }) => followed === ranked[0]!.followed);
  return best.slice(0, MOST_PROPOSALS).map((candidate, place) => ({
    source: candidate.kind.source,
    match: candidate.kind.match,
    value: candidate.layout,
    unit,
    follows: candidate.follows,
    isEnough: isEnough(candidate, shown),
    isSure: place === 0 && isEnough(candidate, shown) && isClear(candidate, ranked[1]),
  }));
}

const likelierFirst = (a: Candidate, b: Candidate): number => b.followed - a.followed || b.score - a.score;

const isEnough = ({ followed, fitted }: Candidate, shown: readonly ShownNumber[]): boolean =>
  followed === shown.length && differentNumbers(shown) >= 2 + fitted;

const isClear = (best: Candidate, next: Candidate | undefined): boolean =>
  next === undefined || next.followed < best.followed || best.score - next.score >= CLEAR_LEAD;

/** How many of the numbers are so different that no two can be the same bytes. */
function differentNumbers(shown: readonly ShownNumber[]): number {
  const apart = (a: ShownNumber, b: ShownNumber) =>
    Math.abs(a.value - b.value) >= 5 * Math.max(a.resolution, b.resolution);
  return shown.filter((each, at) => shown.slice(0, at).every((earlier) => apart(each, earlier))).length;
}

// --- packets

/** The place as it is, and its packets by kind where their first byte says the kind. */
function kindsOf({ source, packets }: WatchedPlace): Kind[] {
  const whole: Kind = { source, match: null, packets };
  const byFirst = new Map<number | undefined, WatchedPacket[]>();
  for (const packet of packets) {
    const own = byFirst.get(packet.bytes[0]);
    if (own) own.push(packet);
    else byFirst.set(packet.bytes[0], [packet]);
  }
  const changes = packets.filter(({ bytes }, at) => at > 0 && bytes[0] !== packets[at - 1]!.bytes[0]);
  const isByKind =
    byFirst.size > 1 &&
    byFirst.size <= 6 &&
    changes.length * 4 >= packets.length &&
    [...byFirst.values()].every((own) => own.length >= 3);
  if (!isByKind) return [whole];
  const split = [...byFirst].flatMap(([first, own]): Kind[] => {
    if (first === undefined) return [];
    return [{ source, match: { layout: firstByte, equals: first }, packets: own }];
  });
  return [whole, ...split];
}

const firstByte: Layout = { kind: 'number', format: 4, byteOffset: 0, exponent: 0, scale: 1, offset: 0 };

function lookAt({ packets }: Kind, shown: ShownNumber): Look {
  const until = packets.filter(({ atMs }) => atMs <= shown.toMs);
  const since = (ms: number) => {
    const first = until.findIndex(({ atMs }) => atMs >= ms);
    // What was sent last before holds until the next is sent.
    return first < 0 ? until.slice(-1) : until.slice(Math.max(0, first - 1));
  };
  return {
    shown,
    near: distinct(since(shown.fromMs - BEFORE_TYPING_MS)),
    late: distinct(since(shown.fromMs - LATE_MS)),
  };
}

/** The newest that differ, with how often each came. */
function distinct(packets: readonly WatchedPacket[], most = MOST_DISTINCT): Seen[] {
  const seen = new Map<string, Seen>();
  for (const { bytes } of packets.toReversed()) {
    const key = bytes.join();
    const known = seen.get(key);
    if (known) known.times++;
    else if (seen.size < most) seen.set(key, { bytes, times: 1 });
  }
  return [...seen.values()];
}

// --- candidates

/** The scales to try for a layout, given what it finds at each typed number. */
type Scaling = (
  possible: PossibleLayout,
  stored: readonly (readonly (number | null)[])[],
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
) => Scaled[];

function candidatesIn(
  kind: Kind,
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
  scaling: Scaling,
): Candidate[] {
  const looks = shown.map((each) => lookAt(kind, each));
  if (looks.some(({ late }) => late.length === 0)) return [];
  const movement = movementOf(kind.packets);
  const longest = looks
    .flatMap(({ near }) => near.map(({ bytes }) => bytes))
    .toSorted((a, b) => b.length - a.length)[0]!;
  return possibleLayouts(longest).flatMap((possible) => {
    const { from, to } = bytesOfLayout(possible.layout, longest.length);
    if (!movement.motions.slice(from, to).includes('moves')) return [];
    const read = (seen: Seen[]) => seen.map(({ bytes }) => storedIn(bytes, possible.layout, unit));
    const stored = looks.map(({ near, late }) => ({ near: read(near), late: read(late) }));
    const scaled = scaling(
      possible,
      stored.map(({ near }) => near),
      shown,
      unit,
    );
    let isMoving: boolean | undefined;
    return scaled.flatMap(({ layout, cost, factor, plus, fitted }) => {
      const agreements = looks.map((look, at) => agreement(look, stored[at]!, factor, plus));
      const followed = agreements.filter((each) => each !== null).length;
      if (followed < Math.max(1, shown.length - 1)) return [];
      isMoving ??= hasMoved(kind, possible.layout, unit);
      if (!isMoving) return [];
      const evidence = agreements.reduce<number>((sum, each) => sum + (each ?? 0), 0);
      const score =
        evidence - cost - (kind.match ? MATCH_COST : 0) + movementBonus(layout, longest.length, movement);
      const follows = agreements.map((each) => each !== null);
      return [{ kind, layout, follows, followed, score, fitted }];
    });
  });
}

function storedIn(bytes: Uint8Array, layout: Layout, unit: ReadingUnit): number | null {
  const decoded = decodeLayout(bytes, layout, { unit });
  return decoded.ok ? decoded.value : null;
}

/** Whether the number in there was ever another one: its bytes may have moved in bits that are not of it. */
function hasMoved({ packets }: Kind, layout: Layout, unit: ReadingUnit): boolean {
  const first = packets[0] && storedIn(packets[0].bytes, layout, unit);
  return packets.some(({ bytes }) => storedIn(bytes, layout, unit) !== first);
}

interface Scaled {
  layout: Layout;
  cost: number;
  factor: number;
  plus: number;
  fitted: number;
}

const powersOfTen: Scaling = ({ layout, cost }, _, shown, unit) =>
  EXPONENTS[unit].map((exponent) => {
    const factor = Number(`1e${exponent}`);
    const takesNone = layout.kind === 'number' && !formatTakesExponent(layout.format);
    return {
      layout: takesNone ? { ...layout, scale: factor } : { ...layout, exponent },
      cost: cost + costOfPower(layout, exponent, shown, unit),
      factor,
      plus: 0,
      fitted: 0,
    };
  });

/** Whole numbers usually count what the display's last digit counts, or a tenth of it; others are the number itself. */
function costOfPower(
  layout: Layout,
  exponent: number,
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
): number {
  if (!isInteger(layout)) return exponent === 0 ? -2 : 2;
  const finest = Math.round(Math.log10(Math.min(...shown.map(({ resolution }) => resolution))));
  const finer = finest - exponent;
  if (finer === 0) return 0;
  return finer > 0 ? 0.4 * finer : unit === 'ohm' ? 1.5 : 2.5;
}

/** Where whole numbers count in steps of something else. */
const simpleScales: Scaling = ({ layout, cost }, stored, shown) => {
  if (layout.kind !== 'number' || !isInteger(layout)) return [];
  const middles = stored.map(middleOf);
  if (middles.some((middle) => middle === null)) return [];
  const points = middles.map((middle, at) => ({ ...shown[at]!, stored: middle! }));
  return fitScales(points).map(({ scale, offset, cost: ofFit }) => ({
    layout: { ...layout, scale, offset },
    cost: cost + ofFit,
    factor: scale,
    plus: offset,
    fitted: offset === 0 ? 1 : 2,
  }));
};

function middleOf(stored: readonly (number | null)[]): number | null {
  const known = stored.filter((value) => value !== null).toSorted((a, b) => a - b);
  return known[known.length >> 1] ?? null;
}

/** How well the packets agree with a number, in bits: 0 where all do; null where none does. */
function agreement(
  { shown, near, late }: Look,
  stored: { near: (number | null)[]; late: (number | null)[] },
  factor: number,
  plus: number,
): number | null {
  const share = (seen: Seen[], numbers: (number | null)[]) => {
    let agreeing = 0;
    let all = 0;
    for (const [at, { times }] of seen.entries()) {
      all += times;
      const number = numbers[at]!;
      if (number !== null) agreeing += times * closeness(number * factor + plus, shown);
    }
    return agreeing / all;
  };
  const now = share(near, stored.near);
  if (now > 0) return Math.max(-5, Math.log2(now));
  const before = share(late, stored.late);
  return before > 0 ? Math.max(-6, Math.log2(before)) - 2 : null;
}

/** 1 where the display would show it so, less where it would cut it off instead of rounding it. */
function closeness(value: number, { value: shown, resolution }: ShownNumber): number {
  const off = (value - shown) / resolution;
  if (Math.abs(off) <= 0.5 + 1e-6) return 1;
  return off > 0 && off < 1 ? 0.4 : 0;
}

function movementBonus(layout: Layout, length: number, { motions }: Movement): number {
  const { from, to } = bytesOfLayout(layout, length);
  const own = motions.slice(from, to);
  if (layout.kind !== 'text' && own.includes('counts')) return -4;
  // The byte beside it may be its higher one, which few numbers need.
  return motions[from - 1] === 'moves' || motions[to] === 'moves' ? 1.5 : 2;
}

// --- over all packets

/** What a candidate makes of every packet, as text, and what that says for it or against it, in bits. */
function judge({ kind, layout }: Candidate, unit: ReadingUnit): { meaning: string; bonus: number } {
  const packets = kind.packets.slice(-MOST_JUDGED_PACKETS);
  const read = new Map(
    distinct(packets, MOST_JUDGED_PACKETS).map(({ bytes }) => [bytes.join(), storedIn(bytes, layout, unit)]),
  );
  const values = packets.map(({ bytes }) => read.get(bytes.join()) ?? null);
  const known = values.filter((value) => value !== null);
  const isPossible = (value: number) => value >= 0 && value <= MOST_VALUE[unit];
  const likely = new Set(known.filter(isPossible));
  const odd = known.filter((value) => !isPossible(value));
  // One number that no wood has may be the meter's own sign for its pins in the air.
  const oddShare = new Set(odd).size > 1 ? odd.length / values.length : 0;
  const unread = 1 - known.length / values.length;
  return {
    meaning: `${JSON.stringify(kind.source)} ${[...read.values()].map((value) => value?.toPrecision(9)).join()}`,
    // One that leaves out the last bit of the number follows it half of the time, with half as many numbers.
    bonus: 1.5 * Math.log2(1 + likely.size) - 10 * oddShare - 3 * unread - 10 * restlessness(known),
  };
}

/** Share of the steps that go far through the whole range, beyond those of pins that go in and out. */
function restlessness(values: readonly number[]): number {
  const range = Math.max(...values) - Math.min(...values);
  const far = values.filter((value, at) => at > 0 && Math.abs(value - values[at - 1]!) > range / 4);
  return Math.max(0, far.length / values.length - 0.1);
}
