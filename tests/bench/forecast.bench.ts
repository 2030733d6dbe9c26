/**
 * Whether forecasts come true as often as they claim, on boards whose truth is known because we drew it. Run it with
 *
 *     npx node tests/bench/forecast.bench.ts [boards, 240] [seed, 1] [only this part: laws, ours, stack] [only this law]
 *
 * Calibration by simulation (S. Talts and others, Validating Bayesian Inference Algorithms with Simulation-Based
 * Calibration, 2018; from memory): where the truth is drawn from the prior and read with the noise that the fit
 * assumes, it must fall below the forecast's 10 % point in 10 of 100 boards, below its median in 50, below its 90 %
 * point in 90, whatever the rounds. It tests the inference, not how wood dries: no drying record is in it.
 *
 * A true board has its factors, start and place drawn from `dryingPrior`, dries on a grid three times as fine, in weather
 * that varies about its place's monthly means: a month's EMC 0.7 % and 1.5 °C off, its days another 1.2 %. It is read at
 * shell and core, twice each, with an error of meter and species that stays with the board (one third of its variance with
 * the meter), and a scatter of the spots as `spot-scatter.ts` has it. All one standard deviation; ours, no source.
 *
 * The forecast is asked at the same day with 0, 1, 2 and 4 rounds behind it. `laws`: the truth dries by another law than ours.
 * Goal: the 80 % band of the day of reaching the target covers 75 to 90 of 100 boards, for each law and number of rounds.
 */

import { plannedDepthMm } from '../../shared-core/probing/readings/spots.ts';
import { DAY_MS, DAY_S } from '../../shared-core/time.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import { airSegments, type Stay } from '../../shared-core/wood/drying/board-history.ts';
import { transverseDiffusivityM2S } from '../../shared-core/wood/drying/diffusivity.ts';
import { type Forecast, type ForecastInput, forecastBoard } from '../../shared-core/wood/drying/forecast.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  type FitReading,
  fitHistory,
} from '../../shared-core/wood/drying/history-fit.ts';
import { dryingGrid } from '../../shared-core/wood/drying/model/drying-grid.ts';
import {
  ANCHOR_MC_PCT,
  type DryingLaw,
  woodDryingLaw,
} from '../../shared-core/wood/drying/model/drying-law.ts';
import { simulateDrying } from '../../shared-core/wood/drying/model/drying-model.ts';
import type { AirSegment } from '../../shared-core/wood/drying/model/drying-run.ts';
import { LawTables } from '../../shared-core/wood/drying/model/law-tables.ts';
import { parabolicStart } from '../../shared-core/wood/drying/model/parabolic-start.ts';
import type { Quantiles } from '../../shared-core/wood/drying/run-quantiles.ts';
import { type Information, normalCdf, Z_90 } from '../../shared-core/wood/maths/gaussian.ts';
import { spotScatterPct } from '../../shared-core/wood/moisture/spot-scatter.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { type DryingClass, dryingClassOf } from '../../shared-core/wood/species/drying-class.ts';
import { worked } from '../unit/worked.ts';
import { geometricMean } from './drying-days.ts';
import { figure } from './figure.ts';
import { type Random, randomFrom } from './rounds-with-faults.ts';
import { hourlyStations, hoursOf, stationYear } from './typical-years.ts';

const boards = Number(process.argv[2] ?? 240);
const seed = Number(process.argv[3] ?? 1);
const only = process.argv[4] ?? null;
const onlyLaw = process.argv[5] ?? null;

const HORIZON_DAYS = 500;
const ROUNDS = [0, 1, 2, 4] as const;

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random.uniform() * list.length)]!;

const monthly = (tempC: readonly number[], rh: (month: number) => number): MonthlyAir =>
  tempC.map((t, month) => ({ tempC: t, rh: rh(month) }));
