/**
 * How often the call Ready is wrong, and how often a board that is fine is called so. Run:
 *
 *     npx node tests/bench/calls-by-harm.bench.ts [boards of each thickness, 250] [seed, 7001]
 *
 * Rules were tuned on seed 1; the figures that count are of the default seed.
 *
 * The truth dries by the app's own model at a pace drawn from its prior, in air that changes from day to day (one standard
 * deviation outdoors 1.5 % MC of EMC, in a room 0.6, with three quarters left the next day; ours, no source). One in four
 * was moved to a drier place some days before, which the app knows. Its average is drawn evenly round the top of its target. It is read at the
 * spots that the app plans for those pins, where they reach no core also with a fresh crosscut, with an error of the meter
 * of 0.85 % MC that all readings share, and the scatter of `spot-scatter.ts`. The EMC that the app knows of the place is
 * 0.7 % MC off.
 *
 * - honest: the pins' length is known, and so how deep they went;
 * - planned: nobody knows the pins, the app plans for the usual ones, and they go as deep as planned or as they reach;
 * - fully in: the same, but they were pushed in fully at every spot;
 * - old pairs: readings from before plans followed from the pins, shell and core as deep as the pins reach.
 *
 * Cut if asked: honest, the average first, and a fresh crosscut only where the call asks for the core. One round before,
 * two: honest, no core, and what the forecast made after so many earlier rounds tells of it (`calls-history.ts`).
 *
 * Wrong Ready: the true average is above target + tolerance, or shell and core differ by 1 point more than the use allows.
 * Near the limit: within 1.5 points below the target's top. Fine: in the target, and even enough for the use. As read in
 * the target: the share of them that no rule can pass which wants the average in the target, with this meter.
 */
import { judgeBoard } from '../../shared-core/probing/calls/call.ts';
import { THIN_MM } from '../../shared-core/probing/calls/decide.ts';
import { spotsByDepth } from '../../shared-core/probing/calls/spots-read.ts';
import type { BoardEvidence } from '../../shared-core/probing/readings/evidence.ts';
import { type PlanBasis, usualBasis } from '../../shared-core/probing/readings/plan-basis.ts';
import type { HistoryProfile } from '../../shared-core/probing/readings/profile-posterior.ts';
import type { JudgedReading, Reading } from '../../shared-core/probing/readings/reading.ts';
import { type PlannedSpot, planSpots } from '../../shared-core/probing/readings/spots.ts';
import { plainSpecies, SCALE } from '../unit/probing/a-board.ts';
import { historyOf } from './calls-history.ts';
import {
  basesOf,
  drawTruth,
  type Honesty,
  LENGTH_MM,
  METER_SD_PCT,
  type Pins,
  readingsOf,
  type Truth,
} from './calls-truth.ts';
import { figure } from './figure.ts';
import { type Random, randomFrom } from './rounds-with-faults.ts';

const boards = Number(process.argv[2] ?? 250);
const seed = Number(process.argv[3] ?? 7001);

interface Tally {
  boards: number;
  ready: number;
  tooWet: number;
  tooUneven: number;
  fine: number;
  fineReady: number;
  fineInTarget: number;
  /** Why fine boards near the limit were not called ready: the first reason, and the rules that questioned readings. */
  lost: Map<string, number>;
  /** Their estimated average less the true one, summed, and its square. */
  errorPct: number;
  errorSquare: number;
}
const emptyTally = (): Tally => ({
  boards: 0,
  ready: 0,
  tooWet: 0,
  tooUneven: 0,
  fine: 0,
  fineReady: 0,
  fineInTarget: 0,
  lost: new Map(),
  errorPct: 0,
  errorSquare: 0,
});

const questionsIn = (readings: readonly JudgedReading[]): string[] => [
  ...new Set(
    readings.flatMap(({ suspicions }) =>
      suspicions.filter(({ severity }) => severity !== 'note').map(({ rule }) => rule),
    ),
  ),
];

interface Known {
  emcPct: number;
  history?: HistoryProfile | null;
}

