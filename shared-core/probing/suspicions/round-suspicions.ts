import { mean } from '../../wood/maths/mean.ts';
import { median, robustSpread } from '../../wood/maths/robust.ts';
import { spotScatterPct } from '../../wood/moisture/spot-scatter.ts';
import { message } from '../../words/message.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import {
  type Depth,
  depthSchema,
  type JudgedReading,
  type ShellOrCore,
  type Suspicion,
} from '../readings/reading.ts';
import type { Expectation, Expected } from './expectation.ts';
import { BETWEEN_ROUNDS_PCT } from './expectation.ts';

/** One board of a round, in the order the boards were walked, with what judging it alone has found. */
export type WalkedBoard = {
  code: string;
  evidence: BoardEvidence;
  readings: readonly JudgedReading[];
  /** What its last round leads to expect at its last reading; null where nothing does. */
  expectation: Expectation | null;
};

export const DEPTHS = ['shell', 'core'] as const;

/** Fewer boards than this cannot speak for a round. */
export const FEWEST_BOARDS = 5;
/** Standard deviations that a sound board does not pass, at one depth or at both; as many as of a change since its last round. */
export const BOARD_SCORE = 3.2;
/** The same of a sound round, and of a sound walk: each questions all readings of a round at once. */
export const ROUND_SCORE = 3.4;
/** Both depths must be off by this much before the whole board is called off. */
const BOTH_SCORE = 1.5;
/** Fall of the sum of squared scores that makes a swap the better story. */
const SWAP_GAIN = 10;
/** Part of the uncertainty of a board's pace that it does not share with its stack (`wood/drying/history-fit.ts`: 0.25 of 0.6). */
export const OWN_PACE = 0.45;
/** Up to so many boards, all pairs are soon compared. */
const MOST_FOR_ALL_PAIRS = 200;
/** A drift smaller than this over a round is not worth a word, % MC. */
export const LEAST_DRIFT_PCT = 1.5;

/** A suspicion of all of a board's readings, or of those of one depth. */
export type RoundSuspicion = { depth: Depth | null; suspicion: Suspicion };

/** What a board reads over what it should, % MC, with its standard deviations: spots, and what the model does not know. */
type Offset = { pct: number; spotsPct: number; modelPct: number };

type Walked = {
  /** Its place in the list. */
  index: number;
  board: WalkedBoard;
  /** Shell and core, or the average alone, and what each should read, % MC. */
  offsets: Partial<Record<Depth, Offset>>;
  expectedPct: Partial<Record<Depth, number>>;
  /** Mean of its depths. */
  mean: Offset;
  /** 0 for the first board walked, 1 for the last; no number for a board alone, which says nothing. */
  walked: number;
};

/**
 * Suspicions that only show when a round's boards are compared with each other: a board that changed otherwise than its
 * stack, readings that drift along the walk, a round that is off as a whole.
 *
 * What each board should read is the drying model's expectation from its last round; boards that have none are left
 * out, and fewer than five say nothing.
 *
 * @returns suspicions by the board's index in the list
 */
export function roundSuspicions(boards: readonly WalkedBoard[]): Map<number, RoundSuspicion[]> {
  const found = new Map<number, RoundSuspicion[]>();
  const all = boards.flatMap((board, index) => walkedOf(board, index, boards.length));
  if (all.length < FEWEST_BOARDS) return found;
  const add = ({ index }: Walked, suspicion: Suspicion, depth: ShellOrCore | null = null) => {
    found.set(index, [...(found.get(index) ?? []), { depth, suspicion }]);
  };

  const drift = driftOf(all);
  for (const each of all)
    if (Math.abs(drift * each.walked) > LEAST_DRIFT_PCT / 2) add(each, meterDrift(drift));

  const steady = all.map((each) => withoutDrift(each, drift));
  const center = median(steady.map((each) => each.mean.pct));
  if (drift === 0 && Math.abs(center) > ROUND_SCORE * roundSpread(steady))
    for (const each of steady) add(each, roundOff(center));

  const levelOf = (depth: Depth): number => {
    const there = steady.flatMap(({ offsets }) => offsets[depth]?.pct ?? []);
    return there.length < FEWEST_BOARDS ? center : median(there);
  };
  const level = { shell: levelOf('shell'), average: levelOf('average'), core: levelOf('core') };
  // No exchange can gain more on a board than what is odd about it.
  // Stryker disable next-line MethodExpression,ConditionalExpression,EqualityOperator: only saves comparing all pairs
  const odd = steady.filter((each) => oddness(each, level) > SWAP_GAIN / 4);
  for (const each of steady) {
    const off = each.mean.pct - center;
    const depths = depthsOf(each).map(([depth, offset]) => {
      const by = offset.pct - level[depth];
      return { depth, by, score: score(by, offset) };
    });
    const partner = swappedWith(each, odd, level);
    const alike = depths.every((one) => one.by * depths[0]!.by > 0 && one.score > BOTH_SCORE);
    if (partner !== null || (alike && score(off, each.mean) > BOARD_SCORE)) {
      add(each, apartFromStack(off, partner));
      continue;
    }
    for (const one of depths)
      if (one.depth !== 'average' && one.score > BOARD_SCORE)
        add(each, depthApart(one.depth, one.by), one.depth);
  }
  return found;
}