const SHEDS = [
  monthly([-8, -5, 1, 8, 14, 20, 22, 21, 16, 10, 2, -5], (m) => 0.7 + 0.004 * Math.abs(6 - m)),
  monthly([3, 4, 7, 10, 14, 17, 19, 19, 16, 12, 7, 4], (m) => 0.72 + 0.02 * Math.abs(6 - m)),
  monthly([8, 10, 13, 17, 22, 26, 28, 28, 25, 19, 13, 9], () => 0.7),
];
const ROOM = monthly(Array<number>(12).fill(20), (m) => 0.36 + 0.02 * Math.abs(6 - Math.abs(6 - m)));
const OUTDOOR_USE = { minPct: 6, maxPct: 18, maxShellCorePct: 4 };
const INDOOR_USE = { minPct: 4, maxPct: 10, maxShellCorePct: 3 };
const species = builtInSpecies.filter(({ basicSpecificGravity }) => basicSpecificGravity !== null);

/** How a true board dries, and in what. */
type Truth = {
  lawOf: (gravity: number, exponent: number, dryingClass: DryingClass | null) => DryingLaw;
  /** Half the width of the loop between drying and wetting, % MC of EMC. */
  hysteresisPct?: number;
  /** Dries in the hours of a station instead of weather that we draw. */
  isHourly?: boolean;
};

const withExponent =
  (exponent: number): Truth['lawOf'] =>
  (gravity) =>
    woodDryingLaw(gravity, exponent);

/**
 * The same for all wood, over temperature by Arrhenius's law with 40 kJ/mol; ours, no source. Each class dries in other days
 * then than were published of it: species are moved by 0.5 of the logarithm (one standard deviation), heavy wood
 * faster and light wood slower, which is why this row misses the goal before any reading.
 */
const arrhenius: Truth['lawOf'] = (gravity) => ({
  ...woodDryingLaw(gravity),
  diffusivityM2S: (_mc, tempC) =>
    transverseDiffusivityM2S(ANCHOR_MC_PCT, 15, 0.5) *
    Math.exp((-40_000 / 8.314) * (1 / (tempC + 273.15) - 1 / 288.15)),
});

/** The same, but each class as fast as with our law, on average over its species. So it would be fitted to the published days. */
const arrheniusByClass: Truth['lawOf'] = (gravity, exponent, dryingClass) => {
  const law = arrhenius(gravity, exponent, dryingClass);
  const pace = paceOfClass.get(dryingClass)!;
  return { ...law, diffusivityM2S: (mcPct, tempC) => pace * law.diffusivityM2S(mcPct, tempC) };
};
/** Of the densities of a class's species, over one density for all. */
const paceOfClass = new Map(
  [...new Set(species.map(dryingClassOf))].map((dryingClass) => [
    dryingClass,
    geometricMean(
      species
        .filter((each) => dryingClassOf(each) === dryingClass)
        .map(
          ({ basicSpecificGravity }) =>
            transverseDiffusivityM2S(ANCHOR_MC_PCT, 15, basicSpecificGravity!) /
            transverseDiffusivityM2S(ANCHOR_MC_PCT, 15, 0.5),
        ),
    ),
  ]),
);

const ours: Truth = { lawOf: woodDryingLaw };
const TRUTHS: Record<string, Truth> = {
  'our law': ours,
  'exponent 0.3': { lawOf: withExponent(0.3) },
  'exponent 0.6': { lawOf: withExponent(0.6) },
  'exponent 1': { lawOf: withExponent(1) },
  constant: { lawOf: withExponent(0) },
  Arrhenius: { lawOf: arrhenius },
  'same by class': { lawOf: arrheniusByClass },
  hysteresis: { ...ours, hysteresisPct: 1 },
  'hourly weather': { ...ours, isHourly: true },
};

const yearsOfHours = hourlyStations.map(({ wmo, file }) => {
  const { air, station } = stationYear(wmo);
  return { air, days: station.days, hours: hoursOf(file) };
});