const called = (truth: Truth, plan: readonly PlannedSpot[], readings: Reading[], known: Known) => {
  const { endUse, place, thicknessMm } = truth;
  const evidence: BoardEvidence = {
    board: { thicknessMm, lengthMm: LENGTH_MM },
    plan: spotsByDepth(plan),
    species: plainSpecies,
    endUse,
    place: { ...place.facts, emcPct: known.emcPct, isNewHere: truth.isNewHere },
    readings,
    meters: {},
    typedBasis: { scale: SCALE, range: { min: 4, max: 80 }, meterSdPct: METER_SD_PCT },
    previous: null,
    profile: known.history ?? null,
  };
  return judgeBoard(evidence);
};

function count(tally: Tally, truth: Truth, judgement: ReturnType<typeof called>): void {
  const { endUse, averagePct, differencePct } = truth;
  const { call, reasons, readings: judged, estimate } = judgement;
  const allowed = endUse.maxShellCorePct ?? Number.POSITIVE_INFINITY;
  const isIn = (pct: number): boolean => pct <= endUse.maxPct && (endUse.minIsAdvice || pct >= endUse.minPct);
  const isFine = isIn(averagePct) && Math.abs(differencePct) <= allowed;
  const isNear = averagePct > endUse.maxPct - 1.5;
  tally.boards += 1;
  if (isFine && isNear && call !== 'ready') {
    const side = (estimate?.averagePct ?? 0) > endUse.maxPct ? 'read above the target' : 'read in the target';
    const why = [side, reasons[0].code, ...questionsIn(judged)].join(' + ');
    tally.lost.set(why, (tally.lost.get(why) ?? 0) + 1);
  }
  if (isFine && isNear) {
    const readPct = estimate?.averagePct ?? averagePct;
    tally.fine += 1;
    if (isIn(readPct)) tally.fineInTarget += 1;
    tally.errorPct += readPct - averagePct;
    tally.errorSquare += (readPct - averagePct) ** 2;
  }
  if (call !== 'ready') return;
  tally.ready += 1;
  if (averagePct > endUse.maxPct + endUse.tolerancePoints) tally.tooWet += 1;
  else if (Math.abs(differencePct) > allowed + 1) tally.tooUneven += 1;
  if (isFine && isNear) tally.fineReady += 1;
}

/** What the average alone is called, and where that asks for the core, what it is called with the cut. */
function calledByCutIfAsked(
  truth: Truth,
  [faces, all]: [faces: readonly PlannedSpot[], all: readonly PlannedSpot[]],
  readings: Reading[],
  known: Known,
): ReturnType<typeof called> {
  const first = called(truth, faces, readings.slice(0, faces.length), known);
  return first.reasons.some(({ code }) => code === 'call.core-not-reached')
    ? called(truth, all, readings, known)
    : first;
}

const THICKNESSES = [19, 25, 30, 34, 54, 80];
const LENGTHS = [5, 8, 15, 25, 40];
const HONESTIES: readonly Honesty[] = ['honest', 'planned', 'fully in', 'old pairs'];

type Spots =
  | PlanBasis['faces']
  | NonNullable<PlanBasis['core']>
  | 'cut if asked'
  | 'one round before'
  | 'two rounds before';
const SPOTS: readonly Spots[] = [
  'pairs',
  'average',
  'shell',
  'fresh-cut',
  'cut if asked',
  'one round before',
  'two rounds before',
];
interface Cell {
  thicknessMm: number;
  lengthMm: number;
  honesty: Honesty;
  /** What the faces tell by the plan, or what was added. */
  spots: Spots;
}
const tallies = new Map<string, { cell: Cell; tally: Tally }>();
function tallyOf(cell: Cell): Tally {
  const name = JSON.stringify(cell);
  const known = tallies.get(name) ?? { cell, tally: emptyTally() };
  tallies.set(name, known);
  return known.tally;
}

