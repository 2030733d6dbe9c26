import type { ReadingUnit } from '../wood/moisture/corrected.ts';
import { agreement } from './agreement.ts';
import {
  type Candidate,
  isBeyondChance,
  isClear,
  isEnough,
  isPartOf,
  type Judged,
  likelierFirst,
  showsTheSame,
  type Tried,
} from './candidate.ts';
import { hasMoved, judgeLayout, movementBonus } from './judge-layout.ts';
import type { Condition, Layout } from './layout.ts';
import { movementOf } from './movement.ts';
import { kindsOf, type PacketKind, type WatchedSource } from './packet-kinds.ts';
import { bytesOfLayout, possibleLayouts } from './possible-layouts.ts';
import { scaledLayouts } from './scaled-layouts.ts';
import { LATE_MS, type ShownNumber } from './shown-number.ts';
import type { Source } from './source.ts';
import { readStretch, type Stretch, stretchOf } from './stretch.ts';

/**
 * How a meter's bytes may hold the number on its display, from packets that were watched and numbers that a person
 * typed off the display. Scores are in bits: one more is twice as likely. What is likely beforehand is common practice,
 * no source.
 */

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
const MOST_SCORED = 60;
const MOST_PROPOSALS = 3;
/** Those so far behind the first are chance. */
const MOST_BEHIND = 10;
const MATCH_COST = 1.2;

interface Look {
  near: Stretch;
  late: Stretch;
}

/** @returns those that moved, the likeliest first; those that show the same numbers are one */
export function propose(
  places: readonly WatchedSource[],
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
  places: readonly WatchedSource[],
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
  const judged: Judged[] = [];
  for (const candidate of likely) {
    yield;
    const { reads, bonus } = judgeLayout(candidate.layout, candidate.kind.packets, unit);
    judged.push({ candidate: { ...candidate, score: candidate.score + bonus }, reads });
  }
  const meanings = new Map<string, Judged>();
  for (const each of judged.toSorted((a, b) => likelierFirst(a.candidate, b.candidate))) {
    const meaning = `${JSON.stringify(each.candidate.kind.source)} ${each.reads.join()}`;
    if (!meanings.has(meaning)) meanings.set(meaning, each);
  }
  const different = [...meanings.values()];
  const whole = different.filter(
    (each, at) => !different.slice(0, at).some((around) => isPartOf(each, around)),
  );
  const ranked = whole.map(({ candidate }) => candidate);
  const best = whole
    .filter(({ candidate: { followed, score } }) => {
      return followed === ranked[0]!.followed && score >= ranked[0]!.score - MOST_BEHIND;
    })
    // No display could tell them apart so far.
    .filter((each, at, all) => !all.slice(0, at).some((likelier) => showsTheSame(each, likelier, shown)))
    .map(({ candidate }) => candidate);
  return best.slice(0, MOST_PROPOSALS).map((candidate) => ({
    source: candidate.kind.source,
    match: candidate.kind.match,
    value: candidate.layout,
    unit,
    follows: candidate.follows,
    isEnough: isEnough(candidate, shown),
    // No other than the first leads the second.
    isSure:
      isEnough(candidate, shown) &&
      isClear(candidate, ranked[1]) &&
      isBeyondChance(candidate, shown, unit, tried),
  }));
}

function* candidatesIn(
  kind: PacketKind,
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
    const scaled = scaledLayouts(possible, near, shown, unit);
    tried[possible.layout.kind] += scaled.length;
    for (const { layout, cost, factor, plus, fitted } of scaled) {
      const agreements = shown.map((each, at) => agreement(each, near[at]!, late[at]!, factor, plus));
      const followed = agreements.filter((each) => each !== null).length;
      if (followed < Math.max(1, shown.length - 1)) continue;
      isMoving ??= hasMoved(possible.layout, kind.packets, unit);
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

function lookAt({ packets }: PacketKind, shown: ShownNumber): Look {
  return {
    near: stretchOf(packets, shown.fromMs - BEFORE_TYPING_MS, shown.toMs),
    late: stretchOf(packets, shown.fromMs - LATE_MS, shown.toMs),
  };
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
