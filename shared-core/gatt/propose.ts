import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import type { Condition, Layout } from './layout.ts';
import { type Movement, movementOf, type WatchedPacket } from './movement.ts';
import { bytesOfLayout, isInteger, type PossibleLayout, possibleLayouts } from './possible-layouts.ts';
import { fitScales, type StoredAndShown } from './scale-fit.ts';
import type { Source } from './source.ts';
import { decodeLayout, formatTakesExponent, representableRange } from './value.ts';

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
/** For so long, at least, a value stays where a person can read it, and so near, as a share of it. */
const REST_MS = 400;
const NEAR_SHARE = 0.012;
const MOST_DISTINCT = 60;
const MOST_SCORED = 60;
const MOST_JUDGED_PACKETS = 300;
const MOST_PROPOSALS = 3;
/** Those so far behind the first are chance. */
const MOST_BEHIND = 10;

/** Powers of ten of the number on a display. */
const EXPONENTS = { pct: [-1, -2, 0, -3, 1, 2], ohm: [0, 3, 6, 9, 5, 4, 2, 1, -1, -2, -3, 7, 8] } as const;
const MOST_VALUE = { pct: 200, ohm: 1e15 } as const;

/** Proposals this far behind in score could be chance. */
const CLEAR_LEAD = 3;
const MATCH_COST = 1.2;
/** Up to here a reading is as likely as another, %. */
const USUAL_MOST_PCT = 50;
/** Every meter shows as much, %. */
const LEAST_MOST_PCT = 45;
/** Bits by which numbers must be less likely than chance to be sure. */
const BEYOND_CHANCE = 4;

/** What came in some time, in order. */
interface Stretch {
  /** Packets that differ. */
  seen: Uint8Array[];
  /** Of each packet, which of them it is, and for how long it was the newest. */
  order: { at: number; ms: number }[];
}

interface Look {
  shown: ShownNumber;
  near: Stretch;
  late: Stretch;
}

/** What a candidate reads in each packet that differs, as text; empty where wood is not read so. */
interface Judged {
  candidate: Candidate;
  reads: string[];
}

/** One kind of packet of a place. */
interface Kind {
  source: Source;
  match: Condition | null;
  packets: readonly WatchedPacket[];
}

/** How many ways to read the bytes were tried, by the kind of layout. */
type Tried = Record<Layout['kind'], number>;

interface Candidate {
  kind: Kind;
  layout: Layout;
  follows: boolean[];
  followed: number;
  /** How unlikely such a layout is beforehand, bits. */
  cost: number;
  score: number;
  /** Numbers that it needed for a scale, so that they prove nothing. */
  fitted: number;
}

/** @returns those that moved, the likeliest first; those that show the same numbers are one */
export function propose(
  places: readonly WatchedPlace[],
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
): Proposal[] {
  const proposing = proposeInTurns(places, shown, unit);
  for (;;) {
    const came = proposing.next();
    if (came.done) return came.value;
  }
}

/** The same in many short turns, so that nothing waits for it. */
export function* proposeInTurns(
  places: readonly WatchedPlace[],
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
): Generator<void, Proposal[]> {
  if (shown.length === 0) return [];
  const candidates: Candidate[] = [];
  const tried: Tried = { number: 0, bits: 0, text: 0 };
  for (const kind of places.flatMap(kindsOf)) {
    candidates.push(...(yield* candidatesIn(kind, shown, unit, tried)));
  }
  const likely = candidates.toSorted(likelierFirst).slice(0, MOST_SCORED);
  const meanings = new Map<string, Judged>();
  for (const candidate of likely) {
    yield;
    const { reads, bonus } = judge(candidate, unit);
    candidate.score += bonus;
    const meaning = `${JSON.stringify(candidate.kind.source)} ${reads.join()}`;
    const known = meanings.get(meaning);
    if (known === undefined || likelierFirst(candidate, known.candidate) < 0)
      meanings.set(meaning, { candidate, reads });
  }
  const judged = [...meanings.values()].toSorted((a, b) => likelierFirst(a.candidate, b.candidate));
  const whole = judged.filter((each, at) => !judged.slice(0, at).some((around) => isPartOf(each, around)));
  const ranked = whole.map(({ candidate }) => candidate);
  const best = whole
    .filter(({ candidate: { followed, score } }) => {
      return followed === ranked[0]!.followed && score >= ranked[0]!.score - MOST_BEHIND;
    })
    // No display could tell them apart so far.
    .filter((each, at, all) => !all.slice(0, at).some((likelier) => showsTheSame(each, likelier, shown)))
    .map(({ candidate }) => candidate);
  return best.slice(0, MOST_PROPOSALS).map((candidate, place) => ({
    source: candidate.kind.source,
    match: candidate.kind.match,
    value: candidate.layout,
    unit,
    follows: candidate.follows,
    isEnough: isEnough(candidate, shown),
    isSure:
      place === 0 &&
      isEnough(candidate, shown) &&
      isClear(candidate, ranked[1]) &&
      isBeyondChance(candidate, shown, unit, tried),
  }));
}

