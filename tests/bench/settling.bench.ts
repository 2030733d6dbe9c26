/**
 * How long the settling detector takes, how far off what it saves is, and how often it saves what it should not, beside a
 * plain rule: the mean of the last second, once all of its values lie within 0.3 points. Insertions: `insertions.ts`. Run
 * it with
 *
 *     node tests/bench/settling.bench.ts [insertions of each seed, 10000] [seeds, 101 …]
 *
 * Wrong is a value saved of an insertion that ended too early or never rested, or off by more than half a point or a step
 * of the display from what it rests at. Time is from when the value first is near what it rests at. Thresholds were set on
 * seeds 1 to 4.
 */
import { startSettling, step } from '../../shared-core/probing/readings/settle.ts';
import {
  type Insertion,
  isWrong,
  KINDS,
  makeInsertions,
  offPct,
  pctOf,
  type Saved,
  STEPS,
} from '../unit/probing/insertions.ts';
import { figure } from './figure.ts';

const MOST_WRONG_PER_1000 = 1;
/** Of the upper bound: so surely are there no more wrong ones. */
const SURE = 0.95;
const [count = 10_000, ...given] = process.argv.slice(2).map(Number);
const seeds = given.length > 0 ? given : [101];

type Rule = (insertion: Insertion) => Saved[];

const byDetector: Rule = ({ unit, samples }) => {
  let state = startSettling(unit);
  return samples.flatMap((sample) => {
    const result = step(state, sample);
    state = result.state;
    return result.settledNow && result.value !== null ? [{ atMs: sample.atMs, value: result.value }] : [];
  });
};

const MEAN_MS = 1000;
const MEAN_WIDTH_PCT = 0.3;
const byMean: Rule = ({ unit, samples }) => {
  let recent: { atMs: number; value: number }[] = [];
  const saved: Saved[] = [];
  let isSaved = false;
  let firstAt = Number.NaN;
  for (const { atMs, value } of samples) {
    if (value === null) {
      recent = [];
      isSaved = false;
      firstAt = Number.NaN;
      continue;
    }
    if (Number.isNaN(firstAt)) firstAt = atMs;
    recent = [...recent.filter((each) => atMs - each.atMs <= MEAN_MS), { atMs, value }];
    const pcts = recent.map((each) => pctOf(unit, each.value));
    const isFull = recent.length > 1 && atMs - firstAt >= MEAN_MS;
    if (isSaved || !isFull || Math.max(...pcts) - Math.min(...pcts) > MEAN_WIDTH_PCT) continue;
    isSaved = true;
    saved.push({ atMs, value: recent.reduce((sum, each) => sum + each.value, 0) / recent.length });
  }
  return saved;
};

/** One insertion and what a rule made of it. */
interface Trial {
  insertion: Insertion;
  isWrong: boolean;
  /** From when the value first is near its end; null where it never rests, or nothing was saved. */
  lateMs: number | null;
  off: number | null;
}
const tried = (insertion: Insertion, rule: Rule): Trial => {
  const saved = rule(insertion);
  const { restsFromMs } = insertion;
  return {
    insertion: { ...insertion, samples: [] },
    isWrong: isWrong(insertion, saved),
    lateMs: restsFromMs === null || saved.length === 0 ? null : saved[0]!.atMs - restsFromMs,
    off: offPct(insertion, saved[0]),
  };
};

const at = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))] ?? Number.NaN;
const seconds = (ms: number): string => (Number.isNaN(ms) ? '-' : `${(ms / 1000).toFixed(1)} s`);
const points = (pct: number): string => (Number.isNaN(pct) ? '-' : pct.toFixed(2));
const numbersOf = (trials: readonly Trial[], name: 'lateMs' | 'off'): number[] =>
  trials.flatMap((trial) => trial[name] ?? []);
const perThousand = (some: number, trials: readonly Trial[]): string =>
  ((1000 * some) / trials.length).toFixed(2);

function row(name: string, trials: readonly Trial[]): string {
  const wrong = trials.filter((each) => each.isWrong).length;
  const none = trials.filter(({ insertion, lateMs }) => insertion.restsFromMs !== null && lateMs === null);
  const late = numbersOf(trials, 'lateMs');
  const offs = numbersOf(trials, 'off');
  const cells = [
    name.padEnd(20),
    String(trials.length).padStart(7),
    perThousand(wrong, trials).padStart(15),
    perThousand(none.length, trials).padStart(15),
    seconds(at(late, 0.5)).padStart(9),
    seconds(at(late, 0.95)).padStart(9),
    points(at(offs, 0.5)).padStart(9),
    points(at(offs, 0.99)).padStart(9),
  ];
  return cells.join('');
}

const HEAD =
  'insertions          of them wrong per 1,000 none per 1,000 p50 late p95 late  off p50  off p99, points';
const RATES = [
  [1, 2],
  [2, 5],
  [5, 15],
  [15, 51],
] as const;

function table(name: string, trials: readonly Trial[]): void {
  const some = (of: string, isOne: (insertion: Insertion) => boolean) =>
    console.log(
      row(
        of,
        trials.filter(({ insertion }) => isOne(insertion)),
      ),
    );
  console.log(`${name}, ${count} insertions of each seed: ${seeds.join(', ')}\n${HEAD}`);
  some('all', () => true);
  for (const kind of KINDS) some(kind, (each) => each.kind === kind);
  for (const stepPct of STEPS) some(`steps of ${stepPct} %`, (each) => each.stepPct === stepPct);
  some('ohms', ({ unit }) => unit === 'ohm');
  for (const [from, to] of RATES)
    some(`${from} to ${to === 51 ? 50 : to} a second`, ({ hz }) => hz >= from && hz < to);
  console.log('');
}

/** The most that the mean of a Poisson count may be if so few were counted, as surely as `SURE`. */
function upperBound(counted: number): number {
  const atMost = (mean: number): number => {
    let term = Math.exp(-mean);
    let sum = term;
    for (let k = 1; k <= counted; k++) sum += term *= mean / k;
    return sum;
  };
  let [low, high] = [counted, 2 * counted + 10];
  while (high - low > 1e-4) {
    const mid = (low + high) / 2;
    if (atMost(mid) > 1 - SURE) low = mid;
    else high = mid;
  }
  return high;
}

const ours: Trial[] = [];
const plain: Trial[] = [];
for (const seed of seeds) {
  const from = ours.length;
  for (const insertion of makeInsertions(count, seed)) {
    ours.push(tried(insertion, byDetector));
    plain.push(tried(insertion, byMean));
  }
  if (seeds.length > 1) console.log(`seed ${seed}: ${row('', ours.slice(from)).trim()}`);
}
table('Pintally', ours);
table('Mean of the last second', plain);

const wrongOf = (trials: readonly Trial[]) => trials.filter((each) => each.isWrong).length;
const wrong = wrongOf(ours);
console.log(
  `Wrong of 1,000 insertions surely, at ${100 * SURE} %, at most ${perThousand(upperBound(wrong), ours)}; ` +
    `the plain rule ${perThousand(wrongOf(plain), plain)}.`,
);
figure({
  what: 'settled values saved wrong, of 1,000 insertions',
  value: (1000 * wrong) / ours.length,
  unit: '',
  goal: { most: MOST_WRONG_PER_1000 },
  bare: (1000 * wrongOf(plain)) / plain.length,
});