/** Stretches of six hours of the stations' typical years; indoors as `weather` has it. */
function hourlyWeather(random: Random, stays: readonly Stay[], fromMs: number, days: number): AirSegment[] {
  const drawn = weather(random, stays, fromMs, days);
  return drawn.flatMap((plain, at) => {
    const startMs = fromMs + 3 * at * DAY_MS;
    const here = stays.findLast((stay) => stay.fromMs <= startMs)!;
    const year = yearsOfHours.find(({ air }) => air === here.air);
    if (year === undefined) return plain;
    const begin = Math.floor((startMs - Date.UTC(new Date(startMs).getUTCFullYear(), 0, 1)) / 3_600_000);
    return Array.from({ length: 12 }, (_, quarter): AirSegment => {
      const six = Array.from({ length: 6 }, (_h, hour) => year.hours[(begin + 6 * quarter + hour) % 8760]!);
      const meanOf = (of: (each: (typeof six)[number]) => number): number =>
        six.reduce((sum, each) => sum + of(each), 0) / 6;
      const emc = meanOf(({ emcPct }) => emcPct);
      return {
        durationS: (6 * DAY_S) / 24,
        emcStartPct: emc,
        emcEndPct: emc,
        tempC: Math.round(meanOf(({ tempC }) => tempC)),
      };
    });
  });
}

/** Wood that dries stays damper than wood that gets damp in the same air: the play of a loop of that width. */
function withHysteresis(segments: readonly AirSegment[], halfPct: number): AirSegment[] {
  let heldPct = Number.POSITIVE_INFINITY;
  return segments.map((segment) => {
    const { emcStartPct } = segment;
    heldPct = Math.min(emcStartPct + halfPct, Math.max(emcStartPct - halfPct, heldPct));
    return { ...segment, emcStartPct: heldPct, emcEndPct: heldPct };
  });
}

/** Three days' stretches; the board's place's own offset is in every one of them. */
function weather(random: Random, stays: readonly Stay[], fromMs: number, days: number): AirSegment[] {
  const segments: AirSegment[] = [];
  let month = random.normal();
  let warm = random.normal();
  let day = random.normal();
  for (let at = 0; at < days; at += 3) {
    const startMs = fromMs + at * DAY_MS;
    const here = stays.findLast((stay) => stay.fromMs <= startMs)!;
    // Indoors the weather comes through damped.
    const share = here.air === ROOM ? 0.4 : 1;
    const plain = airSegments([{ ...here, fromMs }], startMs, startMs + 3 * DAY_MS)[0]!;
    const off = share * (0.7 * month + 1.2 * day);
    segments.push({
      durationS: (3 * DAY_MS) / 1000,
      emcStartPct: Math.max(2, plain.emcStartPct + off),
      emcEndPct: Math.max(2, plain.emcStartPct + off),
      tempC: Math.min(45, Math.round(plain.tempC + 1.5 * share * warm)),
    });
    const stay = (value: number, saved: number): number =>
      saved * value + Math.sqrt(1 - saved * saved) * random.normal();
    // A month's anomaly fades over about a month, a day's over about three.
    month = stay(month, 0.905);
    warm = stay(warm, 0.905);
    day = stay(day, 0.37);
  }
  return segments;
}

/** As `correction.ts` has it for a species with a curve, at the temperature of the meter's basis. */
const meterSdPct = (mc: number): number =>
  0.5 + 0.1 * Math.max(0, mc - 20) + 0.4 * Math.max(0, mc - 30) + 0.5 * Math.max(0, 6 - mc);

type Case = {
  board: DryingBoard;
  theta: number[];
  nowMs: number;
  endUse: { minPct: number; maxPct: number; maxShellCorePct: number };
  /** Readings of as many rounds, the last today. */
  readings: (rounds: number) => FitReading[];
  averagePct: (day: number) => number;
  /** First day from today on which it is fit; infinite beyond the horizon. */
  readyDay: number;
};

type Stack = { board: DryingBoard; endUse: Case['endUse']; nowDays: number };

