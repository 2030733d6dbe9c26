import type { Sample } from '../../../shared-core/probing/readings/settle.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { log10OhmsAt, mcAtLog10Ohms } from '../../../shared-core/wood/moisture/resistance.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { type Random, randomFrom } from '../../faults/random.ts';

/*
 * Insertions of pins, made up: what a meter would send of them. They stand for no particular meter. The shapes and their
 * ranges are our judgment; no measured traces are published that we know of.
 */

export const KINDS = [
  /** The value runs to its end within a second or two. */
  'ordinary',
  /** A part of it creeps on for many seconds, as with damp electrodes. */
  'slow',
  /** The pins go in by several pushes, and rest half in between them. */
  'half in',
  /** They come out before the value rests. */
  'pulled early',
  /** It moves on for as long as they are in, or jumps about as with a loose pin. */
  'never rests',
  /** The contacts bounce at first, and single values are wild. */
  'bounces',
] as const;
export type Kind = (typeof KINDS)[number];

/** What the display shows in steps of, points; of ohms three digits. */
export const STEPS = [0.1, 0.5, 1] as const;

export interface Insertion {
  kind: Kind;
  unit: ReadingUnit;
  /** Points; 0 of ohms. */
  stepPct: number;
  hz: number;
  samples: Sample[];
  /** What it rests at, as the display shows it, % MC; null where it never does, or they come out before. */
  restsAtPct: number | null;
  /** When the pins went in, and when the value is first as near to its end as a display step or 0.2 points, ms. */
  inAtMs: number;
  restsFromMs: number | null;
}

const curve = resistanceCurves.get('douglas-fir-coast')!;
/** What a value in the meter's unit is in % MC. */
export const pctOf = (unit: ReadingUnit, value: number): number =>
  unit === 'pct' ? value : mcAtLog10Ohms(curve, Math.log10(value)).mcPct;
const sent = (unit: ReadingUnit, stepPct: number, pct: number): number => {
  if (unit === 'pct') return Number((Math.round(pct / stepPct) * stepPct).toFixed(6));
  return Number((10 ** log10OhmsAt(curve, pct).log10Ohms).toPrecision(3));
};

/** Room around the end within which a value has come to rest, points. */
const NEAR_PCT = 0.2;
const OUT_MS = 600;
/** The low end of the scale. */
const LEAST_PCT = 3;
/** A value this much further off per second, at least, never rests, points. */
const RUNS_ON_PCT = 0.5;