const likelierFirst = (a: Candidate, b: Candidate): number => b.followed - a.followed || b.score - a.score;

const isEnough = ({ followed, fitted }: Candidate, shown: readonly ShownNumber[]): boolean =>
  followed === shown.length && differentNumbers(shown) >= 2 + fitted;

/** Whether it is a piece of the same number, which other bits of it were never needed for. */
function isPartOf(part: Judged, whole: Judged): boolean {
  if (part.candidate.kind !== whole.candidate.kind) return false;
  const length = Math.max(...part.candidate.kind.packets.map(({ bytes }) => bytes.length));
  const [own, around] = [part, whole].map(({ candidate }) => bytesOfLayout(candidate.layout, length));
  if (own!.from < around!.from || own!.to > around!.to) return false;
  return whole.reads.every((number, at) => number === '' || number === part.reads[at]);
}

/** Whether the display would have shown the same number, whenever one was watched, but for its last digit. */
function showsTheSame(a: Judged, b: Judged, shown: readonly ShownNumber[]): boolean {
  if (a.candidate.kind !== b.candidate.kind) return false;
  const resolution = Math.min(...shown.map((each) => each.resolution));
  return a.reads.every((read, at) => Math.abs(Number(read) - Number(b.reads[at])) <= resolution);
}

const isClear = (best: Candidate, next: Candidate | undefined): boolean =>
  next === undefined || next.followed < best.followed || best.score - next.score >= CLEAR_LEAD;

/** Whether it is unlikely that any of so many ways to read the bytes shows all these numbers by chance. */
function isBeyondChance(
  { layout, cost, fitted }: Candidate,
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
  tried: Tried,
): boolean {
  const bits = shown
    .slice(fitted)
    .reduce(
      (sum, { value, resolution }) =>
        sum + Math.log2((unit === 'pct' ? USUAL_MOST_PCT : 8 * value) / resolution),
      0,
    );
  return bits - Math.log2(tried[layout.kind]) - cost >= BEYOND_CHANCE;
}

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
  return {
    shown,
    near: stretchOf(packets, shown.fromMs - BEFORE_TYPING_MS, shown.toMs),
    late: stretchOf(packets, shown.fromMs - LATE_MS, shown.toMs),
  };
}

/** What was sent last before holds until the next is sent. */
function stretchOf(packets: readonly WatchedPacket[], fromMs: number, toMs: number): Stretch {
  const end = packets.findLastIndex(({ atMs }) => atMs <= toMs);
  const begin = Math.max(
    0,
    packets.findLastIndex(({ atMs }) => atMs <= fromMs),
  );
  const seen: Uint8Array[] = [];
  const known = new Map<string, number>();
  const order: Stretch['order'] = [];
  let untilMs = toMs;
  for (let index = end; index >= begin; index--) {
    const { atMs, bytes } = packets[index]!;
    const key = bytes.join();
    let at = known.get(key);
    if (at === undefined && seen.length < MOST_DISTINCT) {
      at = seen.push(bytes) - 1;
      known.set(key, at);
    }
    // Where it sends fast, the newest that differ are enough.
    if (at === undefined) break;
    order.push({ at, ms: Math.max(1, untilMs - Math.max(atMs, fromMs)) });
    untilMs = atMs;
  }
  return { seen, order: order.toReversed() };
}