/** Of the weather that we draw. */
const DRAWN_DAYS = { sdPct: 1.4, lag: 0.7 };

function drawStack(random: Random, { isHourly = false }: Truth): Stack {
  const { air: shed, days } = isHourly
    ? pick(random, yearsOfHours)
    : { air: pick(random, SHEDS), days: DRAWN_DAYS };
  const sawnMs = Date.UTC(2024, Math.floor(random.uniform() * 12), 1 + Math.floor(random.uniform() * 28));
  const nowDays = 20 + Math.floor(random.uniform() * 120);
  const drawn = pick(random, species);
  const indoors = random.uniform() < 0.4;
  // On a day on which a stretch of weather begins.
  const moved = sawnMs + 3 * Math.floor((nowDays * (0.3 + 0.6 * random.uniform())) / 3) * DAY_MS;
  return {
    board: {
      thicknessMm: pick(random, [20, 27, 34, 52]),
      basicSpecificGravity: drawn.basicSpecificGravity,
      dryingClass: dryingClassOf(drawn),
      start: { atMs: sawnMs, mcPct: null, logSd: 0.3, shellRatio: 1 },
      stays: [{ fromMs: sawnMs, air: shed, days }, ...(indoors ? [{ fromMs: moved, air: ROOM }] : [])],
    },
    endUse: indoors ? INDOOR_USE : OUTDOOR_USE,
    nowDays,
  };
}

function airOf(
  random: Random,
  { board, nowDays }: Stack,
  { hysteresisPct = 0, isHourly = false }: Truth,
): AirSegment[] {
  const days = nowDays + HORIZON_DAYS + 3;
  const segments = (isHourly ? hourlyWeather : weather)(random, board.stays, board.start.atMs, days);
  return withHysteresis(segments, hysteresisPct);
}

function drawBoard(
  random: Random,
  { board, endUse, nowDays }: Stack,
  theta: number[],
  air: AirSegment[],
  meter: number,
  lawOf: Truth['lawOf'],
): Case {
  const grid = dryingGrid(board.thicknessMm, true, 36);
  const [logD, logS, logM, emcOffsetPct, exponent] = theta as [number, number, number, number, number];
  const shell = plannedDepthMm('shell', board.thicknessMm) / board.thicknessMm;
  const judged = Math.min(3 / board.thicknessMm, 1 / 6);
  const solved = simulateDrying({
    grid,
    tables: new LawTables(lawOf(board.basicSpecificGravity!, exponent, board.dryingClass ?? null)),
    startPct: parabolicStart(grid, Math.exp(logM), 1),
    segments: air,
    diffusivityFactor: Math.exp(logD),
    faceFactors: [Math.exp(logS), Math.exp(logS)],
    emcOffsetPct,
    tolerancePct: 0.02,
    observeS: Array.from({ length: nowDays + HORIZON_DAYS + 1 }, (_, day) => day * DAY_S),
    depthFractions: [judged, shell, 0.5],
  });
  const [judgedPct, shellPct, corePct] = solved.depthPct as [Float64Array, Float64Array, Float64Array];
  const isFit = (day: number): boolean => {
    const average = solved.averagePct[day]!;
    return (
      average <= endUse.maxPct &&
      average >= endUse.minPct &&
      corePct[day]! - judgedPct[day]! <= endUse.maxShellCorePct
    );
  };
  let readyDay = nowDays;
  while (readyDay <= nowDays + HORIZON_DAYS && !isFit(readyDay)) readyDay++;
  const bias = Math.sqrt(1 / 3) * meter + Math.sqrt(2 / 3) * random.normal();
  const noise = Array.from({ length: 64 }, () => random.normal());
  const places = Array.from({ length: 4 }, () => random.normal());
  return {
    board,
    theta,
    endUse,
    nowMs: board.start.atMs + nowDays * DAY_MS,
    readyDay: readyDay > nowDays + HORIZON_DAYS ? Number.POSITIVE_INFINITY : readyDay - nowDays,
    averagePct: (day) => solved.averagePct[nowDays + day]!,
    readings: (rounds) =>
      Array.from({ length: rounds }, (_, round) => Math.round((nowDays * (round + 1)) / rounds)).flatMap(
        (day, round) =>
          [shell, shell, 0.5, 0.5].map((depthFraction, spot): FitReading => {
            const truth = (spot < 2 ? shellPct : corePct)[day]!;
            const scatter =
              spotScatterPct(truth) *
              (Math.sqrt(2 / 3) * places[spot]! + Math.sqrt(1 / 3) * noise[4 * round + spot]!);
            const mcPct = Math.max(1, truth + meterSdPct(truth) * bias + scatter);
            return {
              atMs: board.start.atMs + day * DAY_MS,
              depthFraction,
              mcPct,
              standardUncertaintyPct: meterSdPct(mcPct),
            };
          }),
      ),
  };
}

