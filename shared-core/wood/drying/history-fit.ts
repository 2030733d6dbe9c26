/**
 * Learns from a board's readings how that board dries.
 *
 * The drying model runs through the board's history with five unknowns: how fast moisture moves inside, how freely
 * the faces dry, how wet the board was at the start, how far the air where it was is from what its place says, and how
 * much the diffusivity rises over moisture content. Before any reading they have the spread of species and stacks (the prior); readings narrow it. Penalized
 * least squares by Gauss-Newton with Levenberg's damping; the spread afterwards is Laplace's approximation.
 */
import { z } from 'zod';
import type { Outcome } from '../../outcome.ts';
import { HOUR_MS } from '../../time.ts';
import { message } from '../../words/message.ts';
import { airSdPct } from '../climate/monthly-air.ts';
import {
  type Gaussian,
  type Information,
  inversePositive,
  posterior,
  solvePositive,
  times,
} from '../maths/gaussian.ts';
import { mean } from '../maths/mean.ts';
import { GREEN, mostWaterPct } from '../moisture/most-water.ts';
import { SCATTER_DEGREES, spotScatterPct } from '../moisture/spot-scatter.ts';
import { type DryingClass, dryingClassSchema } from '../species/drying-class.ts';
import {
  type Around,
  airSegments,
  aroundOf,
  type Stay,
  type StaySegment,
  staySchema,
} from './board-history.ts';
import { type DryingGrid, dryingGrid } from './model/drying-grid.ts';
import { woodDryingLaw } from './model/drying-law.ts';
import { dryingAlong } from './model/drying-model.ts';
import { type DryingResult, MOST_MC_PCT } from './model/drying-run.ts';
import { LawTables } from './model/law-tables.ts';
import { parabolicStart } from './model/parabolic-start.ts';
import { WoodTables } from './model/wood-tables.ts';

/** The unknowns, in the order of every mean and covariance here: three logarithms, % MC, and the law's exponent. */
export const dryingParameters = [
  'logDiffusivity',
  'logSurface',
  'logStartMc',
  'emcOffsetPct',
  'exponent',
] as const;

/** What the model must know of a board. */
export const dryingBoardSchema = z.object({
  thicknessMm: z.number().min(0.5).max(1000),
  /** Null where it is not known: average density, with a wider spread. */
  basicSpecificGravity: z.number().min(0.05).max(1.4).nullable(),
  /** Null or left out where it is not known: any wood of its density, with a wider spread. */
  dryingClass: dryingClassSchema.nullable().optional(),
  start: z.object({
    /** The day it was sawn, or the first day anything is known of it; UTC, ms. */
    atMs: z.number(),
    /** Average then, % MC; null for green and not measured. */
    mcPct: z.number().min(1).max(400).nullable(),
    /** How sure that is: standard deviation of its logarithm; about the relative error. Ignored where null. */
    logSd: z.number().min(0.005).max(2),
    /** Moisture of the faces over the average: 1 for a board fresh from the saw, less for one that was drying. */
    shellRatio: z.number().min(0.1).max(1.5),
  }),
  /** Where it has been, rising in time; the first stay begins no later than `start.atMs`. */
  stays: z.array(staySchema).min(1),
});
export type DryingBoard = z.infer<typeof dryingBoardSchema>;

/** A corrected reading. */
export const fitReadingSchema = z.object({
  atMs: z.number(),
  /** Depth of the pin tips from face A over the thickness, 0 to 1. */
  depthFraction: z.number().min(0).max(1),
  mcPct: z.number().min(0).max(400),
  /** Nobody knows how deep it was read. */
  isDepthUnknown: z.literal(true).optional(),
  /** Of the reading as corrected: meter and species. */
  standardUncertaintyPct: z.number().positive(),
});
export type FitReading = z.infer<typeof fitReadingSchema>;

/**
 * What the model itself gets wrong even with the best parameters, % MC (boards are not sheets, places are not
 * monthly means). Common practice, no source.
 */
export const modelErrorPct = 0.5;

/** That error, known beforehand, weighs as much as so many readings that agree with the model. Common practice, no source. */
export const MODEL_ERROR_DEGREES = 2;

