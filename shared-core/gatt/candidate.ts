import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import type { Layout } from './layout.ts';
import type { PacketKind } from './packet-kinds.ts';
import { bytesOfLayout } from './possible-layouts.ts';
import { differentNumbers, type ShownNumber } from './shown-number.ts';

/** The likeliest is clear where the next is so far behind, bits. Our judgment. */
const CLEAR_LEAD = 3;
/** Up to here a reading is as likely as another, %. */
const USUAL_MOST_PCT = 50;
/** Chance is ruled out where it is so much less likely to show the numbers, bits. Our judgment. */
const BEYOND_CHANCE = 4;

export interface Candidate {
  kind: PacketKind;
  layout: Layout;
  follows: boolean[];
  followed: number;
  /** How unlikely such a layout is beforehand, bits. */
  cost: number;
  score: number;
  /** Numbers that it needed for a scale, so that they prove nothing. */
  fitted: number;
}

/** What a candidate reads in each packet that differs, as text; empty where wood is not read so. */
export interface Judged {
  candidate: Candidate;
  reads: string[];
}

/** How many ways to read the bytes were tried, by the kind of layout. */
export type Tried = Record<Layout['kind'], number>;

export const likelierFirst = (a: Candidate, b: Candidate): number =>
  b.followed - a.followed || b.score - a.score;

export const isEnough = ({ followed, fitted }: Candidate, shown: readonly ShownNumber[]): boolean =>
  followed === shown.length && differentNumbers(shown) >= 2 + fitted;

/** Whether `part` uses bytes of `whole` alone, and reads the same numbers of wood. */
export function isPartOf(part: Judged, whole: Judged): boolean {
  if (part.candidate.kind !== whole.candidate.kind) return false;
  const length = Math.max(...part.candidate.kind.packets.map(({ bytes }) => bytes.length));
  const [own, around] = [part, whole].map(({ candidate }) => bytesOfLayout(candidate.layout, length));
  if (own!.from < around!.from || own!.to > around!.to) return false;
  return whole.reads.every((number, at) => number === '' || number === part.reads[at]);
}

/** Whether both read the same number in every packet, to the last digit of the display. */
export function showsTheSame(a: Judged, b: Judged, shown: readonly ShownNumber[]): boolean {
  if (a.candidate.kind !== b.candidate.kind) return false;
  const resolution = Math.min(...shown.map((each) => each.resolution));
  return a.reads.every((read, at) => Math.abs(Number(read) - Number(b.reads[at])) <= resolution);
}

export const isClear = (best: Candidate, next: Candidate | undefined): boolean =>
  next === undefined || next.followed < best.followed || best.score - next.score >= CLEAR_LEAD;

/** Whether it is unlikely that any of so many ways to read the bytes shows all these numbers by chance. */
export function isBeyondChance(
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