function drawTheta(random: Random, board: DryingBoard): number[] {
  const prior = dryingPrior(board);
  return prior.mean.map((mean, i) => mean + Math.sqrt(prior.covariance[i]![i]!) * random.normal());
}

function forecastOf(
  one: Case,
  rounds: number,
  siblings: readonly Information[],
  elsewhere: ForecastInput['elsewhere'] = [],
): Forecast {
  return worked(
    forecastBoard({
      nowMs: one.nowMs,
      board: one.board,
      readings: one.readings(rounds),
      siblings: [...siblings],
      endUse: one.endUse,
      elsewhere,
      placeId: 1,
      horizonDays: HORIZON_DAYS,
    }),
  );
}

/** Counts of where the truth lay: below 10 %, to the median, to 90 %, above. */
class Ranks {
  readonly counts = [0, 0, 0, 0];
  private readonly widths: number[] = [];
  private readonly misses: number[] = [];

  add(truth: number, { low, median, high }: Quantiles): void {
    const bin = truth < low ? 0 : truth < median ? 1 : truth <= high ? 2 : 3;
    this.counts[bin] = this.counts[bin]! + 1;
    this.widths.push(high - low);
    this.misses.push(median - truth);
  }

  /** Within 10 to 90 %, of 100. */
  covered(): number {
    const total = this.counts.reduce((sum, count) => sum + count, 0);
    return (100 * (this.counts[1]! + this.counts[2]!)) / total;
  }

  width(): number {
    return middle(this.widths);
  }

  row(): string {
    const total = this.counts.reduce((sum, count) => sum + count, 0);
    const [below, lower, upper, above] = this.counts.map((count) => (100 * count) / total) as [
      number,
      number,
      number,
      number,
    ];
    const ideal = [0.1, 0.4, 0.4, 0.1];
    const chi2 = this.counts.reduce(
      (sum, count, i) => sum + (count - total * ideal[i]!) ** 2 / (total * ideal[i]!),
      0,
    );
    return [
      (lower + upper).toFixed(0).padStart(6),
      `${below.toFixed(0)}/${lower.toFixed(0)}/${upper.toFixed(0)}/${above.toFixed(0)}`.padStart(13),
      chi2.toFixed(1).padStart(6),
      middle(this.misses).toFixed(1).padStart(8),
      middle(this.misses.map(Math.abs)).toFixed(1).padStart(8),
      middle(this.widths).toFixed(1).padStart(8),
      String(total).padStart(6),
    ].join('');
  }
}

function middle(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted.length === 0 ? Number.NaN : sorted[Math.floor(sorted.length / 2)]!;
}

const HEAD = '    in %  <10/50/90/>   chi2    bias   error   width     n';

type Tally = {
  mc: Map<number, Ranks>;
  reach: Ranks;
  diffusivity: number[];
  surface: number[];
  ready: [number, boolean][];
};
const AHEAD = [0, 30, 90];
const newTally = (): Tally => ({
  mc: new Map(AHEAD.map((day) => [day, new Ranks()])),
  reach: new Ranks(),
  diffusivity: new Array<number>(10).fill(0),
  surface: new Array<number>(10).fill(0),
  ready: [],
});