let judged = 0;
let judgingMs = 0;
/** One board with pins of one kind, read in each way that the app may plan for them. */
function read(truth: Truth, pins: Pins, emcPct: number, random: Random): void {
  const { thicknessMm } = truth;
  const { lengthMm } = pins;
  for (const honesty of HONESTIES)
    for (const planBasis of basesOf(thicknessMm, pins, honesty)) {
      const { plan } = planSpots({ lengthMm: LENGTH_MM, thicknessMm, planBasis });
      const readings = readingsOf(truth, pins, plan, honesty, random);
      const spots = planBasis.core ?? planBasis.faces;
      const began = performance.now();
      count(
        tallyOf({ thicknessMm, lengthMm, honesty, spots }),
        truth,
        called(truth, plan, readings, { emcPct }),
      );
      judgingMs += performance.now() - began;
      judged += 1;
      if (honesty !== 'honest' || planBasis.core === null || planBasis.faces !== 'average') continue;
      const faces = plan.filter(({ by }) => by === 'pins');
      const byCut = calledByCutIfAsked(truth, [faces, plan], readings, { emcPct });
      count(tallyOf({ thicknessMm, lengthMm, honesty, spots: 'cut if asked' }), truth, byCut);
    }
}

/** The same with pins that reach no core, where its history may tell it. */
function readAgain(truth: Truth, pins: Pins, emcPct: number, random: Random): void {
  const { thicknessMm } = truth;
  const planBasis = usualBasis(thicknessMm, pins);
  if (planBasis.faces !== 'shell') return;
  const { plan } = planSpots({ lengthMm: LENGTH_MM, thicknessMm, planBasis });
  for (const [rounds, spots] of [
    [1, 'one round before'],
    [2, 'two rounds before'],
  ] as const) {
    const meterPct = METER_SD_PCT * random.normal();
    const history = historyOf(truth, pins, plan, rounds, { emcPct, meterPct }, random);
    if (history === null) continue;
    const readings = readingsOf(truth, pins, plan, 'honest', random, meterPct);
    const cell: Cell = { thicknessMm, lengthMm: pins.lengthMm, honesty: 'honest', spots };
    count(tallyOf(cell), truth, called(truth, plan, readings, { emcPct, history }));
  }
}

THICKNESSES.forEach((thicknessMm, index) => {
  const random = randomFrom(seed + 100 * index);
  // Of its own, so that the other figures stay comparable with earlier ones.
  const ofHistory = randomFrom(seed + 100 * index + 50);
  for (let made = 0; made < boards; ) {
    const truth = drawTruth(random, thicknessMm);
    if (truth === null) continue;
    made += 1;
    const knownEmcPct = truth.place.emcPct + 0.7 * random.normal();
    for (const lengthMm of LENGTHS)
      for (const insulated of [true, false]) {
        read(truth, { lengthMm, insulated }, knownEmcPct, random);
        // No forecast is asked of boards on which the core goes unjudged.
        if (thicknessMm > THIN_MM) readAgain(truth, { lengthMm, insulated }, knownEmcPct, ofHistory);
      }
  }
});

const pct = (part: number, whole: number): string =>
  whole === 0 ? '   –  ' : `${((100 * part) / whole).toFixed(1).padStart(5)}%`;
function sum(is: (cell: Cell) => boolean): Tally {
  const total = emptyTally();
  for (const { cell, tally } of tallies.values()) {
    if (!is(cell)) continue;
    for (const key of [
      'boards',
      'ready',
      'tooWet',
      'tooUneven',
      'fine',
      'fineReady',
      'fineInTarget',
      'errorPct',
      'errorSquare',
    ] as const)
      total[key] += tally[key];
    for (const [why, times] of tally.lost) total.lost.set(why, (total.lost.get(why) ?? 0) + times);
  }
  return total;
}
const errorOf = (count: number, sumPct: number, sumOfSquares: number): string => {
  const mean = sumPct / count;
  return `${mean.toFixed(2)} ± ${Math.sqrt(sumOfSquares / count - mean ** 2).toFixed(2)}`;
};
const line = (
  name: string,
  { boards: all, ready, tooWet, tooUneven, fine, fineReady, fineInTarget, errorPct, errorSquare }: Tally,
): void =>
  console.log(
    [
      name.padEnd(40),
      String(all).padStart(6),
      String(ready).padStart(6),
      pct(tooWet, ready),
      pct(tooUneven, ready),
      `${pct(tooWet + tooUneven, ready)} ${fine > 0 ? ' ' : ''}`,
      pct(fineReady, fine),
      `of ${String(fine).padEnd(5)}`,
      pct(fineInTarget, fine),
      fine > 0 ? errorOf(fine, errorPct, errorSquare) : '',
    ].join(' '),
  );
