/**
 * How long the settling detector takes, how far off what it saves is, and how often it saves what it should not, beside a
 * plain rule: the mean of the last second, once all of its values lie within 0.3 points. Insertions: `insertions.ts`. Run
 * it with
 *
 *     node tests/bench/settling.bench.ts [insertions, 10000] [seed, 101]
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

const MOST_WRONG_PER_1000 = 1;
const [count = 10_000, seed = 101] = process.argv.slice(2).map(Number);

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

interface Figures {
  wrong: number;
  none: number;
  times: number[];
  offs: number[];
  insertions: number;
}
function figuresOf(all: readonly Insertion[], rule: Rule): Figures {
  const figures: Figures = { wrong: 0, none: 0, times: [], offs: [], insertions: all.length };
  for (const insertion of all) {
    const saved = rule(insertion);
    const [first] = saved;
    if (isWrong(insertion, saved)) figures.wrong += 1;
    if (insertion.restsFromMs === null) continue;
    if (first === undefined) figures.none += 1;
    else {
      figures.times.push(first.atMs - insertion.restsFromMs);
      figures.offs.push(offPct(insertion, first) ?? 0);
    }
  }
  return figures;
}

const at = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))] ?? Number.NaN;
const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;

function row(name: string, all: readonly Insertion[], rule: Rule): string {
  const { wrong, none, times, offs, insertions } = figuresOf(all, rule);
  const cells = [
    name.padEnd(16),
    String(insertions).padStart(8),
    ((1000 * wrong) / insertions).toFixed(2).padStart(14),
    ((1000 * none) / insertions).toFixed(2).padStart(14),
    seconds(at(times, 0.5)).padStart(9),
    seconds(at(times, 0.95)).padStart(9),
    at(offs, 0.5).toFixed(2).padStart(9),
    at(offs, 0.99).toFixed(2).padStart(9),
  ];
  return cells.join('');
}

const HEAD =
  'insertions      of them   wrong per 1000  none per 1000   p50    p95 late   off p50  off p99, points';
const RATES = [
  [1, 2],
  [2, 5],
  [5, 15],
  [15, 51],
] as const;

const all = makeInsertions(count, seed);
for (const [name, rule] of [
  ['Pintally', byDetector],
  ['Mean of the last second', byMean],
] as const) {
  console.log(`${name}, ${count} insertions, seed ${seed}\n${HEAD}`);
  console.log(row('all', all, rule));
  for (const kind of KINDS)
    console.log(
      row(
        kind,
        all.filter((each) => each.kind === kind),
        rule,
      ),
    );
  for (const stepPct of STEPS)
    console.log(
      row(
        `steps of ${stepPct}%`,
        all.filter((each) => each.stepPct === stepPct),
        rule,
      ),
    );
  console.log(
    row(
      'ohms',
      all.filter(({ unit }) => unit === 'ohm'),
      rule,
    ),
  );
  for (const [from, to] of RATES)
    console.log(
      row(
        `${from} to ${to === 51 ? 50 : to} a second`,
        all.filter(({ hz }) => hz >= from && hz < to),
        rule,
      ),
    );
  console.log('');
}
const wrong = (1000 * figuresOf(all, byDetector).wrong) / count;
const plain = (1000 * figuresOf(all, byMean).wrong) / count;
console.log(
  `Goal: at most ${MOST_WRONG_PER_1000} wrong of 1000 insertions. Pintally ${wrong.toFixed(2)}, the plain rule ${plain.toFixed(2)}.`,
);
if (wrong > MOST_WRONG_PER_1000) process.exitCode = 1;