/** The newest that differ. */
function distinct(packets: readonly WatchedPacket[], most: number): Uint8Array[] {
  const seen = new Map<string, Uint8Array>();
  for (const { bytes } of packets.toReversed()) {
    if (seen.size === most) break;
    const key = bytes.join();
    if (!seen.has(key)) seen.set(key, bytes);
  }
  return [...seen.values()];
}

// --- candidates

/** The scales to try for a layout, given what it finds at each typed number. */
type Scaling = (
  possible: PossibleLayout,
  finds: readonly StoredStretch[],
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
) => Scaled[];

/** What a layout finds in a stretch, oldest first. */
type StoredStretch = readonly { stored: number | null; ms: number }[];

function* candidatesIn(
  kind: Kind,
  shown: readonly ShownNumber[],
  unit: ReadingUnit,
  tried: Tried,
): Generator<void, Candidate[]> {
  const looks = shown.map((each) => lookAt(kind, each));
  if (looks.some(({ late }) => late.order.length === 0)) return [];
  const movement = movementOf(kind.packets);
  const longest = Math.max(...looks.flatMap(({ near }) => near.seen.map(({ length }) => length)));
  const packet = looks.flatMap(({ near }) => near.seen).find(({ length }) => length === longest)!;
  const found: Candidate[] = [];
  for (const possible of possibleLayouts(packet)) {
    yield;
    const { from, to } = bytesOfLayout(possible.layout, longest);
    if (!movement.motions.slice(from, to).includes('moves')) continue;
    const near = looks.map((look) => readStretch(look.near, possible.layout, unit));
    const late = looks.map((look) => once(() => readStretch(look.late, possible.layout, unit)));
    let isMoving: boolean | undefined;
    const scaled = [powersOfTen, simpleScales].flatMap((scaling) => scaling(possible, near, shown, unit));
    tried[possible.layout.kind] += scaled.length;
    for (const { layout, cost, factor, plus, fitted } of scaled) {
      const agreements = shown.map((each, at) => agreement(each, near[at]!, late[at]!, factor, plus));
      const followed = agreements.filter((each) => each !== null).length;
      if (followed < Math.max(1, shown.length - 1)) continue;
      isMoving ??= hasMoved(kind, possible.layout, unit);
      if (!isMoving) break;
      const evidence = agreements.reduce<number>((sum, each) => sum + (each ?? 0), 0);
      const score =
        evidence - cost - (kind.match ? MATCH_COST : 0) + movementBonus(layout, longest, movement);
      const follows = agreements.map((each) => each !== null);
      found.push({ kind, layout, follows, followed, cost, score, fitted });
    }
  }
  return found;
}

function readStretch({ seen, order }: Stretch, layout: Layout, unit: ReadingUnit): StoredStretch {
  const stored = seen.map((bytes) => storedIn(bytes, layout, unit));
  return order.map(({ at, ms }) => ({ stored: stored[at]!, ms }));
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
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
    const scaled = takesNone ? { ...layout, scale: factor } : { ...layout, exponent };
    return {
      layout: scaled,
      cost: cost + costOfPower(layout, exponent, shown, unit) + costOfRange(scaled, unit),
      factor,
      plus: 0,
      fitted: 0,
    };
  });

/** A meter can show wet wood. */
function costOfRange(layout: Layout, unit: ReadingUnit): number {
  const holds = representableRange(layout);
  return unit === 'pct' && holds !== null && holds.max < LEAST_MOST_PCT ? 4 : 0;
}

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
  return finer > 0 ? 0.4 * finer : unit === 'ohm' ? 1.5 : 3.5;
}

/** Where whole numbers count in steps of something else. */
const simpleScales: Scaling = ({ layout, cost }, finds, shown, unit) => {
  if (layout.kind !== 'number' || !isInteger(layout) || differentNumbers(shown) < 2) return [];
  const fits = new Map<string, Scaled>();
  for (const middleOf of [restedAt, commonest, medianOf]) {
    const middles = finds.map(middleOf);
    if (middles.some((middle) => middle === null)) return [];
    const points = middles.map((middle, at) => ({ ...shown[at]!, stored: middle! }));
    for (const { scale, offset, cost: ofFit } of [...fitScales(points), ...fitScales(flickering(points))]) {
      const scaled = { ...layout, scale, offset };
      fits.set(`${scale} ${offset}`, {
        layout: scaled,
        cost: cost + ofFit + costOfRange(scaled, unit),
        factor: scale,
        plus: offset,
        fitted: offset === 0 ? 1 : 2,
      });
    }
  }
  return [...fits.values()];
};