const dayOf = (atMs: number | null, nowMs: number): number =>
  atMs === null ? HORIZON_DAYS + 1 : (atMs - nowMs) / DAY_MS;

function tally(into: Tally, one: Case, forecast: Forecast): void {
  const here = forecast.places[0]!;
  for (const [day, ranks] of into.mc) {
    // The band's points are some days apart.
    const at = here.band.atMs.findIndex((ms) => ms >= one.nowMs + day * DAY_MS);
    const exact = Math.round((here.band.atMs[at]! - one.nowMs) / DAY_MS);
    ranks.add(one.averagePct(exact), here.band.average[at]!);
  }
  into.ready.push([forecast.now.probabilityReady, one.readyDay === 0]);
  // Told from what the forecast knew, not from what came of it.
  if (forecast.now.probabilityReady < 0.1) {
    const { earlyMs, likelyMs, lateMs } = here.reach;
    into.reach.add(Math.min(one.readyDay, HORIZON_DAYS + 1), {
      low: dayOf(earlyMs, one.nowMs),
      median: dayOf(likelyMs, one.nowMs),
      high: dayOf(lateMs, one.nowMs),
    });
  }
  for (const [counts, { median, high }, truth] of [
    [into.diffusivity, forecast.diffusivityFactor, one.theta[0]!],
    [into.surface, forecast.surfaceFactor, one.theta[1]!],
  ] as const) {
    const z = (truth - Math.log(median)) / (Math.log(high / median) / Z_90);
    const bin = Math.min(9, Math.floor(10 * normalCdf(z)));
    counts[bin] = counts[bin]! + 1;
  }
}

function print(name: string, { mc, reach, diffusivity, surface, ready }: Tally): void {
  console.log(`${name}\n  ${' '.repeat(18)}${HEAD}`);
  for (const [day, ranks] of mc) console.log(`  MC, day +${String(day).padEnd(9)}${ranks.row()}`);
  console.log(`  days to target    ${reach.row()}`);
  console.log(`  ranks by tenths: diffusivity ${diffusivity.join(' ')}; surface ${surface.join(' ')}`);
  const bins = [0, 0.1, 0.3, 0.7, 0.9, 1.0001];
  const counts = bins.slice(1).map((top, i) => {
    const of = ready.filter(([p]) => p >= bins[i]! && p < top);
    const share = of.filter(([, is]) => is).length / of.length;
    return `${(of.reduce((sum, [p]) => sum + p, 0) / of.length).toFixed(2)}->${share.toFixed(2)} (${of.length})`;
  });
  console.log(`  forecast ready -> was ready: ${counts.join('  ')}`);
}

/** Forecasts of drawn boards, tallied by the rounds behind them. */
function tallied(truth: Truth): Map<number, Tally> {
  const random = randomFrom(seed);
  const tallies = new Map(ROUNDS.map((rounds) => [rounds, newTally()]));
  for (let n = 0; n < boards; n++) {
    const stack = drawStack(random, truth);
    const air = airOf(random, stack, truth);
    const one = drawBoard(random, stack, drawTheta(random, stack.board), air, random.normal(), truth.lawOf);
    for (const [rounds, into] of tallies) tally(into, one, forecastOf(one, rounds, []));
  }
  return tallies;
}

function calibrate(): void {
  const begin = performance.now();
  const tallies = tallied(ours);
  console.log(`\n== The law is ours (${((performance.now() - begin) / 1000).toFixed(0)} s)`);
  for (const [rounds, into] of tallies) print(`${rounds} rounds`, into);
}