export function makeInsertion(kind: Kind, random: Random): Insertion {
  const between = (from: number, to: number): number => from + (to - from) * random();
  const logBetween = (from: number, to: number): number => from * (to / from) ** random();
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const pick = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)]!;

  const unit: ReadingUnit = random() < 0.2 ? 'ohm' : 'pct';
  const stepPct = unit === 'ohm' ? 0 : pick(STEPS);
  const hz = logBetween(1, 50);
  const end = between(7, 26);
  const noise = logBetween(0.01, 0.1) * Math.max(1, end / 15);
  const tauMs = logBetween(80, 900);
  const start = -between(0.5, Math.min(8, end - 4));
  const holdMs = between(14_000, 25_000);
  const inAtMs = OUT_MS + between(0, 1000 / hz);

  /** How far from its end the value is, points, so long after the pins went in. */
  let awayAt = (ms: number): number => start * Math.exp(-ms / tauMs);
  let outMs = holdMs;
  let rests = true;
  let isBouncing = (_: number): boolean => false;
  let wild = (_: number): number => 0;

  if (kind === 'slow') {
    const creep = pick([-1, 1]) * between(0.3, 1.2);
    const slowMs = between(1500, 4000);
    awayAt = (ms) => start * Math.exp(-ms / tauMs) + creep * Math.exp(-ms / slowMs);
  } else if (kind === 'half in') {
    // Each push runs to its own value; the last one to the end.
    const pushes = Math.floor(between(2, 5));
    let at = 0;
    const parts = Array.from({ length: pushes }, (_, index) => {
      const from = at;
      at += between(250, 1000);
      const left = start * (1 - (index + 1) / pushes);
      return { from, left };
    });
    awayAt = (ms) => {
      const now = parts.findLast(({ from }) => ms >= from)!;
      const before = parts[parts.indexOf(now) - 1]?.left ?? start;
      return now.left + (before - now.left) * Math.exp(-(ms - now.from) / tauMs);
    };
  } else if (kind === 'pulled early') {
    outMs = between(150, 1400);
  } else if (kind === 'never rests') {
    rests = false;
    outMs = between(3000, 9000);
    if (random() < 0.5) {
      const perSecond = pick([-1, 1]) * between(RUNS_ON_PCT, 2) * Math.max(1, end / 15);
      awayAt = (ms) => start * Math.exp(-ms / tauMs) + (perSecond * ms) / 1000;
    } else {
      const width = between(1.5, 4);
      const everyMs = between(120, 450);
      let level = 0;
      let nextAt = 0;
      awayAt = (ms) => {
        for (; nextAt <= ms; nextAt += everyMs * between(0.4, 1.6)) level = width * normal();
        return start * Math.exp(-ms / tauMs) + level;
      };
    }
  } else if (kind === 'bounces') {
    const gaps = Array.from({ length: 3 }, () => {
      const from = between(30, 900);
      return { from, to: from + between(15, 180) };
    });
    isBouncing = (ms) => gaps.some(({ from, to }) => ms >= from && ms < to);
    wild = () => (random() < 0.02 ? pick([-1, 1]) * between(2, 6) : 0);
  }

  const samples: Sample[] = [];
  let restsFromMs: number | null = null;
  const near = Math.max(NEAR_PCT, stepPct / 2);
  for (let t = 0; t < inAtMs + outMs + OUT_MS; t += (1000 / hz) * between(0.9, 1.1)) {
    const ms = t - inAtMs;
    const isIn = ms >= 0 && ms < outMs && !isBouncing(ms);
    const away = isIn ? awayAt(ms) : 0;
    const pct = end + away + noise * normal() + wild(ms);
    // Below its scale a meter shows no number.
    samples.push({ atMs: t, value: isIn && pct >= LEAST_PCT ? sent(unit, stepPct, pct) : null });
  }
  if (rests) {
    // From the end on backwards: the last moment at which it was still away.
    let at = outMs;
    while (at > 0 && Math.abs(awayAt(Math.max(0, at - 20))) <= near) at -= 20;
    if (at < outMs) restsFromMs = inAtMs + Math.max(0, at);
  }
  return {
    kind,
    unit,
    stepPct,
    hz,
    samples,
    restsAtPct: restsFromMs === null ? null : pctOf(unit, sent(unit, stepPct, end)),
    inAtMs,
    restsFromMs,
  };
}

/** Of a hundred insertions. */
const SHARES: Readonly<Record<Kind, number>> = {
  ordinary: 60,
  slow: 8,
  'half in': 12,
  'pulled early': 8,
  'never rests': 4,
  bounces: 8,
};

/** Insertions of all kinds, as often as our judgment has each in a yard. */
export function makeInsertions(count: number, seed: number): Insertion[] {
  const random = randomFrom(seed);
  return Array.from({ length: count }, () => {
    const at = random() * 100;
    const kind = KINDS.find((_, index) => {
      const upTo = KINDS.slice(0, index + 1).reduce((sum, each) => sum + SHARES[each], 0);
      return at < upTo;
    });
    return makeInsertion(kind ?? 'ordinary', random);
  });
}

/** What was saved of an insertion, and when. */
export interface Saved {
  atMs: number;
  value: number;
}

/** Off by more than this is wrong, points: half a point, or a step of the display. */
export const allowedPct = ({ stepPct }: Insertion): number => Math.max(0.5, stepPct);

/** How far off the first value that was saved is, points; null where none was, or it should not have been. */
export function offPct({ unit, restsAtPct }: Insertion, saved: Saved | undefined): number | null {
  return saved === undefined || restsAtPct === null ? null : Math.abs(pctOf(unit, saved.value) - restsAtPct);
}

/** Whether any value that was saved of it is wrong: it ended too early or never rested, or the value is off. */
export const isWrong = (insertion: Insertion, all: readonly Saved[]): boolean =>
  all.some(
    (saved) =>
      insertion.restsAtPct === null || (offPct(insertion, saved) ?? 0) > allowedPct(insertion) + 1e-9,
  );