/** With room for a last bit that was another one when the number was read. */
function flickering(points: readonly StoredAndShown[]): StoredAndShown[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  const step = Math.abs((last.value - first.value) / (last.stored - first.stored || 1));
  return points.map((point) => ({ ...point, resolution: point.resolution + 2 * step }));
}

function medianOf(found: StoredStretch): number | null {
  const known = found.flatMap(({ stored }) => (stored === null ? [] : [stored])).toSorted((a, b) => a - b);
  return known[known.length >> 1] ?? null;
}

/** In the middle of the time, when the scale has come to rest and the pins are still in. */
const restedAt = (found: StoredStretch): number | null =>
  medianOf(found.slice(Math.floor(found.length * 0.4), Math.ceil(found.length * 0.8)));

function commonest(found: StoredStretch): number | null {
  const times = new Map<number, number>();
  for (const { stored, ms } of found) {
    if (stored !== null) times.set(stored, (times.get(stored) ?? 0) + ms);
  }
  return [...times].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}

/** How well what came agrees with a number, in bits: 0 where it showed nothing else; null where it did not show it. */
function agreement(
  shown: ShownNumber,
  near: StoredStretch,
  late: () => StoredStretch,
  factor: number,
  plus: number,
): number | null {
  const now = shareShowing(near, shown, factor, plus);
  if (now > 0) return Math.max(-5, Math.log2(now));
  const before = shareShowing(late(), shown, factor, plus);
  return before > 0 ? Math.max(-6, Math.log2(before)) - 2 : null;
}

/**
 * Share of the time in which the display would show the number: 0 unless it does so while the value stays near it. What
 * comes by it for a moment, as noise does, is not what a person reads.
 */
function shareShowing(found: StoredStretch, shown: ShownNumber, factor: number, plus: number): number {
  const nearness = Math.max(1.5 * shown.resolution, NEAR_SHARE * Math.abs(shown.value));
  let showing = 0;
  let all = 0;
  let runMs = 0;
  let isShownInRun = false;
  let hasRested = false;
  for (const { stored, ms } of found) {
    all += ms;
    const value = stored === null ? null : stored * factor + plus;
    if (value === null || Math.abs(value - shown.value) > nearness) {
      runMs = 0;
      isShownInRun = false;
      continue;
    }
    runMs += ms;
    const close = closeness(value, shown);
    showing += ms * close;
    isShownInRun ||= close > 0;
    hasRested ||= isShownInRun && runMs >= REST_MS;
  }
  return hasRested ? showing / all : 0;
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

/** What a candidate makes of every packet, and what that says for it or against it, in bits. */
function judge({ kind, layout }: Candidate, unit: ReadingUnit): { reads: string[]; bonus: number } {
  const packets = kind.packets.slice(-MOST_JUDGED_PACKETS);
  const read = new Map(
    distinct(packets, MOST_JUDGED_PACKETS).map((bytes) => [bytes.join(), storedIn(bytes, layout, unit)]),
  );
  const values = packets.map(({ bytes }) => read.get(bytes.join()) ?? null);
  const known = values.filter((value) => value !== null);
  const isPossible = (value: number) => value >= 0 && value <= MOST_VALUE[unit];
  // What is sent with the pins out is read in many ways, and means the same.
  const isOfWood = (value: number | null): value is number =>
    value !== null && value > 0 && isPossible(value);
  const likely = new Set(known.filter(isPossible));
  const odd = known.filter((value) => !isPossible(value));
  // One number that no wood has may be the meter's own sign for its pins in the air.
  const oddShare = new Set(odd).size > 1 ? odd.length / values.length : 0;
  const unread = 1 - known.length / values.length;
  return {
    reads: [...read.values()].map((value) => (isOfWood(value) ? value.toPrecision(9) : '')),
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