/** Half the board is enough where both faces are alike; about 0.1 % MC from a fine grid (`drying-model.test.ts`). */
const cellsPerHalf = 12;
const tolerancePct = 0.05;

/** A board that can be run with any values of the unknowns. */
export type BoardModel = {
  board: DryingBoard;
  /** On the diffusivity, for its thickness. */
  thicknessFactor: number;
  grid: DryingGrid;
  tables: WoodTables;
};

/** Of wood whose density is not known. */
export const averageGravity = 0.5;

/** 4/4, of which most published days of drying are. */
const USUAL_THICKNESS_MM = 28;
/**
 * Days of drying go with the thickness to the power 1.98 in the model, whose board is a sheet without edges or checks. Records
 * have 1.2 to 1.5 (`tests/bench/data/drying-records.csv`: the kiln equation for red oak has 1.52), and practice about 1.6, three times
 * the days for twice the thickness (common practice, no source). Half of the difference to 1.3 is taken: 1.65.
 */
export const THICKNESS_POWER = 0.35;

/**
 * @param elsewhere   stays that it may be run through besides the board's own
 */
export function boardModel(
  board: DryingBoard,
  elsewhere: readonly Pick<Stay, 'faces' | 'movement'>[] = [],
): BoardModel {
  const half = [...board.stays, ...elsewhere].every((stay) => {
    const [a, b] = aroundOf(stay).faces;
    return a === b;
  });
  return {
    board,
    thicknessFactor: (board.thicknessMm / USUAL_THICKNESS_MM) ** THICKNESS_POWER,
    grid: dryingGrid(board.thicknessMm, half, half ? cellsPerHalf : 2 * cellsPerHalf),
    tables: new WoodTables(board.basicSpecificGravity ?? averageGravity),
  };
}

/** Runs a stretch of a board's life: with values of `dryingParameters`, and cells at its begin as `runBoard` takes them. */
type Course = (theta: readonly number[], startPct: Float64Array | null) => DryingResult;

/** What `runBoard` does, for any number of values of the unknowns: what is the same in all runs is worked out once. */
export function courseOf(
  model: BoardModel,
  stays: readonly Stay[],
  fromMs: number,
  toMs: number,
  observeMs: readonly number[],
  depthFractions: readonly number[],
): Course {
  let begunS = 0;
  let seen = 0;
  const all = stretchesOf(airSegments(stays, fromMs, toMs));
  const stretches = all.map((stretch, at) => {
    const { durationS } = stretch;
    const inside = observeMs.slice(seen).map((ms) => (ms - fromMs) / 1000 - begunS);
    const observed = at === all.length - 1 ? inside : inside.filter((second) => second <= durationS);
    begunS += durationS;
    seen += observed.length;
    // A difference of two large numbers may end a hair past the stretch.
    const observeS = Float64Array.from(observed, (second) => Math.min(Math.max(second, 0), durationS));
    const run = dryingAlong({
      grid: model.grid,
      segments: stretch.segments,
      tolerancePct,
      observeS,
      depthFractions,
    });
    return { around: stretch.around, run };
  });
  const startAt = startOf(model);
  return (theta, startPct) => {
    const [logDiffusivity, logSurface, logStart, emcOffsetPct, exponent] = theta as Unknowns;
    const surface = factorOf(logSurface);
    const tables = model.tables.with(exponent);
    let profilePct = startPct ?? startAt(Math.exp(logStart));
    const parts = stretches.map(({ around, run }) => {
      const part = run({
        tables,
        startPct: profilePct,
        diffusivityFactor: around.pace * model.thicknessFactor * factorOf(logDiffusivity),
        faceFactors: [around.pace * surface * around.faces[0], around.pace * surface * around.faces[1]],
        emcOffsetPct,
      });
      profilePct = part.finalPct;
      return part;
    });
    return joined(parts);
  };
}

/**
 * Runs a stretch of a board's life.
 *
 * @param theta         values of `dryingParameters`
 * @param startPct      cells at `fromMs`; null for the board's own start, which then must be `fromMs`
 * @param observeMs     rising, between `fromMs` and `toMs`
 */