const HEADS = `${''.padEnd(40)} boards  ready  too wet uneven  wrong   fine and near the limit: ready, as read in the target, and less the true average`;

/** What the issue asks of a group, beside what it has. */
const GOALS = { wrongPct: 1, readyPct: 70 };
function goal(name: string, { ready, tooWet, tooUneven, fine, fineReady, fineInTarget }: Tally): void {
  figure({
    what: `wrong Ready: ${name}`,
    value: (100 * (tooWet + tooUneven)) / ready,
    unit: '%',
    goal: { most: GOALS.wrongPct },
    missesBecause:
      'after one round the forecast takes the core for half a point too dry; 600 boards of seeds 1, 7001 and 2 have 0.9, 1.2 and 1.9; with 0.15 points more of the core it is 1.15 in place of 1.2, and only 67 % of fine boards are Ready after two rounds (`core-history.ts`)',
  });
  figure({
    what: `fine boards Ready: ${name}`,
    value: (100 * fineReady) / fine,
    unit: '%',
    goal: { least: GOALS.readyPct },
    missesBecause: 'what is not known of the depth, or of the core, could be the harm: such boards wait',
  });
  console.log(`  of those read in the target ${((100 * fineReady) / fineInTarget).toFixed(0)}%`);
}

/** Known depths, no history, and a board so thin that its average is enough, or whose core was reached. */
const JUDGEABLE: readonly Spots[] = ['pairs', 'average', 'fresh-cut'];
const isJudgeable = ({ honesty, spots }: Cell): boolean => honesty === 'honest' && JUDGEABLE.includes(spots);

console.log(`${boards} boards of each thickness, seed ${seed}\n`);
console.log(HEADS);
console.log('known depths');
for (const thicknessMm of THICKNESSES)
  for (const lengthMm of LENGTHS)
    for (const spots of SPOTS) {
      const tally = sum(
        (cell) =>
          cell.honesty === 'honest' &&
          cell.thicknessMm === thicknessMm &&
          cell.lengthMm === lengthMm &&
          cell.spots === spots,
      );
      if (tally.boards > 0) line(`${thicknessMm} mm, pins ${lengthMm} mm, ${spots}`, tally);
    }
console.log('\ndepths only planned');
for (const thicknessMm of THICKNESSES)
  for (const honesty of ['planned', 'fully in', 'old pairs'])
    line(
      `${thicknessMm} mm, ${honesty}`,
      sum((cell) => cell.thicknessMm === thicknessMm && cell.honesty === honesty),
    );
console.log('\nknown depths, core judged or thin');
for (const thicknessMm of THICKNESSES)
  line(
    `${thicknessMm} mm`,
    sum((cell) => cell.thicknessMm === thicknessMm && isJudgeable(cell)),
  );

console.log('\ngoals');
const judgeable = sum(isJudgeable);
goal('known depths, core judged or thin', judgeable);
for (const spots of SPOTS)
  if (spots !== 'shell')
    goal(
      `known depths, ${spots}`,
      sum((cell) => cell.honesty === 'honest' && cell.spots === spots),
    );
for (const honesty of ['planned', 'fully in', 'old pairs'])
  goal(
    `depths only planned, ${honesty}`,
    sum((cell) => cell.honesty === honesty),
  );

console.log(
  '\nwhy fine boards near the limit were not called ready (known depths, core judged or thin), of 100',
);
for (const [why, times] of [...judgeable.lost].sort(([, one], [, other]) => other - one).slice(0, 16))
  console.log(`${pct(times, judgeable.fine)} ${why}`);
console.log(`\njudging a board: ${((1000 * judgingMs) / judged).toFixed(0)} µs`);