function compareLaws(): void {
  console.log('\n== The truth dries by another law: boards within 10 to 90 %, of 100');
  console.log('                   ready date, 0, 1, 2, 4 rounds     MC in 90 days             days wide');
  const covered: { name: string; rounds: number; days: number }[] = [];
  for (const [name, truth] of Object.entries(TRUTHS)) {
    if (onlyLaw !== null && onlyLaw !== name) continue;
    const all = [...tallied(truth).values()];
    const row = (of: (each: Tally) => number): string =>
      all.map((each) => of(each).toFixed(0).padStart(6)).join('');
    console.log(
      `  ${name.padEnd(16)}${row(({ reach }) => reach.covered())}   ${row(({ mc }) => mc.get(90)!.covered())}   ${row(({ reach }) => reach.width())}`,
    );
    covered.push(...ROUNDS.map((rounds, at) => ({ name, rounds, days: all[at]!.reach.covered() })));
  }
  for (const { name, rounds, days } of covered)
    figure({
      what: `ready date in its 80 % band: ${name}, ${rounds} rounds`,
      value: days,
      unit: '%',
      goal: { least: 75, most: 90 },
      ...(name === 'Arrhenius' && {
        missesBecause: 'that truth moves species by 0.5 of the logarithm (head of `arrhenius`)',
      }),
    });
}

/** How boards of one stack and log differ: as `pooledPrior` takes it. */
const WITHIN = [0.25, 0.3, 0.15, 0.3, 0.1];

function shareInStacks(): void {
  const random = randomFrom(seed + 1000);
  const shared = [0, 1, 3, 6];
  const tallies = new Map(
    [0, 1].flatMap((rounds) =>
      shared.map((count) => [`${rounds} own rounds, ${count} siblings`, newTally()]),
    ),
  );
  for (let n = 0; n < boards; n++) {
    const stack = drawStack(random, ours);
    const air = airOf(random, stack, ours);
    const prior = dryingPrior(stack.board);
    const group = prior.mean.map((mean, i) => {
      const within = Math.min(WITHIN[i]! ** 2, 0.5 * prior.covariance[i]![i]!);
      return mean + Math.sqrt(prior.covariance[i]![i]! - within) * random.normal();
    });
    const meter = random.normal();
    const cases = Array.from({ length: 7 }, () => {
      const theta = group.map((value, i) => value + WITHIN[i]! * random.normal());
      return drawBoard(random, stack, theta, air, meter, woodDryingLaw);
    });
    const learned = cases
      .slice(1)
      .map(
        (each) =>
          worked(fitHistory(boardModel(each.board), each.readings(2), dryingPrior(each.board))).information,
      );
    for (const rounds of [0, 1]) {
      for (const count of shared) {
        const forecast = forecastOf(cases[0]!, rounds, learned.slice(0, count));
        tally(tallies.get(`${rounds} own rounds, ${count} siblings`)!, cases[0]!, forecast);
      }
    }
  }
  console.log('\n== Boards of one stack, each sibling probed twice');
  for (const [name, into] of tallies) print(name, into);
}

/** Middle of some forecasts of a board probed twice. */
function msOfForecast(): number {
  const random = randomFrom(seed);
  const times = Array.from({ length: 21 }, () => {
    const stack = drawStack(random, ours);
    const one = drawBoard(
      random,
      stack,
      drawTheta(random, stack.board),
      airOf(random, stack, ours),
      0,
      woodDryingLaw,
    );
    const elsewhere = [SHEDS[0]!, ROOM].map((air, placeId) => ({ air, placeId: placeId + 2 }));
    // Of the processor, for other work on the machine does not count.
    const begin = process.cpuUsage();
    forecastOf(one, 2, [], elsewhere);
    return process.cpuUsage(begin).user / 1000;
  });
  return middle(times);
}

const parts: Record<string, () => void> = { laws: compareLaws, ours: calibrate, stack: shareInStacks };
for (const [name, run] of Object.entries(parts)) if (only === null || only === name) run();
console.log(`\nA forecast of three places took ${msOfForecast().toFixed(0)} ms of the processor.`);