export const runBoard = (
  model: BoardModel,
  theta: readonly number[],
  stays: readonly Stay[],
  fromMs: number,
  toMs: number,
  startPct: Float64Array | null,
  observeMs: readonly number[],
  depthFractions: readonly number[],
): DryingResult => courseOf(model, stays, fromMs, toMs, observeMs, depthFractions)(theta, startPct);

type Unknowns = [number, number, number, number, number];

/** No board is so fast or slow that its factor's logarithm passes this; a fit to odd readings may try one. */
const MOST_LOG_FACTOR = 9;
const factorOf = (log: number): number =>
  Math.exp(Math.min(MOST_LOG_FACTOR, Math.max(-MOST_LOG_FACTOR, log)));

/** The profile at the start for any average, nowhere wetter than the wood can be or the model can run. */
function startOf({ grid, board }: BoardModel): (averagePct: number) => Float64Array {
  const most = Math.min(MOST_MC_PCT, mostWaterPct(board.basicSpecificGravity ?? averageGravity));
  const shape = parabolicStart(grid, 1, board.start.shellRatio);
  return (averagePct) => {
    const profile = new Float64Array(shape.length);
    for (let i = 0; i < profile.length; i++) {
      profile[i] = Math.min(most, shape[i]! * Math.min(most, averagePct));
    }
    return profile;
  };
}

type Stretch = { segments: StaySegment[]; around: Around; durationS: number };

const isSame = (a: Around, b: Around): boolean =>
  a.pace === b.pace && a.faces[0] === b.faces[0] && a.faces[1] === b.faces[1];