const depthsOf = ({ offsets }: Walked): [Depth, Offset][] =>
  depthSchema.options.flatMap((depth) => {
    const offset = offsets[depth];
    return offset === undefined ? [] : [[depth, offset]];
  });

/** How far a sound board lies off its stack, one standard deviation, % MC. */
const ownSdPct = ({ spotsPct, modelPct }: Offset): number => Math.hypot(spotsPct, OWN_PACE * modelPct);

/** How many of a sound board's standard deviations it lies off its stack. */
const score = (offPct: number, offset: Offset): number => Math.abs(offPct) / ownSdPct(offset);

function walkedOf(board: WalkedBoard, index: number, count: number): Walked[] {
  const { expectation } = board;
  if (expectation === null) return [];
  const shell = offsetOf(board, 'shell', expectation.shell);
  const core = offsetOf(board, 'core', expectation.core);
  const average = offsetOf(board, 'average', expectation.average);
  const offsets = shell !== null && core !== null ? { shell, core } : average !== null ? { average } : null;
  if (offsets === null) return [];
  const all: Offset[] = Object.values(offsets);
  return [
    {
      index,
      board,
      offsets,
      expectedPct: {
        shell: expectation.shell?.pct,
        average: expectation.average.pct,
        core: expectation.core?.pct,
      },
      mean: {
        pct: mean(all.map(({ pct }) => pct)),
        spotsPct: Math.hypot(...all.map(({ spotsPct }) => spotsPct)) / all.length,
        modelPct: mean(all.map(({ modelPct }) => modelPct)),
      },
      walked: index / (count - 1),
    },
  ];
}

/** What a board reads at a depth, % MC: the readings that nothing speaks against, where there are any. */
export function firmValues({ readings }: WalkedBoard, depth: Depth): number[] {
  const counted = readings.filter((each) => each.counts && each.spot.depth === depth);
  const firm = counted.filter((each) => each.suspicions.every(({ severity }) => severity === 'note'));
  return (firm.length > 0 ? firm : counted).map((each) => each.corrected.mcPct as number);
}

function offsetOf(board: WalkedBoard, depth: Depth, expected: Expected | null): Offset | null {
  if (expected === null) return null;
  const values = firmValues(board, depth);
  if (values.length === 0) return null;
  const pct = median(values) - expected.pct;
  return {
    pct,
    spotsPct: spotScatterPct(expected.pct) * Math.sqrt(1 / values.length + 1 / 2),
    modelPct: pct < 0 ? expected.sdLowPct : expected.sdHighPct,
  };
}

function withoutDrift(each: Walked, drift: number): Walked {
  const less = (offset: Offset): Offset => ({ ...offset, pct: offset.pct - drift * each.walked });
  const offsets = Object.fromEntries(depthsOf(each).map(([depth, offset]) => [depth, less(offset)]));
  return { ...each, offsets, mean: less(each.mean) };
}

/** Standard deviation of a sound round's median residual: what all boards share, and a little of what each has. */
function roundSpread(all: readonly Walked[]): number {
  const shared = median(all.map(({ mean }) => mean.modelPct));
  const own = median(all.map(({ mean }) => mean.spotsPct));
  return Math.hypot(shared, BETWEEN_ROUNDS_PCT, (1.25 * own) / Math.sqrt(all.length));
}

/**
 * How far the residuals drift from the first board to the last, % MC, by the median of all slopes between two
 * boards (Theil 1950, Sen 1968, from memory); 0 where it is not more than chance brings about.
 *
 * In a long round each board of the first half is compared with its counterpart in the second only, as in Theil's
 * incomplete method (from memory): all pairs of 1,000 boards are half a million slopes.
 */