/** Runs of segments in which the same is near the board. */
function stretchesOf(segments: readonly StaySegment[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (const segment of segments) {
    const { around, durationS } = segment;
    const last = stretches.at(-1);
    if (last && isSame(last.around, around)) {
      last.segments.push(segment);
      last.durationS += durationS;
    } else {
      stretches.push({ segments: [segment], around, durationS });
    }
  }
  return stretches.length > 0 ? stretches : [{ segments: [], around: aroundOf({}), durationS: 0 }];
}

function joined(parts: readonly DryingResult[]): DryingResult {
  const [first] = parts as [DryingResult];
  if (parts.length === 1) return first;
  const end = (rows: Float64Array[]): Float64Array => {
    const whole = new Float64Array(rows.reduce((sum, row) => sum + row.length, 0));
    let at = 0;
    for (const row of rows) {
      whole.set(row, at);
      at += row.length;
    }
    return whole;
  };
  return {
    averagePct: end(parts.map((part) => part.averagePct)),
    depthPct: first.depthPct.map((_, row) => end(parts.map((part) => part.depthPct[row]!))),
    finalPct: parts.at(-1)!.finalPct,
    lostPct: parts.reduce((sum, part) => sum + part.lostPct, 0),
    steps: parts.reduce((sum, part) => sum + part.steps, 0),
  };
}

/** A factor before anything is known of a board: its median, and the standard deviation of its logarithm. */
type PriorFactor = { median: number; logSd: number };

/**
 * How fast real boards dry, as factors on the published diffusivity and on a free face.
 *
 * Diffusivity: the median of each class is the one at which published days of air-drying come out right on average over its
 * species and over their fewest and most days (`tests/bench/drying-prior.bench.ts`): Rietz and Page (eight species), the
 * periods of 18 further species, both from memory, Peck's and Miceli's measured ones. Miceli's count least, for they say only
 * when boards were below 10 %. Of dense hardwoods it is faster than those days, for what is held of cherry by practice. Refractory woods have none among
 * them: between upland and lowland oak, by their kiln schedules (from memory). That moisture should pass at about the half of
 * steady flow is measured (`sonderegger-2011-diffusion.test.ts`). Where these days came from is W. T. Simpson and C. A.
 * Hart, Method for Estimating Air-Drying Times of Lumber (Forest Products Journal 51, 2001; abstract read), and FPL-RN-0293
 * (2004; abstract read), which find that species need parameters of their own.
 *
 * The surface is left open by those days, for it counts only while wood is wet; a round figure is taken.
 *
 * Exponent: dated records dry faster in the last third than with all of the published rise (`tests/bench/records.bench.ts`:
 * 1.9 times too slow). Common practice, no source.
 *
 * Spreads: species of a class differ by about 0.35 of the logarithm, and what is the stack's, the yard's and the model's by
 * as much again; its surface by a little more. Common practice, no source.
 */
export const priorPace: {
  diffusivity: { medians: Record<DryingClass, number>; logSd: number; unknown: PriorFactor };
  surface: PriorFactor;
  exponent: { mean: number; sd: number };
} = {
  diffusivity: {
    medians: {
      refractory: 0.22,
      'lowland-oak': 0.16,
      'upland-oak': 0.5,
      'ring-porous': 0.4,
      maple: 0.74,
      'dense-hardwood': 0.55,
      'light-hardwood': 0.47,
      gum: 0.29,
      pine: 0.45,
      softwood: 0.58,
      wetwood: 0.2,
      baldcypress: 0.13,
    },
    logSd: Math.hypot(0.35, 0.35),
    unknown: { median: 0.45, logSd: 0.7 },
  },
  surface: { median: 0.1, logSd: 0.8 },
  exponent: { mean: 0.4, sd: 0.4 },
};

/** Tables of a wood's law in the middle of what is known before any reading. */
export const usualTables = (basicSpecificGravity: number): LawTables =>
  new LawTables(woodDryingLaw(basicSpecificGravity, priorPace.exponent.mean));

/** The factor on the published diffusivity for boards of a class; null for any wood. */
export function priorDiffusivity(dryingClass: DryingClass | null): PriorFactor {
  const { medians, logSd, unknown } = priorPace.diffusivity;
  return dryingClass === null ? unknown : { median: medians[dryingClass], logSd };
}

/**
 * What is known of the unknowns before any reading: `priorPace`, with a wider diffusivity where the class or the density is
 * not known, and wider air where a place has the average of a region.
 */
export function dryingPrior(board: DryingBoard): Gaussian {
  const { surface, exponent } = priorPace;
  const diffusivity = priorDiffusivity(board.dryingClass ?? null);
  const densityLogSd = board.basicSpecificGravity === null ? 0.5 : 0;
  const { mcPct, logSd } = board.start;
  const green = GREEN.share * mostWaterPct(board.basicSpecificGravity ?? averageGravity);
  const offsetSdPct = Math.max(...board.stays.map(({ air }) => airSdPct(air)));
  const sd = [
    Math.hypot(diffusivity.logSd, densityLogSd),
    surface.logSd,
    mcPct === null ? GREEN.logSd : logSd,
    offsetSdPct,
    exponent.sd,
  ];
  return {
    mean: [
      Math.log(diffusivity.median),
      Math.log(surface.median),
      Math.log(mcPct ?? green),
      0,
      exponent.mean,
    ],
    covariance: sd.map((value, i) => sd.map((_, j) => (i === j ? value * value : 0))),
  };
}

/**
 * How much boards of one stack and log still differ among themselves: the spread that is left of each unknown when
 * the group's own value is known. Common practice, no source.
 */
export const withinGroupSd = {
  logDiffusivity: 0.25,
  logSurface: 0.3,
  logStartMc: 0.15,
  emcOffsetPct: 0.3,
  exponent: 0.1,
} as const satisfies Record<(typeof dryingParameters)[number], number>;

/**
 * The prior of a board when its siblings have been probed: they share the group's values, each with a spread of
 * its own (empirical Bayes for a normal hierarchy; Gelman and others, Bayesian Data Analysis, chapter 5, from
 * memory). Many siblings leave the within-group spread; none leave the prior as it is.
 *
 * A sibling whose information is none, by rounding or overflow, teaches nothing.
 *
 * @param prior     as `dryingPrior` gives it
 * @param siblings  `information` of the other boards' fits
 */
export function pooledPrior(prior: Gaussian, siblings: readonly Information[]): Gaussian {
  if (siblings.length === 0) return prior;
  // A start that was measured on the board itself is already surer than its group could make it.
  const within = dryingParameters.map((name, i) =>
    Math.min(withinGroupSd[name] ** 2, 0.5 * prior.covariance[i]![i]!),
  );
  const group: Gaussian = {
    mean: prior.mean,
    covariance: prior.covariance.map((row, i) =>
      row.map((value, j) => (i === j ? value - within[i]! : value)),
    ),
  };
  const sum: Information = {
    matrix: within.map(() => within.map(() => 0)),
    vector: within.map(() => 0),
  };
  for (const sibling of siblings) {
    // The sibling's own deviation integrated out: (V + W)^-1 = A - A (A + W^-1)^-1 A with A = V^-1, also where A is singular.
    const inner = inversePositive(
      sibling.matrix.map((row, i) => row.map((value, j) => (i === j ? value + 1 / within[i]! : value))),
    );
    if (inner === null) continue;
    const passed = times(inner, sibling.vector);
    for (let i = 0; i < within.length; i++) {
      // A (A + W^-1)^-1 = 1 - W^-1 (A + W^-1)^-1, row by row.
      sum.vector[i] = sum.vector[i]! + passed[i]! / within[i]!;
      for (let j = 0; j < within.length; j++) {
        sum.matrix[i]![j] =
          sum.matrix[i]![j]! + (i === j ? 1 / within[i]! : 0) - inner[i]![j]! / (within[i]! * within[j]!);
      }
    }
  }
  const learned = posterior(group, sum);
  if (learned === null) return prior;
  return {
    mean: learned.mean,
    covariance: learned.covariance.map((row, i) =>
      row.map((value, j) => (i === j ? value + within[i]! : value)),
    ),
  };
}

/** Readings of one round and depth as one value. */
type Observation = {
  atMs: number;
  depthFraction: number;
  mcPct: number;
  /** What is this observation's own in wood that is not wet: scatter of its spots, and what the model gets wrong, % MC. */
  ownSdPct: number;
  /** What the meter and this board's wood are wrong by in every reading alike, % MC. */
  sharedSdPct: number;
};

const sameRoundMs = 12 * HOUR_MS;

function observationsOf(readings: readonly FitReading[]): Observation[] {
  const sorted = [...readings].sort((a, b) => a.depthFraction - b.depthFraction || a.atMs - b.atMs);
  const groups: FitReading[][] = [];
  for (const reading of sorted) {
    const group = groups.at(-1);
    const first = group?.[0];
    if (
      group !== undefined &&
      first !== undefined &&
      Math.abs(first.depthFraction - reading.depthFraction) < 0.01 &&
      reading.atMs - first.atMs < sameRoundMs
    ) {
      group.push(reading);
    } else {
      groups.push([reading]);
    }
  }
  return groups
    .map((group) => {
      const mcPct = mean(group.map((reading) => reading.mcPct));
      // A single spot tells nothing of its scatter, and two that happen to agree do not promise that there is none.
      const squares =
        SCATTER_DEGREES * spotScatterPct(mcPct) ** 2 +
        group.reduce((sum, reading) => sum + (reading.mcPct - mcPct) ** 2, 0);
      const scatter = squares / (SCATTER_DEGREES + group.length - 1);
      return {
        atMs: group[0]!.atMs,
        depthFraction: mean(group.map((reading) => reading.depthFraction)),
        mcPct,
        ownSdPct: Math.sqrt(scatter / group.length + modelErrorPct ** 2),
        sharedSdPct: Math.sqrt(mean(group.map((reading) => reading.standardUncertaintyPct ** 2))),
      };
    })
    .sort((a, b) => a.atMs - b.atMs);
}

/** From here on a pin meter tells less and less, % MC. */
const wetFromPct = 28;
/** Above it, what meter and curve are wrong by grows by so much of each further % MC, as in `correction.ts`; … */
const sharedWetShare = 0.5;
/** … and each round and depth by so much on its own. Common practice, no source. */
const ownWetShare = 0.1;

/** Inner product of two columns over the observations, weighed by the inverse of their covariance. */
type Weighing = (x: readonly number[], y: readonly number[]) => number;

/**
 * The observations' covariance: own variances on its diagonal and, on top, the product of the shared errors of every two,
 * so that ten rounds with one meter do not average away what the meter and the species' curve are wrong by. Inverse by
 * Sherman and Morrison's formula.
 *
 * How wrong a reading of wet wood may be goes by what the wood holds by the model, not by what was read: else those that
 * err low would be trusted most, and every fit to wet wood come out too dry (`tests/bench/forecast.bench.ts` showed it).
 */
function weighing(observations: readonly Observation[], modelPct: readonly number[]): Weighing {
  const wet = (mcPct: number): number => Math.max(0, mcPct - wetFromPct);
  const own = observations.map(
    ({ ownSdPct }, k) => 1 / (ownSdPct ** 2 + (ownWetShare * wet(modelPct[k]!)) ** 2),
  );
  const shared = observations.map(({ sharedSdPct, mcPct }, k) =>
    Math.max(sharedSdPct / 2, sharedSdPct + sharedWetShare * (wet(modelPct[k]!) - wet(mcPct))),
  );
  const most = 1 + shared.reduce((sum, value, k) => sum + value * value * own[k]!, 0);
  const along = (x: readonly number[]): number =>
    x.reduce((sum, value, k) => sum + value * shared[k]! * own[k]!, 0);
  return (x, y) =>
    x.reduce((sum, value, k) => sum + value * own[k]! * y[k]!, 0) - (along(x) * along(y)) / most;
}

/**
 * The model's error as readings leave it, over that of before, at most 1: the scale of a normal distribution by its conjugate
 * prior (Gelman and others, Bayesian Data Analysis, section 2.6, from memory). What the unknowns were fitted to tells nothing.
 */
function errorLeft(
  misfit: readonly number[],
  product: Weighing,
  learned: Gaussian,
  told: Information,
): number {
  const fitted = told.matrix.reduce((sum, row, i) => sum + times(learned.covariance, row)[i]!, 0);
  const degrees = MODEL_ERROR_DEGREES + Math.max(0, misfit.length - fitted);
  return Math.min(1, Math.sqrt((MODEL_ERROR_DEGREES + product(misfit, misfit)) / degrees));
}

export type HistoryFit = {
  prior: Gaussian;
  /** What is known after the readings. */
  posterior: Gaussian;
  /** What the readings alone say: give it to `pooledPrior` of the board's siblings. */
  information: Information;
  /** Each round's reading at a depth against the fitted model, % MC. */
  residuals: { atMs: number; depthFraction: number; measuredPct: number; fittedPct: number; sdPct: number }[];
  /** Where the readings were taken: instants, rising, and depths. */
  observed: { atMs: number[]; depthFractions: number[] };
  /** `modelErrorPct`, or less where rounds agree with the model better than it expects, % MC. */
  modelErrorPct: number;
  /**
   * How badly these values of the unknowns agree with readings and prior: less twice the logarithm of their probability.
   * It takes what the model then holds at an instant and a depth of `observed`, by their places in it, % MC.
   */
  costOf: (theta: readonly number[], modelPct: (instant: number, depth: number) => number) => number;
};

const noFit: Outcome<never> = { ok: false, problem: message('forecast.none.no-fit') };

/** Steps of the unknowns for finite differences, in their own units. */
const probeStep = [0.1, 0.15, 0.05, 0.3, 0.1];

/**
 * Fits a board's history.
 *
 * @param readings  corrected readings that count, none before the board's start
 * @param prior     `dryingPrior(board)`, or that pooled with siblings
 * @returns         a problem where no values of the unknowns go with such readings
 * @throws          RangeError for a reading before the start (`historyProblem` tells)
 */
export function fitHistory(
  model: BoardModel,
  readings: readonly FitReading[],
  prior: Gaussian,
): Outcome<HistoryFit> {
  const { board } = model;
  const observations = observationsOf(readings);
  const none: Information = {
    matrix: prior.covariance.map((row) => row.map(() => 0)),
    vector: prior.mean.map(() => 0),
  };
  const last = observations.at(-1);
  const precision = inversePositive(prior.covariance);
  if (precision === null) return noFit;
  const penaltyOf = (theta: readonly number[]): number => {
    const away = theta.map((value, i) => value - prior.mean[i]!);
    return times(precision, away).reduce((sum, value, i) => sum + value * away[i]!, 0);
  };
  if (last === undefined) {
    const value: HistoryFit = {
      prior,
      posterior: prior,
      information: none,
      residuals: [],
      observed: { atMs: [], depthFractions: [] },
      modelErrorPct,
      costOf: penaltyOf,
    };
    return { ok: true, value };
  }
  if (observations[0]!.atMs < board.start.atMs) {
    throw new RangeError('A reading is older than the start of the board.');
  }
  const instants = [...new Set(observations.map((o) => o.atMs))];
  const depths = [...new Set(observations.map((o) => o.depthFraction))];
  const where = observations.map((o) => [depths.indexOf(o.depthFraction), instants.indexOf(o.atMs)] as const);
  const course = courseOf(model, board.stays, board.start.atMs, last.atMs, instants, depths);
  const predict = (theta: readonly number[]): number[] => {
    const run = course(theta, null);
    return where.map(([depth, instant]) => run.depthPct[depth]![instant]!);
  };
  const misfitOf = (predicted: readonly number[]): number[] =>
    observations.map((o, k) => o.mcPct - predicted[k]!);
  const costOf = (theta: readonly number[], predicted: readonly number[], product: Weighing): number => {
    const misfit = misfitOf(predicted);
    return penaltyOf(theta) + product(misfit, misfit);
  };
  /** Information of the readings with the model linearized around theta. */
  const linearized = (
    theta: readonly number[],
    predicted: readonly number[],
    product: Weighing,
  ): Information => {
    const slopes = theta.map((_, j) => {
      const moved = predict(theta.map((value, i) => (i === j ? value + probeStep[j]! : value)));
      return moved.map((value, k) => (value - predicted[k]!) / probeStep[j]!);
    });
    const target = misfitOf(predicted).map(
      (misfit, k) => misfit + slopes.reduce((sum, slope, j) => sum + slope[k]! * theta[j]!, 0),
    );
    return {
      matrix: slopes.map((a) => slopes.map((b) => product(a, b))),
      vector: slopes.map((a) => product(a, target)),
    };
  };

  let theta = prior.mean;
  let predicted = predict(theta);
  let product = weighing(observations, predicted);
  let cost = costOf(theta, predicted, product);
  let information = linearized(theta, predicted, product);
  let damping = 0;
  for (let iteration = 0; iteration < 12; iteration++) {
    const matrix = precision.map((row, i) =>
      row.map((value, j) => (value + information.matrix[i]![j]!) * (i === j ? 1 + damping : 1)),
    );
    const pull = times(precision, prior.mean);
    const gradient = times(
      precision.map((row, i) => row.map((value, j) => value + information.matrix[i]![j]!)),
      theta,
    ).map((value, i) => pull[i]! + information.vector[i]! - value);
    const move = solvePositive(matrix, gradient);
    if (move === null) return noFit;
    const next = theta.map((value, i) => value + Math.max(-2, Math.min(2, move[i]!)));
    const nextPredicted = predict(next);
    const nextCost = costOf(next, nextPredicted, product);
    const expected = move.reduce((sum, value, i) => sum + value * gradient[i]!, 0);
    if (nextCost <= cost) {
      const gained = cost - nextCost;
      theta = next;
      predicted = nextPredicted;
      product = weighing(observations, predicted);
      cost = costOf(theta, predicted, product);
      damping = damping < 0.02 ? 0 : damping / 4;
      information = linearized(theta, predicted, product);
      if (gained < 0.01) break;
    } else {
      // A gain too small to matter is as good as arrival.
      if (expected < 0.01) break;
      damping = damping === 0 ? 0.1 : damping * 4;
    }
  }
  const known = posterior(prior, information);
  if (known === null) return noFit;
  const value: HistoryFit = {
    prior,
    posterior: { mean: [...theta], covariance: known.covariance },
    information,
    residuals: observations.map((o, k) => ({
      atMs: o.atMs,
      depthFraction: o.depthFraction,
      measuredPct: o.mcPct,
      fittedPct: predicted[k]!,
      sdPct: Math.hypot(o.ownSdPct, o.sharedSdPct),
    })),
    observed: { atMs: instants, depthFractions: depths },
    modelErrorPct: modelErrorPct * errorLeft(misfitOf(predicted), product, known, information),
    costOf: (values, modelPct) =>
      costOf(
        values,
        where.map(([depth, instant]) => modelPct(instant, depth)),
        product,
      ),
  };
  return { ok: true, value };
}