function driftOf(all: readonly Walked[]): number {
  const half = Math.ceil(all.length / 2);
  const slopes = all.flatMap((a, index) =>
    (all.length > MOST_FOR_ALL_PAIRS ? all.slice(index + half, index + half + 1) : all.slice(index + 1)).map(
      (b) => (b.mean.pct - a.mean.pct) / (b.walked - a.walked),
    ),
  );
  const slope = median(slopes);
  const left = all.map((each) => each.mean.pct - slope * each.walked);
  const own = median(all.map(({ mean }) => ownSdPct(mean)));
  const spread = Math.max(robustSpread(left), 0.8 * own);
  // Variance of a least-squares slope over places spread evenly from 0 to 1: 12 s² / n; the median's is about 1.1 of it.
  const error = spread * Math.sqrt((12 * 1.1) / all.length);
  return Math.abs(slope) > Math.max(LEAST_DRIFT_PCT, ROUND_SCORE * error) ? slope : 0;
}

/**
 * The board that this one was mixed up with, if exchanging the two explains what is odd about each: by so much that the
 * sum of both squared standard scores falls by more than `SWAP_GAIN`, and either's by a fair share of that.
 */
function swappedWith(each: Walked, odd: readonly Walked[], level: Record<Depth, number>): string | null {
  // Stryker disable next-line ConditionalExpression: only saves comparing all pairs
  if (!odd.includes(each)) return null;
  const gains = odd.flatMap((other) => {
    // By an exchange with itself a board gains nothing.
    if (!isReadAlike(other, each)) return [];
    const [own, others] = [gain(each, other, level), gain(other, each, level)];
    const both = Math.min(own, others) > SWAP_GAIN / 4 && own + others > SWAP_GAIN;
    return both ? [{ code: other.board.code, gain: own + others }] : [];
  });
  gains.sort((a, b) => b.gain - a.gain);
  return gains[0]?.code ?? null;
}

/** Whether both were read at the same depths. */
const isReadAlike = (one: Walked, other: Walked): boolean =>
  depthSchema.options.every(
    (depth) => (one.offsets[depth] === undefined) === (other.offsets[depth] === undefined),
  );

/** A board's squared standard scores, both depths together. */
function oddness(each: Walked, level: Record<Depth, number>): number {
  return depthsOf(each).reduce(
    (sum, [depth, offset]) => sum + score(offset.pct - level[depth], offset) ** 2,
    0,
  );
}

/** Fall of a board's squared standard scores, both depths together, if it was the other one that was read. */
function gain(each: Walked, other: Walked, level: Record<Depth, number>): number {
  const asOther = depthsOf(each).reduce((sum, [depth, offset]) => {
    const apart = (other.expectedPct[depth] ?? 0) - (each.expectedPct[depth] ?? 0);
    return sum + score(offset.pct - level[depth] - apart, offset) ** 2;
  }, 0);
  return oddness(each, level) - asOther;
}

const direction = (offPct: number): string => (offPct > 0 ? 'higher' : 'lower');

function apartFromStack(offPct: number, otherCode: string | null): Suspicion {
  return {
    rule: 'apart-from-stack',
    severity: 'questionable',
    why: message('suspicion.apart-from-stack', {
      offPoints: Math.abs(offPct),
      direction: direction(offPct),
    }),
    whatToDo:
      otherCode === null
        ? message('suspicion.apart-from-stack.do')
        : message('suspicion.apart-from-stack.swapped.do', { otherCode }),
  };
}

function depthApart(depth: ShellOrCore, offPct: number): Suspicion {
  return {
    rule: 'apart-from-stack',
    severity: 'questionable',
    why: message('suspicion.apart-from-stack.depth', {
      depth,
      offPoints: Math.abs(offPct),
      direction: direction(offPct),
    }),
    whatToDo: message(`suspicion.apart-from-stack.${offPct > 0 ? 'wet' : 'dry'}-${depth}.do`),
  };
}

function meterDrift(driftPct: number): Suspicion {
  return {
    rule: 'meter-drift',
    severity: 'questionable',
    why: message('suspicion.meter-drift', {
      driftPoints: Math.abs(driftPct),
      direction: direction(driftPct),
    }),
    whatToDo: message('suspicion.meter-drift.do'),
  };
}

function roundOff(offPct: number): Suspicion {
  return {
    rule: 'round-off',
    severity: 'questionable',
    why: message('suspicion.round-off', { offPoints: Math.abs(offPct), direction: direction(offPct) }),
    whatToDo: message('suspicion.round-off.do'),
  };
}
